/* card-pieces.h: the card of several pieces: how large they are together, and where.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/card-face.h"

G_BEGIN_DECLS

#define PP_TYPE_CARD_PIECES (pp_card_pieces_get_type ())
G_DECLARE_FINAL_TYPE (PpCardPieces, pp_card_pieces, PP, CARD_PIECES, PpCardFace)

G_END_DECLS
