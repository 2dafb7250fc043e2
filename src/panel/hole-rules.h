/* hole-rules.h: where a hole may be in glass, and what goes through it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Distances are from the rim, thicknesses of the glass at the hole, all mm. From ASTM C1048 and
 * EN 12150-1, which are for glass to be heat treated; kiln-formed annealed glass has no such
 * standard, so they are borrowed guidance.
 */
#pragma once

#include <math.h>

#define PP_HOLE_LEAST 6.0         /* from the edge and across, in glass however thin */
#define PP_HOLE_LEAST_BETWEEN 10.0
#define PP_HOLE_CORNER_FACTOR 6.5 /* thicknesses, to a corner */
#define PP_KNOT_GRIP 1.0          /* mm a knot is to be wider than its hole */
#define PP_KNOT_OVER 2.0          /* mm it is made wider, so that it cannot pull through */
/* Degrees by which the wire's legs rise at least: each then pulls no more than the panel weighs. */
#define PP_WIRE_LEG_RISE 30.0

/* Nearer to the edge the glass may crack. */
static inline double
pp_hole_least_edge (double thickness)
{
  return fmax (thickness, PP_HOLE_LEAST);
}

/* Safe from the edge. */
static inline double
pp_hole_wanted_edge (double thickness)
{
  return fmax (2 * thickness, PP_HOLE_LEAST);
}

static inline double
pp_hole_least_diameter (double thickness)
{
  return fmax (thickness, PP_HOLE_LEAST);
}

/* From rim to rim, of two holes in glass of thickness `a` and `b`. */
static inline double
pp_hole_least_between (double a,
                       double b)
{
  return fmax (2 * fmax (a, b), PP_HOLE_LEAST_BETWEEN);
}
