/* distance.h: how far each full square of a grid is from the nearest empty one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* For each square of a grid of `width` times `height`, row after row, the square of the distance
 * from its centre to the centre of the nearest square that is not full, sides being 1: 0 if it is
 * not full itself. Exact where it is no more than enough², else at least that. Squares along the
 * grid's border must not be full; the grid is at most 30 000 a side. (transfer full) */
int *pp_distance_squared (const guint8 *full,
                          int           width,
                          int           height,
                          int           enough);

G_END_DECLS
