/* brute.c: the best schedule of a small problem, by trying everything.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "brute.h"

#define MET 1e-6
#define MAX_TASKS 10

typedef struct
{
  const PpProblem *problem;
  const guint     *order; /* NULL: any */
  double           horizon; /* nothing is begun later */
  guint            done[MAX_TASKS];
  double           end[MAX_TASKS]; /* of each task, -1: not done */
  BruteScore       best;
} Brute;

/* Where the hands are. */
typedef struct
{
  guint  n_done;
  double now;
  guint  n_batches;
  double mixed_at;
  double volume;
} State;

guint
brute_count_against (const PpProblem *problem,
                     const guint     *order)
{
  guint n = 0;

  for (guint a = 0; a < problem->n_tasks; a++)
    for (guint b = a + 1; b < problem->n_tasks; b++)
      {
        const PpTask *one = &problem->tasks[order[a]];
        const PpTask *next = &problem->tasks[order[b]];
        gboolean against = one->stage == next->stage && one->depth > next->depth + MET;

        for (guint i = 0; i < problem->n_tucks; i++)
          against = against || (problem->tucks[i].upper == order[a]
                                && problem->tucks[i].lower == order[b]);
        n += against;
      }

  return n;
}

static void
judge (Brute       *brute,
       const State *state)
{
  const BruteScore score = {
    state->now, state->n_batches, brute_count_against (brute->problem, brute->done),
  };
  const BruteScore *best = &brute->best;

  if (score.end < best->end - MET
      || (score.end < best->end + MET
          && (score.n_batches < best->n_batches
              || (score.n_batches == best->n_batches && score.n_against < best->n_against))))
    brute->best = score;
}

static gboolean
may_come_next (const Brute *brute,
               const State *state,
               guint        task)
{
  const PpProblem *problem = brute->problem;

  if (brute->end[task] >= 0)
    return FALSE;
  if (brute->order != NULL)
    return brute->order[state->n_done] == task;
  for (guint i = 0; i < problem->n_tasks; i++)
    if (problem->tasks[i].stage < problem->tasks[task].stage && brute->end[i] < 0)
      return FALSE;
  for (guint i = 0; i < problem->n_links; i++)
    if (problem->links[i].second == task && brute->end[problem->links[i].first] < 0)
      return FALSE;

  return TRUE;
}

static void try_all (Brute *brute, const State *state);

/* In a mix that is begun; with that given, sooner is never worse. */
static void
try_job (Brute *brute,
         State  state,
         guint  task)
{
  const PpProblem *problem = brute->problem;
  double start = MAX (state.now, state.mixed_at + problem->mixing);

  for (guint i = 0; i < problem->n_links; i++)
    if (problem->links[i].second == task)
      start = MAX (start, brute->end[problem->links[i].first] + problem->links[i].lag);

  state.now = start + problem->tasks[task].minutes;
  state.volume += problem->tasks[task].volume;
  if (state.now > state.mixed_at + problem->life + MET || state.volume > problem->largest + MET)
    return;

  brute->done[state.n_done++] = task;
  brute->end[task] = state.now;
  try_all (brute, &state);
  brute->end[task] = -1;
}

static void
try_all (Brute       *brute,
         const State *state)
{
  if (state->now > brute->best.end + MET)
    return;
  if (state->n_done == brute->problem->n_tasks)
    {
      judge (brute, state);
      return;
    }
  for (guint task = 0; task < brute->problem->n_tasks; task++)
    {
      if (!may_come_next (brute, state, task))
        continue;
      if (state->n_batches > 0)
        try_job (brute, *state, task);
      for (double at = state->now; at <= brute->horizon; at++)
        {
          State mixing = *state;

          mixing.n_batches++;
          mixing.mixed_at = at;
          mixing.volume = 0;
          try_job (brute, mixing, task);
          /* Time 0 is the start of the first. */
          if (state->n_batches == 0)
            break;
        }
    }
}

BruteScore
brute_solve (const PpProblem *problem,
             const guint     *order)
{
  Brute brute = { .problem = problem, .order = order };
  double lag = 0;

  g_assert_cmpuint (problem->n_tasks, <=, MAX_TASKS);
  for (guint i = 0; i < problem->n_links; i++)
    lag = MAX (lag, problem->links[i].lag);
  /* One mix a job, each after the longest wait. */
  for (guint i = 0; i < problem->n_tasks; i++)
    {
      brute.end[i] = -1;
      brute.horizon += problem->tasks[i].minutes + problem->mixing + lag;
    }
  brute.best = (BruteScore) { brute.horizon, G_MAXUINT, G_MAXUINT };
  try_all (&brute, &(State) { 0 });

  return brute.best;
}
