/* piece-bench.h: the piece bench: one screen on which a piece for the tray is made or made
 * otherwise.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The piece is drawn large with rulers, live; beside it how it is made (making-ways.h) and what is
 * asked of any piece (making-questions.h). It has an undo of its own.
 * Signal: changed, the making or the piece made of it.
 */
#pragma once

#include "desk/document.h"
#include "desk/making.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_PIECE_BENCH (pp_piece_bench_get_type ())
G_DECLARE_FINAL_TYPE (PpPieceBench, pp_piece_bench, PP, PIECE_BENCH, GtkWindow)

/* `piece` (nullable): id of a tray piece that is made otherwise; else a new one. (transfer none) */
PpPieceBench   *pp_piece_bench_new          (GtkWindow      *parent,
                                             PpDocument     *document,
                                             const char     *piece);
PpDocument     *pp_piece_bench_get_document (PpPieceBench   *self);
PpUnits         pp_piece_bench_get_units    (PpPieceBench   *self);
/* (transfer none), until it is changed. */
const PpMaking *pp_piece_bench_get_making   (PpPieceBench   *self);
/* What it makes now; where nothing can be made of that, the last that could be, in whichever way;
 * NULL: nothing was made yet. (transfer none) (nullable) */
const PpPiece  *pp_piece_bench_get_piece    (PpPieceBench   *self);
/* Makes a copy of `next` the present making: one step of undo, or the same as the last one with an
 * equal `merge_key` (nullable). */
void            pp_piece_bench_change       (PpPieceBench   *self,
                                             const PpMaking *next,
                                             const char     *merge_key);
/* Puts a copy of `next` in the place of the present making, as no step of undo: it was not told
 * otherwise, only more is known or something else is looked at. */
void            pp_piece_bench_amend        (PpPieceBench   *self,
                                             const PpMaking *next);
/* The keys go to the first of what is asked of every piece. */
void            pp_piece_bench_begin_asking (PpPieceBench   *self);
/* Shows `view` (transfer floating) in place of the piece while the way of this name is chosen. Once
 * a way, while its form is made. */
void            pp_piece_bench_set_view     (PpPieceBench   *self,
                                             const char     *way,
                                             GtkWidget      *view);

G_END_DECLS
