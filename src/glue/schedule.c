/* schedule.c: an order, its mixes, its sittings, and what can be proved of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The order is line.c's, the mixes the best for that order (split.c). That all orders together
 * hold nothing better is claimed only where it is proved: there is but one order, or end, mixes
 * and pairs each meet a bound that no order can beat.
 */
#include "glue/schedule.h"

#include "glue/bound.h"
#include "glue/split.h"
#include "panel/tolerance.h"

#include <math.h>

gboolean
pp_task_fits (const PpTask    *task,
              const PpProblem *problem)
{
  return task->minutes <= problem->life - problem->mixing + PP_TIE
         && task->volume <= problem->largest + PP_TIE;
}

static gboolean
all_fit (const PpProblem *problem)
{
  for (guint i = 0; i < problem->n_tasks; i++)
    if (!pp_task_fits (&problem->tasks[i], problem))
      return FALSE;

  return TRUE;
}

static gboolean
is_only_order (const PpLine *line)
{
  for (guint job = 1; job < line->n; job++)
    if (!pp_line_must_precede (line, job - 1, job))
      return FALSE;

  return TRUE;
}

/* Pairs, lower first, that tuck: keys of both positions. */
static GHashTable *
find_tucks (const PpLine *line)
{
  const PpProblem *problem = line->problem;
  g_autofree guint *position = g_new (guint, line->n);
  GHashTable *tucks = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);

  for (guint k = 0; k < line->n; k++)
    position[pp_line_get_task (line, k)] = k;
  for (guint i = 0; i < problem->n_tucks; i++)
    {
      const gint64 key = (gint64) position[problem->tucks[i].lower] << 32
                         | position[problem->tucks[i].upper];

      g_hash_table_add (tucks, g_memdup2 (&key, sizeof key));
    }

  return tucks;
}

/* Whether doing `a` before `b` is against far-to-near or a tuck. */
static gboolean
is_against (const PpLine *line,
            GHashTable   *tucks,
            guint         a,
            guint         b)
{
  const gint64 key = (gint64) b << 32 | a;

  return (line->tasks[a]->stage == line->tasks[b]->stage
          && line->tasks[a]->depth > line->tasks[b]->depth + PP_TIE)
         || g_hash_table_contains (tucks, &key);
}

/* Whether each pair that is done against the wish is so in every order. */
static gboolean
no_pair_can_be_bettered (const PpLine *line)
{
  g_autoptr (GHashTable) tucks = find_tucks (line);

  for (guint b = 1; b < line->n; b++)
    for (guint a = 0; a < b; a++)
      if (is_against (line, tucks, a, b) && !is_against (line, tucks, b, a)
          && !pp_line_must_precede (line, a, b))
        return FALSE;

  return TRUE;
}

static gboolean
is_proved (const PpLine  *line,
           const PpSplit *split,
           PpBound        bound)
{
  if (!split->exact)
    return FALSE;
  if (is_only_order (line))
    return TRUE;

  return split->end <= bound.end + PP_TIE && split->n_batches == bound.n_batches
         && no_pair_can_be_bettered (line);
}

static void
read_slots (PpSchedule    *self,
            const PpLine  *line,
            const PpSplit *split)
{
  self->n_slots = line->n;
  self->slots = g_new (PpSlot, line->n);
  self->n_batches = split->n_batches;
  self->batches = g_new0 (PpBatch, split->n_batches);

  for (guint i = 0; i < split->n_batches; i++)
    {
      self->batches[i].start = split->starts[split->firsts[i]] - line->problem->mixing;
      for (guint job = split->firsts[i]; job < split->firsts[i + 1]; job++)
        self->slots[job] = (PpSlot) { pp_line_get_task (line, job), i, split->starts[job] };
    }
}

/* A new sitting begins with each mix whose last job would end too late for the one before. */
static void
sit_down (PpSchedule    *self,
          const PpLine  *line,
          const PpSplit *split)
{
  guint sitting = 0;
  double began = 0;

  for (guint i = 0; i < self->n_batches; i++)
    {
      const guint last = split->firsts[i + 1] - 1;
      const double end = split->starts[last] + line->tasks[last]->minutes;

      /* Without an end of sittings the limit is NAN and never passed. */
      if (i > 0 && end - began > line->problem->sitting + PP_TIE)
        {
          sitting++;
          began = self->batches[i].start;
        }
      self->batches[i].sitting = sitting;
    }
}

PpSchedule *
pp_schedule_new (const PpProblem *problem,
                 guint64          max_steps,
                 GCancellable    *cancellable,
                 PpScheduleFunc   progress,
                 gpointer         data,
                 GError         **error)
{
  g_autoptr (PpSchedule) self = g_new0 (PpSchedule, 1);

  self->exists = all_fit (problem);
  if (!self->exists)
    return g_steal_pointer (&self);

  g_autoptr (PpLine) line = pp_line_new (problem);
  g_autoptr (PpSplit) split = pp_split_new (line, max_steps, cancellable, progress, data, error);

  if (split == NULL)
    return NULL;

  const PpBound bound = pp_bound_of (line);

  read_slots (self, line, split);
  sit_down (self, line, split);
  self->end = split->end;
  /* The bound is summed in another order and must not pass what was found. */
  self->lower_bound = fmin (bound.end, split->end);
  self->optimal = is_proved (line, split, bound);

  return g_steal_pointer (&self);
}

void
pp_schedule_free (PpSchedule *self)
{
  if (self == NULL)
    return;

  g_free (self->slots);
  g_free (self->batches);
  g_free (self);
}
