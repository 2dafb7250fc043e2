/* trace.c: borders of what is covered in a raster.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Squares of four neighbouring centres, each crossed by the border in one of 16 ways. A crossed
 * side is left by exactly one stretch of border, so the stretches are kept as "from this side to
 * that one" and followed until they come back.
 */
#include "piece/trace.h"

#include "shape/polygon.h"

#define SHARPEST 0.3 /* cosine of half a turn, beyond which a point is a tip and stays */

enum
{
  TOP,
  RIGHT,
  BOTTOM,
  LEFT,
  NONE,
};

/* By which corners are covered: 1 the upper left, 2 upper right, 4 lower right, 8 lower left. What
 * is covered lies to the right of the way. Two corners that only touch are kept apart. */
static const struct
{
  guchar from[2];
  guchar to[2];
} ways[16] = {
  { { NONE, NONE }, { NONE, NONE } },  { { TOP, NONE }, { LEFT, NONE } },
  { { RIGHT, NONE }, { TOP, NONE } },  { { RIGHT, NONE }, { LEFT, NONE } },
  { { BOTTOM, NONE }, { RIGHT, NONE } }, { { TOP, BOTTOM }, { LEFT, RIGHT } },
  { { BOTTOM, NONE }, { TOP, NONE } }, { { BOTTOM, NONE }, { LEFT, NONE } },
  { { LEFT, NONE }, { BOTTOM, NONE } }, { { TOP, NONE }, { BOTTOM, NONE } },
  { { RIGHT, LEFT }, { TOP, BOTTOM } }, { { RIGHT, NONE }, { BOTTOM, NONE } },
  { { LEFT, NONE }, { RIGHT, NONE } }, { { TOP, NONE }, { RIGHT, NONE } },
  { { LEFT, NONE }, { TOP, NONE } },   { { NONE, NONE }, { NONE, NONE } },
};

static guchar
cover_at (const PpRaster *raster,
          guint           x,
          guint           y)
{
  return raster->cover[(gsize) y * raster->stride + x];
}

/* A number for a side of the square whose upper left centre is (x, y): twice that of the centre it
 * begins at, and 1 more if it goes down. */
static guint
side_number (const PpRaster *raster,
             guint           x,
             guint           y,
             guchar          side)
{
  guint column = x + (side == RIGHT);
  guint row = y + (side == BOTTOM);

  return 2 * (row * raster->width + column) + (side == RIGHT || side == LEFT);
}

static GHashTable *
find_stretches (const PpRaster *raster,
                guchar          level)
{
  GHashTable *stretches = g_hash_table_new (NULL, NULL);

  for (guint y = 0; y + 1 < raster->height; y++)
    for (guint x = 0; x + 1 < raster->width; x++)
      {
        guint corners = (cover_at (raster, x, y) > level ? 1 : 0)
                        | (cover_at (raster, x + 1, y) > level ? 2 : 0)
                        | (cover_at (raster, x + 1, y + 1) > level ? 4 : 0)
                        | (cover_at (raster, x, y + 1) > level ? 8 : 0);

        for (guint i = 0; i < 2 && ways[corners].from[i] != NONE; i++)
          g_hash_table_insert (
            stretches, GUINT_TO_POINTER (side_number (raster, x, y, ways[corners].from[i]) + 1),
            GUINT_TO_POINTER (side_number (raster, x, y, ways[corners].to[i]) + 1));
      }
  return stretches;
}

static PpPoint
crossing (const PpRaster *raster,
          guchar          level,
          guint           side)
{
  guint x = side / 2 % raster->width;
  guint y = side / 2 / raster->width;
  gboolean is_down = side % 2 == 1;
  double from = cover_at (raster, x, y);
  double to = cover_at (raster, x + !is_down, y + is_down);
  double share = (level + 0.5 - from) / (to - from);

  return (PpPoint) { x + 0.5 + (is_down ? 0 : share), y + 0.5 + (is_down ? share : 0) };
}

/* Takes out what it follows. */
static GArray *
follow (const PpRaster *raster,
        guchar          level,
        GHashTable     *stretches,
        gpointer        start)
{
  GArray *ring = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  gpointer at = start;
  gpointer next;

  while (g_hash_table_steal_extended (stretches, at, NULL, &next))
    {
      PpPoint p = crossing (raster, level, GPOINTER_TO_UINT (at) - 1);

      g_array_append_val (ring, p);
      at = next;
    }
  return ring;
}

/* From the top down, so that the same raster gives the same rings. */
static int
compare_sides (gconstpointer a,
               gconstpointer b)
{
  return a < b ? -1 : a > b;
}

GPtrArray *
pp_trace (const PpRaster *raster,
          guchar          level)
{
  g_autoptr (GHashTable) stretches = find_stretches (raster, level);
  g_autoptr (GList) starts = g_list_sort (g_hash_table_get_keys (stretches), compare_sides);
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);

  for (GList *l = starts; l != NULL; l = l->next)
    if (g_hash_table_contains (stretches, l->data))
      g_ptr_array_add (rings, follow (raster, level, stretches, l->data));
  return rings;
}

/* Marks what must stay between two points that stay (Douglas and Peucker, Cartographica 10, 1973);
 * a stack of our own, as a long border nests deep. `last` may be n: the first point again. */
static void
mark (GArray   *ring,
      guint     first,
      guint     last,
      double    off,
      gboolean *stays)
{
  g_autoptr (GArray) stack = g_array_new (FALSE, FALSE, sizeof (guint));
  const PpPoint *points = (const PpPoint *) (gpointer) ring->data;

  g_array_append_val (stack, last);
  while (stack->len > 0)
    {
      guint end = g_array_index (stack, guint, stack->len - 1);
      guint farthest = first;
      double most = off;

      for (guint i = first + 1; i < end; i++)
        {
          double distance = pp_segment_distance (points[first], points[end % ring->len], points[i]);

          if (distance > most)
            {
              most = distance;
              farthest = i;
            }
        }
      if (farthest > first)
        {
          stays[farthest] = TRUE;
          g_array_append_val (stack, farthest);
          continue;
        }
      first = end;
      g_array_set_size (stack, stack->len - 1);
    }
}

/* TRUE for the points that stay. (transfer full) */
static gboolean *
choose (GArray *ring,
        double  off)
{
  gboolean *stays = g_new0 (gboolean, ring->len);
  const PpPoint *points = (const PpPoint *) (gpointer) ring->data;
  guint opposite = 0;

  for (guint i = 1; i < ring->len; i++)
    if (pp_point_distance (points[0], points[i]) > pp_point_distance (points[0], points[opposite]))
      opposite = i;
  stays[0] = stays[opposite] = TRUE;
  mark (ring, 0, opposite, off, stays);
  mark (ring, opposite, ring->len, off, stays);
  return stays;
}

GArray *
pp_ring_simplify (GArray *ring,
                  double  off)
{
  g_autofree gboolean *stays = choose (ring, off);
  GArray *simple = g_array_new (FALSE, FALSE, sizeof (PpPoint));

  for (guint i = 0; i < ring->len; i++)
    if (stays[i])
      g_array_append_val (simple, g_array_index (ring, PpPoint, i));
  return simple;
}

/* Between the straight way from one point to a later one and the ring's own, which bulges to the
 * left as seen where it is positive. */
static double
bulge (GArray *ring,
       guint   first,
       guint   last)
{
  const PpPoint *points = (const PpPoint *) (gpointer) ring->data;
  double area = 0;

  for (guint i = first + 1; i < last; i++)
    area += pp_point_cross (points[first], points[i], points[(i + 1) % ring->len]) / 2;
  return area;
}

/* Half of what lies beyond either of the two sides at a point is taken in by moving it. */
static PpPoint
move_out (PpPoint before,
          PpPoint at,
          PpPoint after,
          double  area)
{
  double a = pp_point_distance (before, at), b = pp_point_distance (at, after);
  PpPoint left = { (at.y - before.y) / a + (after.y - at.y) / b,
                   (before.x - at.x) / a + (at.x - after.x) / b };
  double twice = hypot (left.x, left.y); /* of the cosine of half the turn */
  double by = area / (a + b) / fmax (twice / 2, SHARPEST);

  if (twice < 2 * SHARPEST)
    return at;
  return (PpPoint) { at.x + left.x / twice * by, at.y + left.y / twice * by };
}

GArray *
pp_ring_simplify_evenly (GArray *ring,
                         double  off)
{
  g_autofree gboolean *stays = choose (ring, off);
  g_autoptr (GArray) kept = g_array_new (FALSE, FALSE, sizeof (guint));
  GArray *even = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  guint n;

  for (guint i = 0; i < ring->len; i++)
    if (stays[i])
      g_array_append_val (kept, i);
  n = kept->len;
  for (guint k = 0; k < n; k++)
    {
      guint before = g_array_index (kept, guint, (k + n - 1) % n);
      guint at = g_array_index (kept, guint, k);
      guint after = g_array_index (kept, guint, (k + 1) % n);
      double area = bulge (ring, before, k > 0 ? at : ring->len)
                    + bulge (ring, at, k + 1 < n ? after : ring->len);
      PpPoint p = move_out (g_array_index (ring, PpPoint, before),
                            g_array_index (ring, PpPoint, at),
                            g_array_index (ring, PpPoint, after), area);

      g_array_append_val (even, p);
    }
  return even;
}
