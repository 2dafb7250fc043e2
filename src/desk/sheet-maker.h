/* sheet-maker.h: draws sheets in a thread, for the eye.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One thing at a time, as scene, art and kept pages belong to one thread at a time: first what is
 * asked for last, then pictures of its pages. For the main thread.
 * Signals:
 *   made    (gpointer PpSheetSet, borrowed) what was asked for last is there
 *   failed  (char *sentence) it could not be drawn; NULL: it was stopped
 *   idle    nothing is being done: a picture may be asked for
 */
#pragma once

#include "desk/sheet-choice.h"
#include "desk/work.h"

G_BEGIN_DECLS

/* Sheets as they print. Counted; touched only by the maker but for `n_pages`, `kinds`, `paper`
 * and `counts`. */
typedef struct
{
  gatomicrefcount     refs;
  guint               n_pages;
  GPtrArray          *pages;  /* recording surfaces */
  const PpSheetKind **kinds;  /* of each page */
  PpPaper             paper;
  guint              *counts; /* pages of each kind, blank ones last, whether chosen or not */
} PpSheetSet;

PpSheetSet *pp_sheet_set_ref   (PpSheetSet *self);
void        pp_sheet_set_unref (PpSheetSet *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSheetSet, pp_sheet_set_unref)

#define PP_TYPE_SHEET_MAKER (pp_sheet_maker_get_type ())
G_DECLARE_FINAL_TYPE (PpSheetMaker, pp_sheet_maker, PP, SHEET_MAKER, GObject)

/* image: (transfer none), or NULL where memory is short. */
typedef void (*PpSheetPictureFunc) (cairo_surface_t *image,
                                    gpointer         data);

PpSheetMaker *pp_sheet_maker_new     (void);
/* Draws the sheets of `panel`; what was asked for before is dropped. */
void          pp_sheet_maker_ask     (PpSheetMaker        *self,
                                      const PpPanel       *panel,
                                      const PpSheetChoice *choice);
/* Gives up what was asked for. */
void          pp_sheet_maker_stop    (PpSheetMaker        *self);
/* 0 to 1; 1 when nothing is being made. */
double        pp_sheet_maker_get_done (PpSheetMaker       *self);
/* Draws a page, `scale` pixels a mm, unless something else is being done: FALSE then, and `done`
 * (with `data`, referenced till then: a GObject) is not called. */
gboolean      pp_sheet_maker_picture (PpSheetMaker        *self,
                                      PpSheetSet          *set,
                                      guint                page,
                                      double               scale,
                                      PpSheetPictureFunc   done,
                                      gpointer             data);

G_END_DECLS
