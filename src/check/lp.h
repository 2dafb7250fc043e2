/* lp.h: the lowest plane that clears a set of points.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     minimise   c
 *     subject to c + a·x + b·y >= h  for each point (x, y, h),  -1 <= a, b <= 1
 *
 * and of all optima (c within 1e-9 of the least) the one with the least a² + b²; then c is the
 * greatest h - a·x - b·y.
 */
#pragma once

#include "shape/cells.h"

G_BEGIN_DECLS

#define PP_LP_MAX_SLOPE 1.0

/* mm: how far above the least c still counts as optimal. */
#define PP_LP_OPTIMUM 1e-9

typedef struct
{
  double a;
  double b;
  double c; /* mm, in the unit of h */
} PpPlane;

/* Points at one y, PP_CELL apart from `x` on; mm from the centre of mass. */
typedef struct
{
  double x;
  double y;
  guint  n;
} PpLpRow;

/* `h`, finite, of the points row after row, of which there is one at least. `passes` (nullable):
 * how often all of them were looked at. */
PpPlane pp_lp_lowest_plane (const PpLpRow *rows,
                            guint          n_rows,
                            const double  *h,
                            guint         *passes);

G_END_DECLS
