/* plane.c: how a flat sheet lies in a photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/plane.h"

#include <string.h>

#define N 8
#define FLAT 1e-9         /* a pivot this small against its row: no answer */
#define SHORTEST 0.1      /* focal lengths, in halves of the photo's larger side, */
#define LONGEST 200.0     /* that any lens has */
#define LONGER 1.1        /* from one that is tried to the next */
#define HALVINGS 60

/* Gaussian elimination, pivots by size. `rows` has the right side as its last column. */
static gboolean
solve (double  rows[N][N + 1],
       double *x)
{
  for (guint k = 0; k < N; k++)
    {
      guint best = k;
      double swap[N + 1];

      for (guint i = k + 1; i < N; i++)
        if (fabs (rows[i][k]) > fabs (rows[best][k]))
          best = i;
      if (fabs (rows[best][k]) < FLAT)
        return FALSE;
      memcpy (swap, rows[k], sizeof swap);
      memcpy (rows[k], rows[best], sizeof swap);
      memcpy (rows[best], swap, sizeof swap);
      for (guint i = 0; i < N; i++)
        for (guint j = N + 1; i != k && j-- > k;)
          rows[i][j] -= rows[i][k] / rows[k][k] * rows[k][j];
    }
  for (guint k = 0; k < N; k++)
    x[k] = rows[k][N] / rows[k][k];
  return TRUE;
}

/* To about 1 a side, so that the pivots can be judged. */
static double
get_size (const PpPoint points[4])
{
  PpBox box = pp_box_empty ();

  for (guint i = 0; i < 4; i++)
    box = pp_box_add_point (box, points[i]);
  return fmax (fmax (fabs (box.x0), fabs (box.x1)), fmax (fabs (box.y0), fabs (box.y1)));
}

gboolean
pp_plane_fit (const PpPoint  from[4],
              const PpPoint  to[4],
              PpSheetPlane  *plane)
{
  double s = get_size (from), t = get_size (to);
  double rows[N][N + 1];
  double x[N];

  if (!(s > 0 && t > 0))
    return FALSE;
  for (guint i = 0; i < 4; i++)
    {
      double u = from[i].x / s, v = from[i].y / s;
      double p = to[i].x / t, q = to[i].y / t;
      const double across[] = { u, v, 1, 0, 0, 0, -u * p, -v * p, p };
      const double down[] = { 0, 0, 0, u, v, 1, -u * q, -v * q, q };

      memcpy (rows[2 * i], across, sizeof across);
      memcpy (rows[2 * i + 1], down, sizeof down);
    }
  if (!solve (rows, x))
    return FALSE;
  *plane = (PpSheetPlane) { { x[0] * t / s, x[1] * t / s, x[2] * t, x[3] * t / s, x[4] * t / s,
                              x[5] * t, x[6] / s, x[7] / s, 1 } };
  return TRUE;
}

PpPoint
pp_plane_map (const PpSheetPlane *self,
              PpPoint             p)
{
  const double *m = self->m;
  double w = m[6] * p.x + m[7] * p.y + m[8];

  return (PpPoint) { (m[0] * p.x + m[1] * p.y + m[2]) / w, (m[3] * p.x + m[4] * p.y + m[5]) / w };
}

gboolean
pp_plane_invert (const PpSheetPlane *self,
                 PpSheetPlane       *back)
{
  const double *m = self->m;
  double w = m[0] * m[4] - m[1] * m[3];
  const double inverse[9] = {
    m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
    m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
    m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], w,
  };

  for (guint i = 0; i < 9; i++)
    {
      back->m[i] = inverse[i] / w;
      if (!isfinite (back->m[i]))
        return FALSE;
    }
  return TRUE;
}

static double
dot (const double *a,
     const double *b)
{
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/* Where the lens stands if its focal length is this many pixels: the foot, and its height. */
static double
stand (const PpSheetPlane *self,
       PpPoint             middle,
       double              focal,
       PpPoint            *foot)
{
  const double *m = self->m;
  double axes[3][3], length, up[3];

  for (guint c = 0; c < 3; c++)
    {
      axes[c][0] = (m[c] - middle.x * m[6 + c]) / focal;
      axes[c][1] = (m[3 + c] - middle.y * m[6 + c]) / focal;
      axes[c][2] = m[6 + c];
    }
  length = (sqrt (dot (axes[0], axes[0])) + sqrt (dot (axes[1], axes[1]))) / 2;
  for (guint c = 0; c < 3; c++)
    for (guint k = 0; k < 3; k++)
      axes[c][k] /= length;
  up[0] = axes[0][1] * axes[1][2] - axes[0][2] * axes[1][1];
  up[1] = axes[0][2] * axes[1][0] - axes[0][0] * axes[1][2];
  up[2] = axes[0][0] * axes[1][1] - axes[0][1] * axes[1][0];
  *foot = (PpPoint) { -dot (axes[0], axes[2]), -dot (axes[1], axes[2]) };
  return fabs (dot (up, axes[2]));
}

/* The longer the lens, the higher it stood, up to where the lines that run together in the photo
 * would need a lens lower again; so the first step that reaches the height is halved. */
PpPoint
pp_plane_find_foot (const PpSheetPlane *self,
                    PpPoint             middle,
                    double              height)
{
  double half = fmax (middle.x, middle.y);
  double shortest = half * SHORTEST, longest = shortest;
  PpSheetPlane back;
  PpPoint foot, seen = { 0, 0 };

  if (pp_plane_invert (self, &back))
    seen = pp_plane_map (&back, middle);
  if (stand (self, middle, shortest, &foot) > height)
    return seen;
  while (stand (self, middle, longest, &foot) < height)
    {
      shortest = longest;
      longest *= LONGER;
      if (longest > half * LONGEST)
        return seen;
    }
  for (guint i = 0; i < HALVINGS; i++)
    {
      double focal = sqrt (shortest * longest);

      if (stand (self, middle, focal, &foot) < height)
        shortest = focal;
      else
        longest = focal;
    }
  return isfinite (foot.x) && isfinite (foot.y) ? foot : seen;
}
