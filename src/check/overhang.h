/* overhang.h: how far a piece reaches beyond the background.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

#define PP_NO_OVERHANG (-1.0)

/* mm from the background to the corner of the piece farthest from it, 0 if only what is between
 * corners lies beyond; PP_NO_OVERHANG if all of it lies on glass. */
double pp_overhang_of (const PpScene *scene,
                       const PpBody  *body);

G_END_DECLS
