/* wide.c: sums for the widest vectors that the processor has.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/wide.h"

#define LANES 8

PP_WIDE double
pp_wide_sum (const double *x,
             guint         n)
{
  double sums[LANES] = { 0 }, sum = 0;
  guint i;

  for (i = 0; i + LANES <= n; i += LANES)
    for (guint lane = 0; lane < LANES; lane++)
      sums[lane] += x[i + lane];
  for (; i < n; i++)
    sum += x[i];
  for (guint lane = 0; lane < LANES; lane++)
    sum += sums[lane];
  return sum;
}
