/* spline.c: a smooth line through given values.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each knot's slope is a weighted mean of those of its neighbours and of the chords beside it, with
 * less than half of the weight on the neighbours; so going over them again and again comes to rest
 * (Gauss and Seidel), by at least half each time.
 */
#include "piece/spline.h"

#define ROUNDS 60 /* 2^-60 is beyond what a double tells apart */

static double
chord (const double *t,
       const double *values,
       guint         i)
{
  return (values[i + 1] - values[i]) / (t[i + 1] - t[i]);
}

/* Between the stretches i (before it) and k (after it), whose far ends have these slopes. */
static double
settle (const double *t,
        const double *values,
        guint         i,
        guint         k,
        double        before,
        double        after)
{
  double h = t[i + 1] - t[i];
  double g = t[k + 1] - t[k];

  return (3 * (g * chord (t, values, i) + h * chord (t, values, k)) - g * before - h * after)
         / (2 * (g + h));
}

void
pp_spline_slopes (const double *t,
                  const double *values,
                  guint         n,
                  gboolean      closed,
                  double       *slopes)
{
  guint last = n - 1;

  g_return_if_fail (n >= (closed ? 4u : 2u));
  for (guint i = 0; i < n; i++)
    slopes[i] = chord (t, values, MIN (i, last - 1));
  if (n == 2)
    return;
  for (guint round = 0; round < ROUNDS; round++)
    {
      for (guint i = 1; i < last; i++)
        slopes[i] = settle (t, values, i - 1, i, slopes[i - 1], slopes[i + 1]);
      if (closed)
        slopes[0] = slopes[last]
            = settle (t, values, last - 1, 0, slopes[last - 1], slopes[1]);
      else
        {
          slopes[0] = 2 * chord (t, values, 0) - slopes[1];
          slopes[last] = 2 * chord (t, values, last - 1) - slopes[last - 1];
        }
    }
}

double
pp_spline_at (const double *t,
              const double *values,
              const double *slopes,
              guint         i,
              double        share)
{
  double h = t[i + 1] - t[i];
  double back = 1 - share;

  return values[i] * back * back * (1 + 2 * share)
         + values[i + 1] * share * share * (1 + 2 * back)
         + h * share * back * (slopes[i] * back - slopes[i + 1] * share);
}
