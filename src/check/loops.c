/* loops.c: the loops that a check spends its time in, over thousands of cells each.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * This file alone is compiled for vectors, and as if there were no NAN, which there is not. Every
 * product and sum is the same as in plain arithmetic, and a maximum has no rounding, so neither
 * have the answers.
 */
#include "check/loops.h"

#include "panel/tolerance.h"

#include <float.h>

/* Blocks are looked at for their greatest alone; which point has it is asked of the best one. */
#define BLOCK 512

static double
greatest_of (const double *x,
             const double *y,
             const double *h,
             guint         n,
             double        a,
             double        b)
{
  double greatest = -DBL_MAX;

  for (guint i = 0; i < n; i++)
    {
      double over = h[i] - a * x[i] - b * y[i];

      greatest = over > greatest ? over : greatest;
    }
  return greatest;
}

double
pp_loop_highest (const double *x,
                 const double *y,
                 const double *h,
                 guint         n,
                 double        a,
                 double        b,
                 guint        *which)
{
  double greatest = -DBL_MAX;
  guint best = 0;

  for (guint start = 0; start < n; start += BLOCK)
    {
      double over = greatest_of (x + start, y + start, h + start, MIN (n - start, BLOCK), a, b);

      if (over > greatest)
        {
          greatest = over;
          best = start;
        }
    }
  while (best + 1 < n && h[best] - a * x[best] - b * y[best] < greatest)
    best++;
  *which = best;
  return greatest;
}

void
pp_loop_gaps (const double *x,
              const double *y,
              const double *h,
              guint         n,
              double        a,
              double        b,
              double        c,
              double       *gap)
{
  for (guint i = 0; i < n; i++)
    gap[i] = c + a * x[i] + b * y[i] - h[i];
}

void
pp_loop_extremes (const double *above,
                  const double *low,
                  const double *high,
                  guint         n,
                  double       *least,
                  double       *greatest)
{
  double base = DBL_MAX, top = -DBL_MAX;

  for (guint i = 0; i < n; i++)
    {
      double l = above[i] + low[i], g = above[i] + high[i];

      base = l < base ? l : base;
      top = g > top ? g : top;
    }
  *least = base;
  *greatest = top;
}

double
pp_loop_farthest (const double *x,
                  const double *y,
                  const double *d,
                  guint         n,
                  double        x0,
                  double        y0,
                  double        diameter,
                  double       *score)
{
  double greatest = PP_LOOP_NEVER;

  for (guint i = 0; i < n; i++)
    {
      double dx = x[i] - x0, dy = y[i] - y0, least = (diameter + d[i]) / 2 - PP_TIE;
      double squared = dx * dx + dy * dy;
      double now = squared < score[i] ? squared : score[i];

      now = squared < least * least ? PP_LOOP_NEVER : now;
      score[i] = now;
      greatest = now > greatest ? now : greatest;
    }
  return greatest;
}
