/* point.h: points and boxes of the plane.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Throughout the program lengths are millimetres, x points right and y DOWN as seen from the
 * front, z points out of the front face toward the viewer, and angles are degrees clockwise.
 */
#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

/* International inch, exact since 1959. */
#define PP_MM_PER_INCH 25.4

typedef struct
{
  double x;
  double y;
} PpPoint;

/* A box without an inside (x0 > x1) is empty; pp_box_empty() is the start of every union. */
typedef struct
{
  double x0;
  double y0;
  double x1;
  double y1;
} PpBox;

/* Exact at right angles, so that turned squares stay on the grid. */
static inline void
pp_sincos_degrees (double  degrees,
                   double *sine,
                   double *cosine)
{
  double turn = fmod (degrees, 360);
  double radians = turn * G_PI / 180;

  *sine = fmod (turn, 180) == 0 ? 0 : sin (radians);
  *cosine = fmod (turn, 180) == 0 ? (turn == 180 || turn == -180 ? -1 : 1) : cos (radians);
  if (fmod (turn, 180) != 0 && fmod (turn, 90) == 0)
    {
      *sine = turn == 90 || turn == -270 ? 1 : -1;
      *cosine = 0;
    }
}

static inline double
pp_point_distance (PpPoint a,
                   PpPoint b)
{
  return hypot (a.x - b.x, a.y - b.y);
}

/* As hypot (), at a fraction of the price, but now and then with another last bit: for bounds, not
 * for what is told or held against a limit. */
static inline double
pp_rough_length (double x,
                 double y)
{
  return sqrt (x * x + y * y);
}

/* Twice the signed area of the triangle o, a, b: positive where the turn from a to b about o is
 * clockwise as seen (y down). */
static inline double
pp_point_cross (PpPoint o,
                PpPoint a,
                PpPoint b)
{
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

static inline PpBox
pp_box_empty (void)
{
  return (PpBox) { INFINITY, INFINITY, -INFINITY, -INFINITY };
}

static inline gboolean
pp_box_is_empty (PpBox box)
{
  return box.x0 > box.x1 || box.y0 > box.y1;
}

/* `p` is finite. */
static inline PpBox
pp_box_add_point (PpBox   box,
                  PpPoint p)
{
  return (PpBox) { MIN (box.x0, p.x), MIN (box.y0, p.y), MAX (box.x1, p.x), MAX (box.y1, p.y) };
}

static inline PpBox
pp_box_union (PpBox a,
              PpBox b)
{
  return (PpBox) { MIN (a.x0, b.x0), MIN (a.y0, b.y0), MAX (a.x1, b.x1), MAX (a.y1, b.y1) };
}

/* Grown by `margin` on every side; a negative margin shrinks. */
static inline PpBox
pp_box_grow (PpBox  box,
             double margin)
{
  return (PpBox) { box.x0 - margin, box.y0 - margin, box.x1 + margin, box.y1 + margin };
}

static inline PpBox
pp_box_move (PpBox   box,
             PpPoint by)
{
  return (PpBox) { box.x0 + by.x, box.y0 + by.y, box.x1 + by.x, box.y1 + by.y };
}

/* Boxes that only touch count as meeting. */
static inline gboolean
pp_box_meets (PpBox a,
              PpBox b)
{
  return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
}

/* Inside or on the border. */
static inline gboolean
pp_box_contains (PpBox   box,
                 PpPoint p)
{
  return p.x >= box.x0 && p.x <= box.x1 && p.y >= box.y0 && p.y <= box.y1;
}

/* The whole of `inner`, which is not empty; their borders may touch. */
static inline gboolean
pp_box_holds (PpBox outer,
              PpBox inner)
{
  return inner.x0 >= outer.x0 && inner.x1 <= outer.x1 && inner.y0 >= outer.y0
         && inner.y1 <= outer.y1;
}

static inline double
pp_box_width (PpBox box)
{
  return pp_box_is_empty (box) ? 0 : box.x1 - box.x0;
}

static inline double
pp_box_height (PpBox box)
{
  return pp_box_is_empty (box) ? 0 : box.y1 - box.y0;
}

/* The point of the box nearest to `point`; the box is not empty. */
static inline PpPoint
pp_box_clamp (PpBox   box,
              PpPoint point)
{
  return (PpPoint) { CLAMP (point.x, box.x0, box.x1), CLAMP (point.y, box.y0, box.y1) };
}

static inline PpPoint
pp_box_middle (PpBox box)
{
  return (PpPoint) { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
}

G_END_DECLS
