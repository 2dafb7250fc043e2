/* distance.h: how far each full square of a grid is from the nearest empty one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/cells.h"

G_BEGIN_DECLS

/* The full squares of a grid are in spans, row by row from the top, in each from the left; two may
 * touch. Of each square, span by span, `squared` gets the square of the distance from its centre to
 * the centre of the nearest square that is not full, sides being 1: exact where it is no more than
 * enough², else at least that. `farthest` gets the greatest of each span. Spans are not empty, the
 * grid is at most 30 000 a side, and `enough` at least 1. */
void pp_distance_squared (const PpSpan *full,
                          guint         n_spans,
                          int           enough,
                          int          *squared,
                          int          *farthest);

G_END_DECLS
