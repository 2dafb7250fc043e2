/* hanging-side.h: the panel cut upright, seen from the side, as a path.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One unit of the context is 1 mm: x from the front face out to the viewer, y as on the panel.
 */
#pragma once

#include "check/check.h"

#include <cairo.h>

G_BEGIN_DECLS

/* Turns the context as the panel leans: on a wall the glass stands upright before it, in a window
 * it leans as it hangs. `hang` is nullable. */
void pp_hanging_side_lean       (cairo_t       *cr,
                                 const PpScene *scene,
                                 const PpHang  *hang);
/* Each piece a box between its base and its top; what floats is left out. */
void pp_hanging_side_add_pieces (cairo_t       *cr,
                                 const PpCheck *check);
void pp_hanging_side_add_glass  (cairo_t       *cr,
                                 const PpScene *scene);

G_END_DECLS
