/* book.h: the pages that a sheet is drawn on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A book is drawn twice: once on nothing, to count its pages, then for keeps; so a sheet simply
 * draws and begins a new page where the last is full, and each page can say "page 2 of 5". What
 * a sheet draws must not depend on the number of pages or on the format. One unit of `cr` is 1 mm
 * of paper, its origin the page's top left corner.
 */
#pragma once

#include "panel/point.h"
#include "sheet/ink.h"
#include "sheet/sheet.h"

#include <pango/pango.h>

G_BEGIN_DECLS

#define PP_GAP 3.0 /* mm, between things that belong together; twice that between others */

/* One format. The functions get the book with its page in hand; begin() sets book->cr, end() keeps
 * the page if book->status is good, and destroys book->cr. */
typedef struct
{
  void (*begin) (PpBook *book);
  void (*end)   (PpBook *book);
} PpBookOutput;

/* Read by sheets, written by book.c and the output alone. */
struct _PpBook
{
  const PpSheetJob   *job;
  const PpPanel      *panel;     /* NULL for empty sheets */
  const PpSheetKind  *kind;
  const PpBookOutput *output;
  gpointer            output_data;
  PangoContext       *pango;
  cairo_t            *cr;
  PpBox               paper;     /* mm */
  PpBox               area;      /* what header and footer leave of it */
  guint               n_pages;   /* 0 while they are counted */
  guint               page;      /* from 1, in the whole book */
  guint               kind_page; /* from 1, within the sheet */
  char               *heading;
  cairo_status_t      status;    /* what went wrong first */
  gboolean            is_marked; /* whether the page gets a bookmark of its own */
  GString            *words;     /* what the page says, for those who cannot see it */
};

/* Draws the kinds with `output`; returns the number of pages. `n_pages` 0 counts. `status`
 * (nullable) becomes what went wrong first; no sheet is begun after that. */
guint    pp_book_draw       (const PpSheetJob   *job,
                             const char * const *kinds,
                             const PpBookOutput *output,
                             gpointer            output_data,
                             guint               n_pages,
                             cairo_status_t     *status);
/* Keeps what went wrong first. */
void     pp_book_note       (PpBook             *self,
                             cairo_status_t      status);
/* Ends the page in hand and begins one with header and footer; `heading` is what stands large on
 * it and in the bookmarks ("Mix 2 of 4"). NULL: more of the same, without a bookmark. */
void     pp_book_begin_page (PpBook             *self,
                             const char         *heading);
/* Adds a sentence to the page's words. */
void     pp_book_say        (PpBook             *self,
                             const char         *sentence);

static inline gboolean
pp_book_is_counting (const PpBook *self)
{
  return self->n_pages == 0;
}

static inline void
pp_book_set_ink (PpBook *self,
                 PpInk   ink)
{
  pp_ink_set (self->cr, ink, self->job->mono);
}

G_END_DECLS
