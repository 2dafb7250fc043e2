/* test-output.c: pages that cairo fails to draw are no success, in any format.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The linker puts the functions below in the place of cairo's own (--wrap).
 */
#include "config.h"

#include "sheet/sheet.h"

#include <cairo-svg.h>
#include <gio/gio.h>

static guint fails_at; /* the page from 1 whose cairo_t fails; 0: none */
static gboolean has_no_svg;
static guint n_pages;

cairo_t *__real_cairo_create (cairo_surface_t *surface);
cairo_t *__wrap_cairo_create (cairo_surface_t *surface);
cairo_surface_t *__real_cairo_svg_surface_create_for_stream (cairo_write_func_t  write,
                                                             void               *closure,
                                                             double              width,
                                                             double              height);
cairo_surface_t *__wrap_cairo_svg_surface_create_for_stream (cairo_write_func_t  write,
                                                             void               *closure,
                                                             double              width,
                                                             double              height);

/* Pages are counted on an image without dots. */
static gboolean
is_page (cairo_surface_t *surface)
{
  return cairo_surface_get_type (surface) != CAIRO_SURFACE_TYPE_IMAGE
         || cairo_image_surface_get_width (surface) > 0;
}

cairo_t *
__wrap_cairo_create (cairo_surface_t *surface)
{
  cairo_t *cr = __real_cairo_create (surface);

  if (is_page (surface) && ++n_pages == fails_at)
    cairo_scale (cr, 0, 0); /* which cannot be undone: CAIRO_STATUS_INVALID_MATRIX */
  return cr;
}

cairo_surface_t *
__wrap_cairo_svg_surface_create_for_stream (cairo_write_func_t  write,
                                            void               *closure,
                                            double              width,
                                            double              height)
{
  if (has_no_svg)
    return cairo_image_surface_create (CAIRO_FORMAT_INVALID, 1, 1);
  return __real_cairo_svg_surface_create_for_stream (write, closure, width, height);
}

typedef struct
{
  const char     *name;
  PpSheetFormats  format; /* 0: recorded for a printer */
  guint           fails_at;
  gboolean        has_no_svg;
  guint           n_pages; /* that are begun before it is given up */
} Row;

static const Row rows[] = {
  { "pdf", PP_SHEET_PDF, 0, FALSE, 4 },
  { "svg", PP_SHEET_SVG, 0, FALSE, 4 },
  { "png", PP_SHEET_PNG, 0, FALSE, 4 },
  { "pdf-first", PP_SHEET_PDF, 1, FALSE, 1 },
  { "svg-first", PP_SHEET_SVG, 1, FALSE, 1 },
  { "png-first", PP_SHEET_PNG, 1, FALSE, 1 },
  { "pdf-second", PP_SHEET_PDF, 2, FALSE, 2 },
  { "svg-second", PP_SHEET_SVG, 2, FALSE, 2 },
  { "png-second", PP_SHEET_PNG, 2, FALSE, 2 },
  { "recorded", 0, 0, FALSE, 4 },
  { "recorded-first", 0, 1, FALSE, 1 },
  { "recorded-second", 0, 2, FALSE, 2 },
  { "no-svg", PP_SHEET_SVG, 0, TRUE, 0 },
};

static void
test_row (gconstpointer data)
{
  static const char *const kinds[] = { "ring", "frame", "ladder", NULL };
  const Row *row = data;
  const PpSheetJob job = { .units = PP_UNITS_MM, .paper = { 210, 297 } };
  g_autoptr (GPtrArray) files = NULL;
  g_autoptr (GError) error = NULL;

  fails_at = row->fails_at;
  has_no_svg = row->has_no_svg;
  n_pages = 0;
  files = row->format != 0 ? pp_sheets_write (&job, kinds, row->format, &error)
                           : pp_sheets_record (&job, kinds, &error);
  if (row->fails_at == 0 && !row->has_no_svg)
    {
      g_assert_no_error (error);
      g_assert_nonnull (files);
    }
  else
    {
      g_assert_error (error, G_IO_ERROR, G_IO_ERROR_FAILED);
      g_assert_null (files);
    }
  g_assert_cmpuint (n_pages, ==, row->n_pages);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/output/%s", rows[i].name);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  return g_test_run ();
}
