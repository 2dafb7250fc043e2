/* card-fused.h: the card of a part fused onto the glass: a vase and its pocket.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/card-face.h"

G_BEGIN_DECLS

#define PP_TYPE_CARD_FUSED (pp_card_fused_get_type ())
G_DECLARE_FINAL_TYPE (PpCardFused, pp_card_fused, PP, CARD_FUSED, PpCardFace)

G_END_DECLS
