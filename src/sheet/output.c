/* output.c: what the formats share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/output.h"

#include "panel/i18n.h"

gboolean
pp_output_judge (cairo_status_t   status,
                 GError         **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _("The sheets could not be drawn: %s."),
               cairo_status_to_string (status));
  return FALSE;
}

void
pp_output_add_page (PpBook     *book,
                    GPtrArray  *files,
                    const char *ending,
                    GBytes     *bytes)
{
  g_autofree char *name = g_strdup_printf ("%s-%u.%s", book->kind->id, book->kind_page, ending);

  pp_sheet_files_add (files, name, bytes);
}
