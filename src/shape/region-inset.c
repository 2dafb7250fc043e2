/* region-inset.c: what of an area is farther from its border than a distance.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GEOS has a buffer of negative width, but it first smooths dents of up to a hundredth of the
 * width away; here every side keeps its strip. A point inside is nearest to the inner part of a
 * side, which its strip covers, or to a reflex corner, which its wedge covers.
 */
#include "shape/region-private.h"

#include "shape/polygon.h"

/* The wedge about a reflex corner, between the strips of its two sides: all that is within
 * `distance` of the corner and of no side. `from` and `to` are the strips' ends. */
static void
add_wedge (GPtrArray *parts,
           PpPoint    corner,
           PpPoint    from,
           PpPoint    to,
           double     distance)
{
  double start = atan2 (from.y - corner.y, from.x - corner.x);
  double turn = atan2 (to.y - corner.y, to.x - corner.x) - start;
  guint n;
  g_autofree PpPoint *points = NULL;

  if (turn > G_PI)
    turn -= 2 * G_PI;
  else if (turn < -G_PI)
    turn += 2 * G_PI;
  n = MAX (1, (guint) ceil (fabs (turn) / (2 * G_PI) * pp_circle_count_sides (distance)));
  points = g_new (PpPoint, n + 3);
  points[0] = points[n + 2] = corner;
  for (guint i = 0; i <= n; i++)
    points[i + 1] = (PpPoint) { corner.x + distance * cos (start + turn * i / n),
                                corner.y + distance * sin (start + turn * i / n) };
  points[1] = from; /* the very corners of the strips, so that no sliver is left */
  points[n + 1] = to;
  g_ptr_array_add (parts, pp_geos_ring_polygon (points, n + 3));
}

/* `p` moved by `distance` to the inner side of the directed side a-b; `side` is 1 where the
 * inside lies to the left with y up. */
static PpPoint
move_inward (PpPoint p,
             PpPoint a,
             PpPoint b,
             double  distance,
             double  side)
{
  double length = pp_point_distance (a, b);

  return (PpPoint) { p.x - side * distance * (b.y - a.y) / length,
                     p.y + side * distance * (b.x - a.x) / length };
}

/* Everything inside of a ring within `distance` of it, as strips and wedges. `p` is closed and
 * without repeats; `side` as in move_inward(). */
static void
add_swept_ring (GPtrArray     *parts,
                const PpPoint *p,
                guint          n,
                double         distance,
                double         side)
{
  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint a = p[i], b = p[i + 1], c = p[i + 2 < n ? i + 2 : 1];
      PpPoint strip[] = { a, b, move_inward (b, a, b, distance, side),
                          move_inward (a, a, b, distance, side), a };

      g_ptr_array_add (parts, pp_geos_ring_polygon (strip, G_N_ELEMENTS (strip)));
      if (side * pp_point_cross (a, b, c) < 0)
        add_wedge (parts, b, strip[2], move_inward (b, b, c, distance, side), distance);
    }
}

typedef struct
{
  GPtrArray *parts;
  double     distance;
} Sweep;

static void
sweep_polygon (const PpOutline *polygon,
               gpointer         data)
{
  const Sweep *sweep = data;

  for (guint r = 0; r < pp_outline_get_n_rings (polygon); r++)
    {
      guint n, kept = 0;
      const PpPoint *ring = pp_outline_get_ring (polygon, r, &n);
      g_autofree PpPoint *p = g_new (PpPoint, n);

      for (guint i = 0; i < n; i++)
        if (kept == 0 || p[kept - 1].x != ring[i].x || p[kept - 1].y != ring[i].y)
          p[kept++] = ring[i];
      add_swept_ring (sweep->parts, p, kept, sweep->distance,
                      (pp_ring_area (p, kept) > 0) == (r == 0) ? 1 : -1);
    }
}

PpRegion *
pp_region_inset (PpRegion *self,
                 double    distance)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new ();
  g_autoptr (PpRegion) swept = NULL;
  Sweep sweep = { parts, distance };
  PpBox box = pp_region_get_box (self);

  if (distance <= 0)
    return pp_region_ref (self);
  if (2 * distance >= fmin (pp_box_width (box), pp_box_height (box)))
    return pp_region_new_empty ();
  pp_region_foreach (self, sweep_polygon, &sweep);
  swept = pp_region_union_take (parts);
  return pp_region_difference (self, swept);
}
