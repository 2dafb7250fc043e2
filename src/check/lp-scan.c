/* lp-scan.c: which of many points stands highest over a sloping plane.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All of settling's time goes here, so this file alone is compiled for vectors, and as if there
 * were no NAN, which there is not. Every product and sum is the same as in plain arithmetic, and a
 * maximum has no rounding, so neither has the answer. Blocks are looked at for their greatest
 * alone; which point has it is asked of the best block.
 */
#include "check/lp-scan.h"

#include <float.h>

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
pp_lp_scan (const double *x,
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
