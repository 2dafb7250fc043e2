/* card-wire.h: the card of the wire: its length, its knots, what it may bear.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/card-face.h"

G_BEGIN_DECLS

#define PP_TYPE_CARD_WIRE (pp_card_wire_get_type ())
G_DECLARE_FINAL_TYPE (PpCardWire, pp_card_wire, PP, CARD_WIRE, PpCardFace)

G_END_DECLS
