/* card-piece.h: the card of one piece: place, turn, stack place, how it rests.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/card-face.h"

G_BEGIN_DECLS

#define PP_TYPE_CARD_PIECE (pp_card_piece_get_type ())
G_DECLARE_FINAL_TYPE (PpCardPiece, pp_card_piece, PP, CARD_PIECE, PpCardFace)

G_END_DECLS
