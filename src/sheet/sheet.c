/* sheet.c: the kinds of sheets, and their writing in the formats asked for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/sheet.h"

#include "panel/i18n.h"
#include "sheet/kinds.h"
#include "sheet/output.h"

static const PpSheetKind kinds_table[] = {
  { "record", N_("Record"), pp_record_sheet_draw },
  { "order", N_("Glue order"), pp_order_sheet_draw },
};

const PpSheetKind *
pp_sheet_kinds (guint *n_kinds)
{
  g_return_val_if_fail (n_kinds != NULL, NULL);

  *n_kinds = G_N_ELEMENTS (kinds_table);
  return kinds_table;
}

const PpSheetKind *
pp_sheet_kind_find (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (kinds_table); i++)
    if (g_str_equal (id, kinds_table[i].id))
      return &kinds_table[i];
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
pp_sheets_write (const PpSheetJob   *job,
                 const char * const *kinds,
                 PpSheetFormats      formats,
                 GError            **error)
{
  g_autoptr (GPtrArray) files = g_ptr_array_new_with_free_func (free_file);
  guint n_pages;

  g_return_val_if_fail (job != NULL && kinds != NULL, NULL);
  for (guint i = 0; kinds[i] != NULL; i++)
    g_return_val_if_fail (pp_sheet_kind_find (kinds[i]) != NULL, NULL);

  n_pages = pp_output_count (job, kinds);
  if ((formats & PP_SHEET_PDF) != 0 && !pp_output_pdf (job, kinds, n_pages, files, error))
    return NULL;
  if ((formats & PP_SHEET_SVG) != 0 && !pp_output_svg (job, kinds, n_pages, files, error))
    return NULL;
  if ((formats & PP_SHEET_PNG) != 0 && !pp_output_png (job, kinds, n_pages, files, error))
    return NULL;
  return g_steal_pointer (&files);
}
