/* output-pdf.c: all sheets as one PDF with bookmarks, page labels and text.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "art/taken.h"
#include "panel/i18n.h"
#include "sheet/output.h"
#include "sheet/plain-line.h"

#include <cairo-pdf.h>

typedef struct
{
  cairo_surface_t *surface;
  int              outline; /* the bookmark of the sheet in hand */
} Pdf;

static void
add_bookmarks (PpBook *book,
               Pdf    *pdf)
{
  g_autofree char *link = g_strdup_printf ("page=%u pos=[0 0]", book->page);

  if (book->kind_page == 1)
    pdf->outline = cairo_pdf_surface_add_outline (pdf->surface, CAIRO_PDF_OUTLINE_ROOT,
                                                  _(book->kind->title), link,
                                                  CAIRO_PDF_OUTLINE_FLAG_OPEN);
  if (book->is_marked)
    cairo_pdf_surface_add_outline (pdf->surface, pdf->outline, book->heading, link, 0);
}

static void
begin_page (PpBook *book)
{
  Pdf *pdf = book->output_data;
  g_autofree char *label = g_strdup_printf ("%s %u", _(book->kind->title), book->kind_page);

  cairo_pdf_surface_set_page_label (pdf->surface, label);
  add_bookmarks (book, pdf);
  book->cr = cairo_create (pdf->surface);
  cairo_scale (book->cr, 1 / PP_MM_PER_POINT, 1 / PP_MM_PER_POINT);
}

static void
end_page (PpBook *book)
{
  cairo_show_page (book->cr);
  pp_book_note (book, cairo_status (book->cr));
  g_clear_pointer (&book->cr, cairo_destroy);
}

/* cairo would ask the clock, and the same panel would give another file each second. */
static char *
date_new (const PpSheetJob *job)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  g_autoptr (GDateTime) time = NULL;

  if (job->date != NULL)
    return g_strdup (job->date);
  if (epoch != NULL)
    time = g_date_time_new_from_unix_utc (g_ascii_strtoll (epoch, NULL, 10));
  if (time != NULL)
    return g_date_time_format (time, "%Y-%m-%dT%H:%M:%SZ");
  if (job->check != NULL && *job->check->panel->created != '\0')
    return g_strdup (job->check->panel->created);
  return g_strdup ("1970-01-01T00:00:00Z");
}

static void
set_metadata (cairo_surface_t  *surface,
              const PpSheetJob *job)
{
  const PpPanel *panel = job->check != NULL ? job->check->panel : NULL;
  g_autofree char *title = pp_plain_line_new_title (panel);
  g_autofree char *maker = panel != NULL ? pp_plain_line_new (panel->maker) : g_strdup ("");
  g_autofree char *date = date_new (job);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  if (*maker != '\0')
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR, maker);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, _("Bench sheets"));
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Petalpane " PP_VERSION);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
}

gboolean
pp_output_pdf (const PpSheetJob   *job,
               const char * const *kinds,
               guint               n_pages,
               GPtrArray          *files,
               GError            **error)
{
  static const PpBookOutput output = { begin_page, end_page };
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  Pdf pdf = { .outline = CAIRO_PDF_OUTLINE_ROOT };
  g_autoptr (GBytes) whole = NULL;
  cairo_status_t status;

  pdf.surface = cairo_pdf_surface_create_for_stream (pp_taken_add, bytes,
                                                     job->paper.width / PP_MM_PER_POINT,
                                                     job->paper.height / PP_MM_PER_POINT);
  set_metadata (pdf.surface, job);
  pp_book_draw (job, kinds, &output, &pdf, n_pages, &status);
  cairo_surface_finish (pdf.surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (pdf.surface);
  cairo_surface_destroy (pdf.surface);
  if (!pp_output_judge (status, error))
    return FALSE;
  whole = g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
  pp_sheet_files_add (files, "sheets.pdf", whole);
  return TRUE;
}
