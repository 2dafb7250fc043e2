/* output-record.c: pages that are kept as drawings for a printer, or only counted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A printer asks for page after page, and a book can only be drawn from its beginning: so it is
 * drawn once and played back. A unit is a point, as in a PDF, because what must be raster (soft
 * shadows) is made for the unit.
 */
#include "config.h"

#include "sheet/output.h"

/* An ink-less page: one that keeps no drawing but knows how large text is. */
static void
begin_nothing (PpBook *book)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A1, 0, 0);

  book->cr = cairo_create (surface);
  cairo_surface_destroy (surface);
}

static void
end_page (PpBook *book)
{
  g_clear_pointer (&book->cr, cairo_destroy);
}

guint
pp_output_count (const PpSheetJob   *job,
                 const char * const *kinds)
{
  static const PpBookOutput nothing = { begin_nothing, end_page };

  return pp_book_draw (job, kinds, &nothing, NULL, 0, NULL);
}

static void
begin_page (PpBook *book)
{
  const cairo_rectangle_t extents = { 0, 0, book->paper.x1 / PP_MM_PER_POINT,
                                      book->paper.y1 / PP_MM_PER_POINT };
  cairo_surface_t *page = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &extents);

  g_ptr_array_add (book->output_data, page);
  book->cr = cairo_create (page);
  cairo_scale (book->cr, 1 / PP_MM_PER_POINT, 1 / PP_MM_PER_POINT);
}

GPtrArray *
pp_output_record (const PpSheetJob   *job,
                  const char * const *kinds,
                  guint               n_pages,
                  GError            **error)
{
  static const PpBookOutput output = { begin_page, end_page };
  g_autoptr (GPtrArray) pages = g_ptr_array_new_with_free_func (
    (GDestroyNotify) cairo_surface_destroy);
  cairo_status_t status;

  pp_book_draw (job, kinds, &output, pages, n_pages, &status);
  return pp_output_judge (status, error) ? g_steal_pointer (&pages) : NULL;
}
