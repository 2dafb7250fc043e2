/* making-ways.h: the ways of making a piece, side by side at the piece bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A way is a C file of its own (making-way-NAME.c) with one PpMakingWay, and a line in the list of
 * making-ways.c. What it needs to remember stands in making.h.
 */
#pragma once

#include "desk/making.h"
#include "desk/piece-view.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct _PpPieceBench PpPieceBench;

typedef struct
{
  const char *name;  /* "measures" */
  const char *title; /* untranslated: "From measures" */
  /* The piece without the common answers, which pp_making_make() adds; (transfer full). Errors: one
   * plain sentence, also about what is still to be told. */
  PpPiece   *(*make)     (const PpMaking *making,
                          PpUnits         units,
                          GError        **error);
  /* What is asked of it, for the side of the bench (transfer floating). It follows the bench by its
   * signal "changed" and changes its making by pp_piece_bench_change(). */
  GtkWidget *(*new_form) (PpPieceBench   *bench);
  /* Shows on the piece drawn large where its measures are taken; NULL: nowhere. */
  void       (*add_marks) (const PpMaking *making,
                           PpUnits         units,
                           const PpPiece  *piece,
                           PpPieceView    *view);
  /* Takes a press on the piece drawn large, mm in its frame; FALSE where it means nothing. NULL:
   * never. */
  gboolean   (*press)     (PpMaking       *making,
                           PpUnits         units,
                           PpPoint         at);
  /* The pieces as they go to the tray, with the common answers: `all` it makes, or the one that is
   * in hand. NULL: just that of pp_making_make(). (transfer full), of PpPiece. */
  GPtrArray *(*finish)    (const PpMaking *making,
                           PpUnits         units,
                           gboolean        all,
                           GError        **error);
} PpMakingWay;

guint              pp_making_n_ways   (void);
const PpMakingWay *pp_making_way_get  (guint       number);
/* Its number. */
guint              pp_making_way_find (const char *name);

extern const PpMakingWay pp_making_way_like;
extern const PpMakingWay pp_making_way_measures;
extern const PpMakingWay pp_making_way_ring;
extern const PpMakingWay pp_making_way_ladder;
extern const PpMakingWay pp_making_way_picture;
extern const PpMakingWay pp_making_way_drawing;

/* A few words at the top of a form. */
void pp_making_way_add_hint (GtkBox     *form,
                             const char *words);

G_END_DECLS
