/* card-hole.h: the card of a hole: its distances from two edges, how wide, drilled or not.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/card-face.h"

G_BEGIN_DECLS

#define PP_TYPE_CARD_HOLE (pp_card_hole_get_type ())
G_DECLARE_FINAL_TYPE (PpCardHole, pp_card_hole, PP, CARD_HOLE, PpCardFace)

G_END_DECLS
