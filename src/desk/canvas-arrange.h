/* canvas-arrange.h: acts on the pieces in hand, for the keys that mean them in a drag.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/canvas.h"

G_BEGIN_DECLS

/* Takes the piece in hand over (or under) the next one in the stack that it overlaps. FALSE where
 * none is in hand. */
gboolean pp_canvas_drag_past (PpCanvas *self,
                              gboolean  over);
/* Opens the choice of pieces that the chosen ones are swapped for, beside them. */
void     pp_canvas_open_swap (PpCanvas *self);

G_END_DECLS
