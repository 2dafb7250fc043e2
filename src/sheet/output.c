/* output.c: what the formats share, and the counting of pages.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/output.h"

#include "panel/i18n.h"

cairo_status_t
pp_output_take (void                *closure,
                const unsigned char *data,
                unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

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
  PpSheetFile *file = g_new (PpSheetFile, 1);

  file->name = g_strdup_printf ("%s-%u.%s", book->kind->id, book->kind_page, ending);
  file->bytes = g_bytes_ref (bytes);
  g_ptr_array_add (files, file);
}

/* An ink-less page: one that keeps no drawing but knows how large text is. */
static void
begin_nothing (PpBook *book)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A1, 0, 0);

  book->cr = cairo_create (surface);
  cairo_surface_destroy (surface);
}

static void
end_nothing (PpBook *book)
{
  g_clear_pointer (&book->cr, cairo_destroy);
}

guint
pp_output_count (const PpSheetJob   *job,
                 const char * const *kinds)
{
  static const PpBookOutput nothing = { begin_nothing, end_nothing };

  return pp_book_draw (job, kinds, &nothing, NULL, 0);
}
