/* kind-guess.c: what kind of piece an outline looks like.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "piece/kind-guess.h"

#include "shape/polygon.h"

/* Slender: its area in squares of its width; full: its share of its convex hull. */
#define ROD_SLENDER 12.0
#define BENT_FULL 0.5
#define LONG_SLENDER 1.4
#define NOTCHED_FULL 0.985

static double
get_share_of_hull (const PpOutline *outline)
{
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);
  g_autofree PpPoint *points = g_memdup2 (ring, n * sizeof *ring);
  g_autofree PpPoint *hull = g_new (PpPoint, n + 1);
  guint n_corners = pp_convex_hull (points, n, hull);

  hull[n_corners] = hull[0];
  return fabs (pp_ring_area (ring, n)) / fabs (pp_ring_area (hull, n_corners + 1));
}

PpKind
pp_kind_guess (const PpOutline *outline)
{
  double width, slender, full;

  g_return_val_if_fail (outline != NULL, PP_KIND_FILLER);

  width = pp_outline_width (outline);
  slender = pp_outline_area (outline) / (width * width);
  full = get_share_of_hull (outline);
  if (slender >= ROD_SLENDER || full < BENT_FULL)
    return PP_KIND_STEM;
  if (slender >= LONG_SLENDER)
    return PP_KIND_LEAF;
  return full < NOTCHED_FULL ? PP_KIND_FLOWER : PP_KIND_FILLER;
}
