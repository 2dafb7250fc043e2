/* polygon.c: plain measures of outlines and point sets.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/polygon.h"

#include "panel/tolerance.h"

#include <stdlib.h>

/* Twice the signed area of a ring and its first moments, taken about its first position so that a
 * small outline far from the origin loses no figures. */
typedef struct
{
  double area2;
  double mx;
  double my;
} RingSums;

static RingSums
sum_ring (const PpPoint *p,
          guint          n,
          PpPoint        about)
{
  RingSums sums = { 0 };

  for (guint i = 0; i + 1 < n; i++)
    {
      double x0 = p[i].x - about.x, y0 = p[i].y - about.y;
      double x1 = p[i + 1].x - about.x, y1 = p[i + 1].y - about.y;
      double cross = x0 * y1 - x1 * y0;

      sums.area2 += cross;
      sums.mx += cross * (x0 + x1);
      sums.my += cross * (y0 + y1);
    }
  return sums;
}

/* Border positive, holes negative, whichever way they turn. */
static RingSums
sum_outline (const PpOutline *outline,
             PpPoint          about)
{
  RingSums total = { 0 };

  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);
      RingSums ring = sum_ring (p, n, about);
      double sign = (ring.area2 < 0) == (r == 0) ? -1 : 1;

      total.area2 += sign * ring.area2;
      total.mx += sign * ring.mx;
      total.my += sign * ring.my;
    }
  return total;
}

double
pp_ring_area (const PpPoint *ring,
              guint          n_positions)
{
  g_return_val_if_fail (n_positions > 0, 0);
  return sum_ring (ring, n_positions, ring[0]).area2 / 2;
}

static PpPoint
first_position (const PpOutline *outline)
{
  guint n;

  return pp_outline_get_ring (outline, 0, &n)[0];
}

double
pp_outline_area (const PpOutline *outline)
{
  return fmax (sum_outline (outline, first_position (outline)).area2 / 2, 0);
}

PpPoint
pp_outline_centroid (const PpOutline *outline)
{
  PpPoint about = first_position (outline);
  RingSums sums = sum_outline (outline, about);

  if (!(sums.area2 > 0))
    return pp_box_middle (pp_outline_get_box (outline));
  return (PpPoint) { about.x + sums.mx / (3 * sums.area2), about.y + sums.my / (3 * sums.area2) };
}

static int
compare_points (gconstpointer a,
                gconstpointer b)
{
  const PpPoint *p = a, *q = b;

  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return p->y < q->y ? -1 : p->y > q->y;
}

static gboolean
are_in_order (const PpPoint *points,
              guint          n)
{
  for (guint i = 1; i < n; i++)
    if (compare_points (&points[i - 1], &points[i]) > 0)
      return FALSE;
  return TRUE;
}

/* Andrew's monotone chain: one chain over the points in the order given. */
static guint
add_chain (const PpPoint *points,
           guint          n_points,
           int            step,
           PpPoint       *hull,
           guint          n)
{
  guint first = n;
  const PpPoint *p = step > 0 ? points : points + n_points - 1;

  for (guint i = 0; i < n_points; i++, p += step)
    {
      while (n > first + 1 && pp_point_cross (hull[n - 2], hull[n - 1], *p) <= 0)
        n--;
      hull[n++] = *p;
    }
  return n - 1; /* the last point begins the other chain */
}

guint
pp_convex_hull (PpPoint *points,
                guint    n_points,
                PpPoint *hull)
{
  g_autofree PpPoint *work = NULL;
  guint n = 0, n_distinct = 0;

  g_return_val_if_fail (n_points > 0, 0);
  if (!are_in_order (points, n_points))
    qsort (points, n_points, sizeof *points, compare_points);
  for (guint i = 0; i < n_points; i++)
    if (n_distinct == 0 || compare_points (&points[n_distinct - 1], &points[i]) != 0)
      points[n_distinct++] = points[i];
  if (n_distinct == 1)
    {
      hull[0] = points[0];
      return 1;
    }
  work = g_new (PpPoint, 2 * n_distinct + 2);
  n = add_chain (points, n_distinct, 1, work, 0);
  n = add_chain (points, n_distinct, -1, work, n);
  for (guint i = 0; i < n; i++)
    hull[i] = work[i];
  return n;
}

double
pp_segment_distance (PpPoint a,
                     PpPoint b,
                     PpPoint p)
{
  double share = pp_side_nearest ((PpSide) { a, b }, p);

  return hypot (p.x - a.x - share * (b.x - a.x), p.y - a.y - share * (b.y - a.y));
}

double
pp_side_distance (PpSide one,
                  PpSide other)
{
  if (pp_point_cross (one.a, one.b, other.a) * pp_point_cross (one.a, one.b, other.b) < 0
      && pp_point_cross (other.a, other.b, one.a) * pp_point_cross (other.a, other.b, one.b) < 0)
    return 0;
  return sqrt (fmin (fmin (pp_side_squared_distance (other, one.a),
                           pp_side_squared_distance (other, one.b)),
                     fmin (pp_side_squared_distance (one, other.a),
                           pp_side_squared_distance (one, other.b))));
}

double
pp_outline_border_distance (const PpOutline *outline,
                            PpPoint          p)
{
  double least = INFINITY; /* mm² */

  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *ring = pp_outline_get_ring (outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        {
          double squared = pp_side_squared_distance ((PpSide) { ring[i], ring[i + 1] }, p);

          least = MIN (least, squared);
        }
    }
  return sqrt (least);
}

/* The integral of min (x, middle) along dy from a to b. Round a closed ring it is the area to the
 * left of the line x = middle, exactly, as the divergence of (min (x, middle), 0) is 1 there and
 * 0 to the right. */
static double
sweep_left (PpPoint a,
            PpPoint b,
            double  middle)
{
  double left = fmin (a.x, middle) - middle, right = fmin (b.x, middle) - middle;
  double share = 1;

  if ((a.x < middle) != (b.x < middle))
    share = (a.x < middle ? middle - a.x : middle - b.x) / fabs (b.x - a.x);
  return (left + right) / 2 * share * (b.y - a.y);
}

double
pp_outline_area_left (const PpOutline *outline,
                      double           middle)
{
  double sum = 0;

  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);
      double ring = 0;

      for (guint i = 0; i + 1 < n; i++)
        ring += sweep_left (p[i], p[i + 1], middle);
      sum += r == 0 ? fabs (ring) : -fabs (ring);
    }
  return sum;
}

double
pp_hull_margin (const PpPoint *hull,
                guint          n_corners,
                PpPoint        p)
{
  double least = INFINITY;
  gboolean inside = n_corners > 2;

  g_return_val_if_fail (n_corners > 0, 0);
  for (guint i = 0; i < n_corners; i++)
    {
      PpPoint a = hull[i], b = hull[(i + 1) % n_corners];

      least = fmin (least, pp_segment_distance (a, b, p));
      inside = inside && pp_point_cross (a, b, p) >= 0;
    }
  return inside ? least : -least;
}

/* Rotating calipers: the corner farthest from an edge only moves on as the edge does. */
static double
hull_width (const PpPoint *hull,
            guint          n)
{
  double least = INFINITY;
  guint far = 1;

  for (guint i = 0; i < n; i++)
    {
      PpPoint a = hull[i], b = hull[(i + 1) % n];

      while (pp_point_cross (a, b, hull[(far + 1) % n]) > pp_point_cross (a, b, hull[far]))
        far = (far + 1) % n;
      least = fmin (least, pp_point_cross (a, b, hull[far]) / pp_point_distance (a, b));
    }
  return least;
}

double
pp_outline_width (const PpOutline *outline)
{
  g_autofree PpPoint *points = NULL;
  g_autofree PpPoint *hull = NULL;
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);
  guint n_corners;

  points = g_memdup2 (ring, n * sizeof *ring);
  hull = g_new (PpPoint, n);
  n_corners = pp_convex_hull (points, n, hull);
  return n_corners > 2 ? hull_width (hull, n_corners) : 0;
}

double
pp_outline_length (const PpOutline *outline)
{
  PpBox box = pp_outline_get_box (outline);

  return fmax (pp_box_width (box), pp_box_height (box));
}

guint
pp_circle_count_sides (double radius)
{
  double cosine = 1 - PP_CURVE_TOLERANCE / fmax (radius, 2 * PP_CURVE_TOLERANCE);

  return 4 * (guint) ceil (G_PI / acos (cosine) / 4);
}

PpPoint *
pp_circle_make_ring (PpPoint centre,
                     double  radius,
                     guint  *n_positions)
{
  guint n = pp_circle_count_sides (radius);
  PpPoint *ring = g_new (PpPoint, n + 1);

  for (guint i = 0; i < n; i++)
    {
      double t = 2 * G_PI * i / n;

      ring[i] = (PpPoint) { centre.x + radius * cos (t), centre.y + radius * sin (t) };
    }
  ring[n] = ring[0];
  *n_positions = n + 1;
  return ring;
}
