/* bound.c: a lower bound of the end and of the number of mixes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The end: around any job lie all that must precede it, all that must follow, and itself; hands do
 * one thing at a time, so on either side go their minutes and the mixing of as many mixes as they
 * need at least, or a chain of waits if that takes longer.
 *
 * Mixes: as many as the jobs fill, or one more than the waits of a chain that no mix outlasts.
 */
#include "glue/bound.h"

#include "panel/tolerance.h"

#include <math.h>

static PpMixWeights
weigh (const PpTask    *task,
       const PpProblem *problem)
{
  return pp_mix_weights (task->minutes / (problem->life - problem->mixing + PP_TIE),
                         task->volume / (problem->largest + PP_TIE));
}

/* Whether two jobs of which the second waits `lag` min for the first fit no mix together. */
static gboolean
is_apart (const PpProblem *problem,
          const PpTask    *first,
          double           lag,
          const PpTask    *second)
{
  return first->minutes + lag + second->minutes > problem->life - problem->mixing + PP_TIE;
}

/* The least minute at which a job may start, but for chains of waits before it: those are in the
 * tail of the job that they begin with. */
static double
find_head (const PpLine  *line,
           const PpBound *self,
           guint          job)
{
  PpMixWeights sum = self->weights[job];
  double minutes = 0;

  for (guint k = 0; k < job; k++)
    if (pp_line_must_precede (line, k, job))
      {
        pp_mix_weights_add (&sum, &self->weights[k]);
        minutes += line->tasks[k]->minutes;
      }

  return minutes + pp_mix_weights_count (&sum) * line->problem->mixing;
}

/* What must follow a job takes so long after it; `tails` of those hold waits already. */
static void
find_tail (PpBound      *self,
           const PpLine *line,
           guint         job)
{
  PpMixWeights sum = self->weights[job];
  double minutes = 0;

  for (guint k = job + 1; k < line->n; k++)
    if (pp_line_must_precede (line, job, k))
      {
        pp_mix_weights_add (&sum, &self->weights[k]);
        minutes += line->tasks[k]->minutes;
        self->tails[job] = fmax (self->tails[job], line->tasks[k]->minutes + self->tails[k]);
        self->mixes_after[job] = MAX (self->mixes_after[job], self->mixes_after[k]);
      }

  /* The mix that the job itself is of has been made by then. */
  const double work = minutes + (pp_mix_weights_count (&sum) - 1) * line->problem->mixing;

  self->waits[job] = self->tails[job] > work || self->mixes_after[job] > 0;
  self->tails[job] = fmax (self->tails[job], work);
}

static void
find_tails (PpBound      *self,
            const PpLine *line)
{
  for (guint job = line->n; job-- > 0;)
    {
      find_tail (self, line, job);
      for (guint at = line->offsets[job]; at < line->offsets[job + 1]; at++)
        {
          const guint k = line->before[at];
          const double lag = line->lags[at];
          const guint apart = is_apart (line->problem, line->tasks[k], lag, line->tasks[job]);

          self->tails[k] = fmax (self->tails[k],
                                 lag + line->tasks[job]->minutes + self->tails[job]);
          self->mixes_after[k] = MAX (self->mixes_after[k], self->mixes_after[job] + apart);
        }
    }
}

PpBound *
pp_bound_new (const PpLine *line)
{
  PpBound *self = g_new0 (PpBound, 1);
  PpMixWeights all = { { 0 } };
  double minutes = 0;

  self->weights = g_new (PpMixWeights, line->n);
  self->tails = g_new0 (double, line->n);
  self->waits = g_new0 (gboolean, line->n);
  self->mixes_after = g_new0 (guint, line->n);
  if (line->n == 0)
    return self;

  for (guint job = 0; job < line->n; job++)
    {
      self->weights[job] = weigh (line->tasks[job], line->problem);
      pp_mix_weights_add (&all, &self->weights[job]);
      minutes += line->tasks[job]->minutes;
    }
  find_tails (self, line);
  self->n_batches = pp_mix_weights_count (&all);
  self->end = minutes + self->n_batches * line->problem->mixing;

  for (guint job = 0; job < line->n; job++)
    {
      self->n_batches = MAX (self->n_batches, 1 + self->mixes_after[job]);
      self->end = fmax (self->end, find_head (line, self, job) + line->tasks[job]->minutes
                                   + self->tails[job]);
    }

  return self;
}

void
pp_bound_free (PpBound *self)
{
  if (self == NULL)
    return;

  g_free (self->weights);
  g_free (self->tails);
  g_free (self->waits);
  g_free (self->mixes_after);
  g_free (self);
}
