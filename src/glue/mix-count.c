/* mix-count.c: a lower bound of a number of mixes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A mix has room for so many minutes and so many millilitres. A function u of the share that a job
 * takes of a mix is dual feasible if shares that sum to at most 1 have u that sum to at most 1;
 * the sum of u, rounded up, is then a bound. Used are u(x) = x and u(x) = (the greatest whole
 * number below (k + 1)·x)/k (known from bin packing; from memory), which see that of jobs that take
 * more than a third only two fit.
 */
#include "glue/mix-count.h"

#include <math.h>

/* A whole mix: a multiple of every k, and 2000 jobs of one each can be summed. */
#define WHOLE 840000

/* Shares differ by less from what they would be without rounding. */
#define NOISE 1e-9

static void
set_weights (double  share,
             gint32 *weights)
{
  weights[0] = (gint32) floor (share * WHOLE);
  for (int k = 1; k <= PP_MIX_STEPS; k++)
    weights[k] = (gint32) fmax (ceil ((k + 1) * share - NOISE) - 1, 0) * (WHOLE / k);
}

PpMixWeights
pp_mix_weights (double of_minutes,
                double of_volume)
{
  PpMixWeights weights;

  set_weights (CLAMP (of_minutes, 0, 1), weights.sum);
  set_weights (CLAMP (of_volume, 0, 1), weights.sum + PP_MIX_STEPS + 1);

  return weights;
}

void
pp_mix_weights_add (PpMixWeights       *self,
                    const PpMixWeights *more)
{
  for (int i = 0; i < PP_MIX_WEIGHTS; i++)
    self->sum[i] += more->sum[i];
}

void
pp_mix_weights_less (PpMixWeights       *self,
                     const PpMixWeights *less)
{
  for (int i = 0; i < PP_MIX_WEIGHTS; i++)
    self->sum[i] -= less->sum[i];
}

guint
pp_mix_weights_count (const PpMixWeights *self)
{
  gint32 most = 1;

  for (int i = 0; i < PP_MIX_WEIGHTS; i++)
    most = MAX (most, self->sum[i]);

  return ((guint) most + WHOLE - 1) / WHOLE;
}
