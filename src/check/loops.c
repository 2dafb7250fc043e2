/* loops.c: the loops that a check spends its time in, over thousands of cells each.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Compiled for vectors, and as if there were no NAN, which there is not. Every product and
 * sum is the same as in plain arithmetic, and a maximum has no rounding, so neither have the
 * answers.
 */
#include "check/loops.h"

#include "panel/tolerance.h"
#include "shape/wide.h"

#include <float.h>

/* The plane is lowest at an end. */
PP_WIDE double
pp_loop_bounds (const PpLoopBlocks *blocks,
                double              a,
                double              b,
                double             *bounds)
{
  const double *x = blocks->x, *y = blocks->y, *last = blocks->last, *top = blocks->top;
  double greatest = -DBL_MAX, step = MIN (a * PP_CELL, 0);

  for (guint i = 0, n = blocks->n; i < n; i++)
    {
      double bound = top[i] - (a * x[i] + b * y[i] + last[i] * step);

      bounds[i] = bound;
      greatest = bound > greatest ? bound : greatest;
    }
  return greatest;
}

static inline double
highest_of (const PpLoopBlocks *blocks,
            guint               block,
            double              a,
            double              b)
{
  const double *h = blocks->h + blocks->first[block];
  PpLoopPlane plane = pp_loop_plane_of_block (blocks, block, a, b);
  double greatest = -DBL_MAX;

  for (int i = 0, n = (int) blocks->last[block]; i <= n; i++)
    {
      double above = h[i] - pp_loop_plane_at (&plane, i);

      greatest = above > greatest ? above : greatest;
    }
  return greatest;
}

PP_WIDE double
pp_loop_highest_of (const PpLoopBlocks *blocks,
                    guint               block,
                    double              a,
                    double              b)
{
  return highest_of (blocks, block, a, b);
}

PP_WIDE double
pp_loop_highest (const PpLoopBlocks *blocks,
                 double              a,
                 double              b,
                 const double       *bounds,
                 double              least,
                 guint              *block)
{
  double greatest = -DBL_MAX;

  for (guint i = 0; i < blocks->n; i++)
    if (bounds[i] >= least && bounds[i] > greatest)
      {
        double top = highest_of (blocks, i, a, b);

        if (top > greatest)
          {
            greatest = top;
            *block = i;
          }
      }
  return greatest;
}

static inline double
greatest_of (const double *x,
             guint         n)
{
  double greatest = -DBL_MAX;

  for (guint i = 0; i < n; i++)
    greatest = x[i] > greatest ? x[i] : greatest;
  return greatest;
}

PP_WIDE void
pp_loop_find_tops (const PpLoopBlocks *blocks)
{
  for (guint i = 0; i < blocks->n; i++)
    blocks->top[i] = greatest_of (blocks->h + blocks->first[i],
                                  blocks->first[i + 1] - blocks->first[i]);
}

PP_WIDE double
pp_loop_greatest (const double *x,
                  guint         n)
{
  return greatest_of (x, n);
}

PP_WIDE void
pp_loop_fill (double  value,
              gsize   n,
              double *x)
{
  for (gsize i = 0; i < n; i++)
    x[i] = value;
}

PP_WIDE void
pp_loop_lower (double       *h,
               const double *u,
               guint         n)
{
  for (guint i = 0; i < n; i++)
    h[i] -= u[i];
}

PP_WIDE void
pp_loop_gaps (PpLoopPlane   plane,
              const double *h,
              guint         n,
              double       *gap,
              double       *least,
              double       *greatest)
{
  double low = DBL_MAX, high = -DBL_MAX;

  for (int i = 0; i < (int) n; i++)
    {
      double now = pp_loop_plane_at (&plane, i) - h[i];

      gap[i] = now;
      low = now < low ? now : low;
      high = now > high ? now : high;
    }
  *least = low;
  *greatest = high;
}

PP_WIDE void
pp_loop_tops (PpLoopPlane   plane,
              const double *underside,
              double        thickness,
              guint         n,
              double       *height)
{
  if (underside == NULL)
    for (int i = 0; i < (int) n; i++)
      height[i] = pp_loop_plane_at (&plane, i) + thickness;
  else
    for (int i = 0; i < (int) n; i++)
      height[i] = pp_loop_plane_at (&plane, i) + (underside[i] + thickness);
}

PP_WIDE void
pp_loop_raise (PpLoopPlane plane,
               guint       n,
               double     *height)
{
  for (int i = 0; i < (int) n; i++)
    height[i] += pp_loop_plane_at (&plane, i);
}

PP_WIDE double
pp_loop_farthest (PpLoopPlaces *rows,
                  guint         n_rows,
                  double        x,
                  double        y,
                  double        diameter,
                  double       *score)
{
  double greatest = PP_LOOP_NEVER;

  for (guint r = 0; r < n_rows; r++)
    {
      double left = rows[r].x - x, dy = rows[r].y - y;
      double least = (diameter + rows[r].diameter) / 2 - PP_TIE, best = PP_LOOP_NEVER;

      for (guint i = 0, n = rows[r].n; i < n; i++)
        {
          double dx = pp_loop_column (left, i), squared = dx * dx + dy * dy;
          double now = squared < score[i] ? squared : score[i];

          now = squared < least * least ? PP_LOOP_NEVER : now;
          score[i] = now;
          best = now > best ? now : best;
        }
      rows[r].best = best;
      greatest = MAX (greatest, best);
      score += rows[r].n;
    }
  return greatest;
}

PP_WIDE void
pp_loop_dim (double *through,
             guint   n,
             double  limit,
             double  factor)
{
  for (guint i = 0; i < n; i++)
    through[i] = through[i] > limit + PP_TIE ? through[i] * factor : through[i];
}

PP_WIDE void
pp_loop_asides (const double *x,
                const double *y,
                const double *z,
                guint         n,
                const double  normal[3],
                double        start,
                double       *aside)
{
  double nx = normal[0], ny = normal[1], nz = normal[2];

  for (guint i = 0; i < n; i++)
    aside[i] = x[i] * nx + y[i] * ny - z[i] * nz - start;
}

PP_WIDE void
pp_loop_no_more (const double *x,
                 guint         n,
                 double        most,
                 guint8       *no_more)
{
  for (guint i = 0; i < n; i++)
    no_more[i] = x[i] <= most;
}

PP_WIDE void
pp_loop_add_more (const double *x,
                  guint         n,
                  double        most,
                  guint8       *more)
{
  for (guint i = 0; i < n; i++)
    more[i] |= x[i] > most;
}

PP_WIDE void
pp_loop_no_nearer (const int *squared,
                   guint      n,
                   int        least,
                   guint8    *no_nearer)
{
  for (guint i = 0; i < n; i++)
    no_nearer[i] = squared[i] >= least;
}

PP_WIDE void
pp_loop_owned (const PpOwner *owners,
               guint          n,
               guint8        *owned)
{
  for (guint i = 0; i < n; i++)
    owned[i] = owners[i] != PP_OWNER_NOTHING;
}

PP_WIDE void
pp_loop_nearest (const PpLoopPlaces *rows,
                 guint               n_rows,
                 const double       *gap,
                 double              most,
                 double             *least,
                 double             *least_within)
{
  double all = PP_LOOP_FAR, within = PP_LOOP_FAR;

  for (guint r = 0; r < n_rows; r++)
    {
      const double *own = gap + rows[r].cell;
      double first = rows[r].x, y = rows[r].y;

      for (guint i = 0, n = rows[r].n; i < n; i++)
        {
          double x = pp_loop_column (first, i), squared = x * x + y * y;
          double counted = own[i] <= most ? squared : PP_LOOP_FAR;

          all = squared < all ? squared : all;
          within = counted < within ? counted : within;
        }
    }
  *least = all;
  *least_within = within;
}

PP_WIDE void
pp_loop_within (const double *aside,
                guint         n,
                double        reach,
                guint8       *within)
{
  for (guint i = 0; i + 1 < n; i++)
    {
      double low = aside[i] < aside[i + 1] ? aside[i] : aside[i + 1];
      double high = aside[i] < aside[i + 1] ? aside[i + 1] : aside[i];

      within[i] = low <= reach && high >= -reach;
    }
}
