/* card-glass.h: the card of the glass and of the panel as a whole.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/card-face.h"

G_BEGIN_DECLS

#define PP_TYPE_CARD_GLASS (pp_card_glass_get_type ())
G_DECLARE_FINAL_TYPE (PpCardGlass, pp_card_glass, PP, CARD_GLASS, PpCardFace)

G_END_DECLS
