/* piece-view.h: a piece drawn large, with rulers that begin at its edges.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sizes go by steps, so that a piece made a little larger is seen to grow.
 * Signals: pressed (double x, double y), mm in the piece's own frame.
 */
#pragma once

#include "panel/panel.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_PIECE_VIEW (pp_piece_view_get_type ())
G_DECLARE_FINAL_TYPE (PpPieceView, pp_piece_view, PP, PIECE_VIEW, GtkWidget)

void pp_piece_view_set_units (PpPieceView   *self,
                              PpUnits        units);
/* `piece` is nullable. Marks of the piece before are gone. */
void pp_piece_view_set_piece (PpPieceView   *self,
                              const PpPiece *piece);
/* A thin line from one place to another, mm in the piece's frame, with a few words at its end, so
 * that a measure is seen where it is taken; `words` nullable. */
void pp_piece_view_add_line  (PpPieceView   *self,
                              PpPoint        from,
                              PpPoint        to,
                              const char    *words);
/* Round the piece's origin. */
void pp_piece_view_add_ring  (PpPieceView   *self,
                              double         radius);

G_END_DECLS
