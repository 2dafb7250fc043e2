/* stroke.c: where a maker means glass to be parted or joined.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/stroke.h"

#include "shape/polygon.h"

#define N_WAYS 36        /* directions of a cut that are tried, */
#define NEARBY 1.5       /* mm: and places so far off, */
#define NEARNESS 0.5     /* each mm away counting as so much of a longer cut */
#define BEYOND 0.8       /* mm that a cut goes on outside the glass */

/* How far it is from a place within a ring to where a line first leaves it, along `way`; INFINITY
 * for a place without. */
static double
find_edge (const PpPoint *ring,
           guint          n,
           PpPoint        at,
           PpPoint        way)
{
  double nearest = INFINITY;

  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint a = { ring[i].x - at.x, ring[i].y - at.y };
      PpPoint b = { ring[i + 1].x - at.x, ring[i + 1].y - at.y };
      double side_a = way.x * a.y - way.y * a.x, side_b = way.x * b.y - way.y * b.x;
      double share, along;

      if ((side_a < 0) == (side_b < 0))
        continue;
      share = side_a / (side_a - side_b);
      along = way.x * (a.x + share * (b.x - a.x)) + way.y * (a.y + share * (b.y - a.y));
      if (along > 0 && along < nearest)
        nearest = along;
    }
  return nearest;
}

/* The shortest cut right through a place, if it is better than the best before. */
static void
try_cuts (const PpPoint *ring,
          guint          n,
          PpPoint        at,
          double         cost,
          double        *best,
          PpStroke      *stroke)
{
  for (guint k = 0; k < N_WAYS; k++)
    {
      double angle = k * G_PI / N_WAYS;
      PpPoint way = { cos (angle), sin (angle) };
      double on = find_edge (ring, n, at, way);
      double back = find_edge (ring, n, at, (PpPoint) { -way.x, -way.y });

      if (!(on + back + cost < *best))
        continue;
      *best = on + back + cost;
      on += BEYOND;
      back += BEYOND;
      *stroke = (PpStroke) { { at.x - back * way.x, at.y - back * way.y },
                             { at.x + on * way.x, at.y + on * way.y }, FALSE };
    }
}

gboolean
pp_stroke_part (const PpFound *found,
                PpPoint        at,
                PpStroke      *stroke)
{
  const PpPoint *ring;
  double best = INFINITY;
  guint piece, n;

  if (!pp_found_at (found, at, &piece))
    return FALSE;
  ring = pp_outline_get_ring (found->outlines[piece], 0, &n);
  for (int i = -1; i <= 1; i++)
    for (int j = -1; j <= 1; j++)
      {
        PpPoint near = { at.x + i * NEARBY, at.y + j * NEARBY };
        guint other;

        if (pp_found_at (found, near, &other) && other == piece)
          try_cuts (ring, n, near, NEARNESS * pp_point_distance (at, near), &best, stroke);
      }
  return isfinite (best);
}

static PpPoint
find_nearest (const PpOutline *outline,
              PpPoint          to)
{
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);
  PpPoint nearest = ring[0];

  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint a = ring[i], way = { ring[i + 1].x - a.x, ring[i + 1].y - a.y };
      double square = way.x * way.x + way.y * way.y;
      double share = square > 0 ? ((to.x - a.x) * way.x + (to.y - a.y) * way.y) / square : 0;
      PpPoint p;

      share = CLAMP (share, 0, 1);
      p = (PpPoint) { a.x + share * way.x, a.y + share * way.y };
      if (pp_point_distance (p, to) < pp_point_distance (nearest, to))
        nearest = p;
    }
  return nearest;
}

/* The two nearest to a place; FALSE if there are less. */
static gboolean
find_two (const PpFound *found,
          PpPoint        at,
          guint          two[2])
{
  double first = INFINITY, second = INFINITY;
  guint within;

  if (!pp_found_at (found, at, &within))
    within = G_MAXUINT;
  for (guint i = 0; i < found->n_pieces; i++)
    {
      double away = i == within ? 0 : pp_point_distance (find_nearest (found->outlines[i], at), at);

      if (away < first)
        {
          second = first;
          two[1] = two[0];
          first = away;
          two[0] = i;
        }
      else if (away < second)
        {
          second = away;
          two[1] = i;
        }
    }
  return isfinite (second);
}

gboolean
pp_stroke_join (const PpFound *found,
                PpPoint        at,
                PpStroke      *stroke)
{
  guint two[2] = { 0, 0 };

  if (!find_two (found, at, two))
    return FALSE;
  *stroke = (PpStroke) { .joins = TRUE };
  stroke->to = find_nearest (found->outlines[two[1]], at);
  stroke->from = find_nearest (found->outlines[two[0]], stroke->to);
  stroke->to = find_nearest (found->outlines[two[1]], stroke->from);
  return pp_point_distance (stroke->from, stroke->to) <= PP_STROKE_MOST_GAP
         && pp_segment_distance (stroke->from, stroke->to, at) <= PP_STROKE_MOST_GAP;
}
