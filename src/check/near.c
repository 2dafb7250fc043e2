/* near.c: whether two pieces lie within a distance of each other.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Either two of their sides do, or one piece lies wholly in the other. A side is held against those
 * alone that lie in bands of like height.
 */
#include "check/near.h"

#include "check/cover.h"
#include "shape/polygon.h"

static gboolean
sides_are_near (PpSide a,
                PpSide b,
                double distance)
{
  if (MIN (a.a.x, a.b.x) > MAX (b.a.x, b.b.x) + distance
      || MAX (a.a.x, a.b.x) < MIN (b.a.x, b.b.x) - distance
      || MIN (a.a.y, a.b.y) > MAX (b.a.y, b.b.y) + distance
      || MAX (a.a.y, a.b.y) < MIN (b.a.y, b.b.y) - distance)
    return FALSE;
  return pp_side_distance (a, b) <= distance;
}

static gboolean
is_near_side (const PpBody *body,
              PpSide        side,
              double        distance)
{
  const PpBands *bands = pp_body_get_bands (body);
  guint first = pp_bands_at (bands, MIN (side.a.y, side.b.y) - distance);
  guint last = pp_bands_at (bands, MAX (side.a.y, side.b.y) + distance);

  for (guint i = bands->first[first]; i < bands->first[last + 1]; i++)
    if (sides_are_near (side, pp_bands_get_side (bands, i), distance))
      return TRUE;
  return FALSE;
}

static gboolean
is_inside (const PpBody *inner,
           const PpBody *outer)
{
  PpCover cover = pp_cover_of_body (outer);
  guint n;

  return pp_cover_contains (&cover, pp_outline_get_ring (inner->outline, 0, &n)[0]);
}

gboolean
pp_bodies_are_near (const PpBody *a,
                    const PpBody *b,
                    double        distance)
{
  PpBox reach = pp_box_grow (b->box, distance);

  if (!pp_box_meets (a->box, reach))
    return FALSE;
  for (guint r = 0; r < pp_outline_get_n_rings (a->outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (a->outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        {
          PpBox box = pp_box_add_point (pp_box_add_point (pp_box_empty (), p[i]), p[i + 1]);

          if (pp_box_meets (box, reach) && is_near_side (b, (PpSide) { p[i], p[i + 1] }, distance))
            return TRUE;
        }
    }
  return is_inside (a, b) || is_inside (b, a);
}
