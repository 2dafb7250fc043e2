/* sheet.c: the kinds of sheets, and their writing in the formats asked for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/sheet.h"

#include "sheet/kinds.h"
#include "sheet/output.h"

#define IGNORE(name)
#define POINT_AT(name) &pp_##name##_sheet,

static const PpSheetKind * const kinds_table[] = {
#define PP_SHEET POINT_AT
#define PP_BLANK IGNORE
#include "sheet/kinds.list"
#undef PP_SHEET
#undef PP_BLANK
};

static const PpSheetKind * const blanks_table[] = {
#define PP_SHEET IGNORE
#define PP_BLANK POINT_AT
#include "sheet/kinds.list"
#undef PP_SHEET
#undef PP_BLANK
};

const PpSheetKind * const *
pp_sheet_kinds (guint *n_kinds)
{
  g_return_val_if_fail (n_kinds != NULL, NULL);

  *n_kinds = G_N_ELEMENTS (kinds_table);
  return kinds_table;
}

const PpSheetKind * const *
pp_sheet_blanks (guint *n_kinds)
{
  g_return_val_if_fail (n_kinds != NULL, NULL);

  *n_kinds = G_N_ELEMENTS (blanks_table);
  return blanks_table;
}

const PpSheetKind *
pp_sheet_kind_find (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (kinds_table); i++)
    if (g_str_equal (id, kinds_table[i]->id))
      return kinds_table[i];
  for (guint i = 0; i < G_N_ELEMENTS (blanks_table); i++)
    if (g_str_equal (id, blanks_table[i]->id))
      return blanks_table[i];
  return NULL;
}

static void
free_file (gpointer data)
{
  PpSheetFile *file = data;

  g_free (file->name);
  g_bytes_unref (file->bytes);
  g_free (file);
}

GPtrArray *
pp_sheet_files_new (void)
{
  return g_ptr_array_new_with_free_func (free_file);
}

void
pp_sheet_files_add (GPtrArray  *files,
                    const char *name,
                    GBytes     *bytes)
{
  PpSheetFile *file = g_new (PpSheetFile, 1);

  file->name = g_strdup (name);
  file->bytes = g_bytes_ref (bytes);
  g_ptr_array_add (files, file);
}

static gboolean
are_known (const char * const *kinds)
{
  for (guint i = 0; kinds[i] != NULL; i++)
    if (pp_sheet_kind_find (kinds[i]) == NULL)
      return FALSE;
  return TRUE;
}

GPtrArray *
pp_sheets_write (const PpSheetJob   *job,
                 const char * const *kinds,
                 PpSheetFormats      formats,
                 GError            **error)
{
  g_autoptr (GPtrArray) files = pp_sheet_files_new ();
  guint n_pages;

  g_return_val_if_fail (job != NULL && kinds != NULL && are_known (kinds), NULL);

  n_pages = pp_output_count (job, kinds);
  if ((formats & PP_SHEET_PDF) != 0 && !pp_output_pdf (job, kinds, n_pages, files, error))
    return NULL;
  if ((formats & PP_SHEET_SVG) != 0 && !pp_output_svg (job, kinds, n_pages, files, error))
    return NULL;
  if ((formats & PP_SHEET_PNG) != 0 && !pp_output_png (job, kinds, n_pages, files, error))
    return NULL;
  return g_steal_pointer (&files);
}

guint
pp_sheets_count (const PpSheetJob   *job,
                 const char * const *kinds)
{
  g_return_val_if_fail (job != NULL && kinds != NULL && are_known (kinds), 0);
  return pp_output_count (job, kinds);
}

GPtrArray *
pp_sheets_record (const PpSheetJob   *job,
                  const char * const *kinds,
                  GError            **error)
{
  g_return_val_if_fail (job != NULL && kinds != NULL && are_known (kinds), NULL);
  return pp_output_record (job, kinds, pp_output_count (job, kinds), error);
}

void
pp_sheets_draw_page (cairo_surface_t *page,
                     cairo_t         *cr)
{
  g_return_if_fail (page != NULL && cr != NULL);

  cairo_save (cr);
  cairo_scale (cr, PP_MM_PER_POINT, PP_MM_PER_POINT);
  cairo_set_source_surface (cr, page, 0, 0);
  cairo_paint (cr);
  cairo_restore (cr);
}
