/* piece-picture.h: a piece of the tray as a picture, and how it lies in its compartment.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * px are logical, mm are in the piece's own frame but where it says "as it lies". A piece lies
 * upright or, if it is long, turned a quarter clockwise.
 */
#pragma once

#include "art/art.h"
#include "panel/record.h"

#include <cairo.h>

G_BEGIN_DECLS

/* Of a piece as it takes least height. */
typedef struct
{
  double across; /* mm */
  double along;  /* mm, at least `across` unless the piece is wider than high */
} PpPieceSpan;

PpPieceSpan      pp_piece_span         (const PpPiece    *piece);
/* Sizes by which the common scale of a tray is chosen: the largest of its pieces, but no more
 * than twice what is usual, so that one very large piece does not make all others tiny. `tray`
 * (PpPiece) is not empty. */
PpPieceSpan      pp_piece_span_of_tray (GPtrArray        *tray);

/* How a piece lies. */
typedef struct
{
  double   scale;  /* px a mm */
  gboolean turned;
  PpBox    box;    /* px round the piece's origin, as it lies */
} PpPieceLie;

/* Within `width` x `height` px: to the scale at which the tray's pieces have room, no smaller than
 * `least` px however, and no larger than there is room. */
PpPieceLie       pp_piece_lie          (const PpPiece    *piece,
                                        PpPieceSpan       tray,
                                        double            width,
                                        double            height,
                                        double            least);
/* `px` round the piece's origin as it lies, in mm of its own frame. Beside the piece it is the
 * nearest place on it, so that even a thin piece can be taken hold of. */
PpPoint          pp_piece_lie_to_piece (const PpPieceLie *self,
                                        const PpPiece    *piece,
                                        PpPoint           px);

/* The piece with a soft shadow, `factor` device pixels a px; `art` is nullable, `height` is that
 * of its top over what it lies on, in mm. `origin`: where in the picture, in px, the piece's origin
 * is; whole numbers. (transfer full) */
cairo_surface_t *pp_piece_picture      (const PpPiece    *piece,
                                        PpArt            *art,
                                        double            scale,
                                        gboolean          turned,
                                        double            height,
                                        int               factor,
                                        PpPoint          *origin);
G_END_DECLS
