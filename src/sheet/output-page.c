/* output-page.c: one page of a book for a printer, or none where pages are only counted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The whole book is laid out for each page: laying out is quick, and where a page begins is known
 * only from the one before it.
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

typedef struct
{
  cairo_t *cr;
  guint    page;
} OnePage;

static void
begin_page (PpBook *book)
{
  OnePage *one = book->output_data;

  if (book->page == one->page)
    {
      book->cr = cairo_reference (one->cr);
      cairo_save (book->cr);
    }
  else
    begin_nothing (book);
}

static void
end_page (PpBook *book)
{
  OnePage *one = book->output_data;

  if (book->cr == one->cr)
    cairo_restore (book->cr);
  end_nothing (book);
}

void
pp_output_page (const PpSheetJob   *job,
                const char * const *kinds,
                guint               n_pages,
                guint               page,
                cairo_t            *cr)
{
  static const PpBookOutput output = { begin_page, end_page };
  OnePage one = { cr, page };

  pp_book_draw (job, kinds, &output, &one, n_pages);
}
