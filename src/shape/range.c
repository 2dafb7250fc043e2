/* range.c: the least and the greatest of numbers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Compiled as if there were no NAN, which there is not: only then are they found in vectors.
 */
#include "shape/range.h"

#include "shape/wide.h"

PP_WIDE PpRange
pp_range_of (const double *x,
             guint         n)
{
  double least = x[0], greatest = x[0];

  for (guint i = 0; i < n; i++)
    {
      least = x[i] < least ? x[i] : least;
      greatest = x[i] > greatest ? x[i] : greatest;
    }
  return (PpRange) { least, greatest };
}
