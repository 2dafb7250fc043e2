/* bound.c: a lower bound of the end and of the number of mixes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mixes of a set of jobs: a mix has room for so many minutes and so many millilitres. A function u
 * of the share that a job takes of a mix is dual feasible if shares that sum to at most 1 have u
 * that sum to at most 1; the sum of u, rounded up, is then a bound. Used are u(x) = x and u(x) =
 * (the greatest whole number below (k + 1)·x)/k (known from bin packing; from memory), which see
 * that of jobs that take more than a third only two fit.
 *
 * The end: around any job lie all that must precede it, all that must follow, and itself; hands do
 * one thing at a time, so on either side go their minutes and the mixing of as many mixes as they
 * need at least, or a chain of waits if that takes longer.
 */
#include "glue/bound.h"

#include "panel/tolerance.h"

#include <math.h>

/* k of the step functions: up to so many jobs that just fill a mix. */
#define N_STEPS 8
/* For minutes and for volume each: the share itself and the steps. */
#define N_WEIGHTS (2 * (N_STEPS + 1))

/* Shares and sums of them differ by less from what they would be without rounding. */
#define NOISE 1e-9

typedef struct
{
  double sum[N_WEIGHTS];
} Weights;

static void
set_weights (double share,
             double *weights)
{
  weights[0] = share;
  for (int k = 1; k <= N_STEPS; k++)
    weights[k] = fmax (ceil ((k + 1) * share - NOISE) - 1, 0) / k;
}

static Weights
weigh (const PpTask    *task,
       const PpProblem *problem)
{
  Weights weights;

  set_weights (task->minutes / (problem->life - problem->mixing + PP_TIE), weights.sum);
  set_weights (task->volume / (problem->largest + PP_TIE), weights.sum + N_STEPS + 1);

  return weights;
}

static void
add (Weights       *weights,
     const Weights *more)
{
  for (int i = 0; i < N_WEIGHTS; i++)
    weights->sum[i] += more->sum[i];
}

static double
count_mixes (const Weights *weights)
{
  double most = 1;

  for (int i = 0; i < N_WEIGHTS; i++)
    most = fmax (most, ceil (weights->sum[i] - NOISE));

  return most;
}

/* The least minute at which a job may start, but for chains of waits before it: those are in the
 * tail of the job that they begin with. */
static double
find_head (const PpLine  *line,
           const Weights *weights,
           guint          job)
{
  Weights sum = weights[job];
  double minutes = 0;

  for (guint k = 0; k < job; k++)
    if (pp_line_must_precede (line, k, job))
      {
        add (&sum, &weights[k]);
        minutes += line->tasks[k]->minutes;
      }

  return minutes + count_mixes (&sum) * line->problem->mixing;
}

/* The least minutes between the end of each job and the end of all. */
static double *
find_tails (const PpLine  *line,
            const Weights *weights)
{
  double *tails = g_new0 (double, line->n);

  for (guint job = line->n; job-- > 0;)
    {
      Weights sum = weights[job];
      double minutes = 0;

      for (guint k = job + 1; k < line->n; k++)
        if (pp_line_must_precede (line, job, k))
          {
            add (&sum, &weights[k]);
            minutes += line->tasks[k]->minutes;
            tails[job] = fmax (tails[job], line->tasks[k]->minutes + tails[k]);
          }
      /* The mix that the job itself is of has been made by then. */
      tails[job] = fmax (tails[job],
                         minutes + (count_mixes (&sum) - 1) * line->problem->mixing);
      for (guint at = line->offsets[job]; at < line->offsets[job + 1]; at++)
        {
          const guint k = line->before[at];

          tails[k] = fmax (tails[k], line->lags[at] + line->tasks[job]->minutes + tails[job]);
        }
    }

  return tails;
}

PpBound
pp_bound_of (const PpLine *line)
{
  g_autofree Weights *weights = g_new (Weights, line->n);
  Weights all = { 0 };
  double minutes = 0;

  if (line->n == 0)
    return (PpBound) { 0, 0 };

  for (guint job = 0; job < line->n; job++)
    {
      weights[job] = weigh (line->tasks[job], line->problem);
      add (&all, &weights[job]);
      minutes += line->tasks[job]->minutes;
    }

  g_autofree double *tails = find_tails (line, weights);
  PpBound bound = {
    .end = minutes + count_mixes (&all) * line->problem->mixing,
    .n_batches = (guint) count_mixes (&all),
  };

  for (guint job = 0; job < line->n; job++)
    bound.end = fmax (bound.end, find_head (line, weights, job) + line->tasks[job]->minutes
                                + tails[job]);

  return bound;
}
