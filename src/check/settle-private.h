/* settle-private.h: what the parts of settling share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/loops.h"
#include "check/settle.h"

G_BEGIN_DECLS

/* The base plane from column `i` of row `j` on. */
static inline PpLoopPlane
pp_rest_plane_along (const PpBody  *body,
                     const PpPlane *plane,
                     int            i,
                     int            j)
{
  PpPoint c = body->centroid;

  return (PpLoopPlane) {
    .start = plane->c + plane->a * (pp_cell_centre (i) - c.x)
             + plane->b * (pp_cell_centre (j) - c.y),
    .step = plane->a * PP_CELL,
  };
}

/* Sets `base`, `top`, `raised` and `middle` by its plane. `pocket` (nullable): the cells of the
 * fused part in whose pocket it stands. */
void pp_rest_find_extremes (PpRest        *self,
                            const PpBody  *body,
                            const PpCells *pocket);

G_END_DECLS
