/* drill.h: the safest places for the wire's holes that a layout hides.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/check.h"

G_BEGIN_DECLS

/* The checked panel with those of the wire's two holes that may be moved (guard.h) where, in this
 * order: no hole has a fault nor its knot; the least of knots and wire would show if pieces landed
 * a little off; nothing is said about holes or wire; the holes are at one height and evenly about
 * the centre of mass; they are farthest from what limits them; the way is least. Moved holes are
 * 40 mm apart or more, from centre to centre. The wire's length goes with the distance of the
 * holes. NULL if there is no wire, both holes stay, or no place found is without a fault; the same
 * panel where its own places are the best. (transfer full) */
PpPanel *pp_drill_new (const PpCheck *check,
                       GCancellable  *cancellable);

G_END_DECLS
