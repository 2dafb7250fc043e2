/* near.h: whether two pieces lie within a distance of each other.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

/* Whether some point of one outline, its inside counted, is no farther than `distance` mm from one
 * of the other's. */
gboolean pp_bodies_are_near (const PpBody *a,
                             const PpBody *b,
                             double        distance);

G_END_DECLS
