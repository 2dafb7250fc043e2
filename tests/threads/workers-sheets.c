/* workers-sheets.c: sheets written in one thread and drawn in another, while letters are drawn here.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * As the window exports, shows the page of the sheets and draws itself: the letters of all three come
 * from one font.
 */
#include "check/check.h"
#include "file/panel-read.h"
#include "sheet/sheet.h"

#include "workers.h"

#include <pango/pangocairo.h>

#define ROUNDS 3

typedef struct
{
  PpPanel    *panel;
  PpCheck    *check;
  PpPlan     *plan;
  PpGallery  *gallery;
  PpSheetJob  job;
} Table;

static const char * const KINDS[] = { "record", "order", "materials", "label", NULL };

static void
lay (Table *self)
{
  g_autoptr (GBytes) bytes = load ("panel/three-pieces.petalpane");

  self->panel = pp_panel_read (bytes, NULL);
  self->check = pp_check_new (self->panel, NULL, NULL, NULL, NULL, NULL);
  self->plan = pp_plan_new (self->check, 100, NULL, NULL, NULL, NULL);
  self->gallery = pp_gallery_new (self->panel, NULL);
  self->job = (PpSheetJob) { .check = self->check, .plan = self->plan, .gallery = self->gallery,
                             .paper = { 210, 297 } };
}

static void
clear (Table *self)
{
  pp_gallery_unref (self->gallery);
  pp_plan_unref (self->plan);
  pp_check_unref (self->check);
  pp_panel_unref (self->panel);
}

static void
draw_pages (GPtrArray *pages,
            double     scale)
{
  for (guint i = 0; i < pages->len; i++)
    {
      cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (210 * scale),
                                                           (int) (297 * scale));
      cairo_t *cr = cairo_create (image);

      cairo_scale (cr, scale, scale);
      pp_sheets_draw_page (g_ptr_array_index (pages, i), cr);
      cairo_destroy (cr);
      cairo_surface_destroy (image);
    }
}

static void *
show (void *data)
{
  Table table;

  lay (&table);
  for (guint i = 0; i < ROUNDS; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) pages = pp_sheets_record (&table.job, KINDS, &error);

      g_assert_no_error (error);
      draw_pages (pages, 1 + 0.37 * i);
    }
  clear (&table);
  return NULL;
}

static void *
write_out (void *data)
{
  Table table;

  lay (&table);
  for (guint i = 0; i < ROUNDS; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) files = pp_sheets_write (&table.job, KINDS, PP_SHEET_PDF, &error);

      g_assert_no_error (error);
      g_assert_cmpuint (files->len, ==, 1);
    }
  clear (&table);
  return NULL;
}

/* As the window does in every frame. */
static void
draw_letters (double size)
{
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 600, 60);
  cairo_t *cr = cairo_create (image);
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_from_string ("Sans");

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, "Towpath: 12 pieces, 3 mixes, 1 1/2 in, 45 min", -1);
  pango_cairo_show_layout (cr, layout);
  pango_font_description_free (font);
  g_object_unref (layout);
  cairo_destroy (cr);
  cairo_surface_destroy (image);
}

void
test_sheets (void)
{
  pthread_t threads[] = { start (show, NULL), start (write_out, NULL) };

  for (guint i = 0; i < 100; i++)
    draw_letters (8 + 0.25 * i);
  join (threads[0]);
  join (threads[1]);
}
