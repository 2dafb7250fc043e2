/* polygon.h: plain measures of outlines and point sets.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lengths in mm, areas in mm²; any frame. What needs overlay or distance is in region.h.
 */
#pragma once

#include "panel/outline.h"

G_BEGIN_DECLS

/* Of an outline: from one position to the next. */
typedef struct
{
  PpPoint a;
  PpPoint b;
} PpSide;

/* Of the place on a side that is nearest to `p`, from its start: 0 to 1. */
static inline double
pp_side_nearest (PpSide  side,
                 PpPoint p)
{
  double dx = side.b.x - side.a.x, dy = side.b.y - side.a.y;
  double along = (p.x - side.a.x) * dx + (p.y - side.a.y) * dy, length = dx * dx + dy * dy;

  return along <= 0 ? 0 : along >= length ? 1 : along / length;
}

/* That place. */
static inline PpPoint
pp_side_place_nearest (PpSide  side,
                       PpPoint p)
{
  double share = pp_side_nearest (side, p);

  return (PpPoint) { side.a.x + share * (side.b.x - side.a.x),
                     side.a.y + share * (side.b.y - side.a.y) };
}

/* From there to `p`, mm². */
static inline double
pp_side_squared_distance (PpSide  side,
                          PpPoint p)
{
  double share = pp_side_nearest (side, p);
  double x = p.x - side.a.x - share * (side.b.x - side.a.x);
  double y = p.y - side.a.y - share * (side.b.y - side.a.y);

  return x * x + y * y;
}

/* From one side to another; 0 where they cross. */
double   pp_side_distance      (PpSide           one,
                                PpSide           other);

/* Signed: positive where a closed ring turns clockwise as seen (y down). */
double   pp_ring_area          (const PpPoint   *ring,
                                guint            n_positions);
/* Border less holes, never negative, whichever way the rings turn. */
double   pp_outline_area       (const PpOutline *outline);
/* mm² of it to the left of the line x = `middle`. */
double   pp_outline_area_left  (const PpOutline *outline,
                                double           middle);
/* Centroid of the area, holes taken out. An outline without area gives its box's middle. */
PpPoint  pp_outline_centroid   (const PpOutline *outline);
/* The least distance of two parallel lines that enclose it. */
double   pp_outline_width      (const PpOutline *outline);
/* The longer side of its box. */
double   pp_outline_length     (const PpOutline *outline);

/* Whether no ring crosses or touches along a line itself or another and holes lie inside the
 * border (valid by the simple features standard, ISO 19125-1). If not, `reason` (nullable) gets
 * a short text (transfer full) and `at` (nullable) the place. */
gboolean pp_outline_is_simple  (const PpOutline *outline,
                                char           **reason,
                                PpPoint         *at);

/* Convex hull of `points`, counterclockwise as seen with y up, without repeats or points on an
 * edge. Reorders `points`; writes the corners to `hull` (room for n_points) and returns their
 * number: 1 for a point, 2 for a segment. */
guint    pp_convex_hull        (PpPoint         *points,
                                guint            n_points,
                                PpPoint         *hull);
/* Signed distance of `p` to the border of the convex polygon, positive inside. A hull of one or
 * two corners has no inside: minus the distance to it. `n_corners` is at least 1. */
double   pp_hull_margin        (const PpPoint   *hull,
                                guint            n_corners,
                                PpPoint          p);
/* From `p` to the nearest side of any ring, from within or without. */
double   pp_outline_border_distance (const PpOutline *outline,
                                     PpPoint          p);
double   pp_segment_distance   (PpPoint          a,
                                PpPoint          b,
                                PpPoint          p);

/* Sides of a circle whose chords stay within PP_CURVE_TOLERANCE of it, a multiple of four. */
guint    pp_circle_count_sides (double           radius);
/* A closed ring of them. (transfer full) */
PpPoint *pp_circle_make_ring   (PpPoint          centre,
                                double           radius,
                                guint           *n_positions);

G_END_DECLS
