/* schedule.c: an order, its mixes, its sittings, and what can be proved of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * First the wish (line.c) with the best mixes for it (split.c), then what a search over orders
 * finds better (search.c), against what nothing can beat (bound.c).
 */
#include "glue/schedule.h"

#include "glue/search.h"
#include "panel/tolerance.h"

#include <math.h>

/* Ways of doing one more job that are tried. Up to SMALL jobs the answer is to be proved. */
#define SMALL 16
#define SMALL_STEPS G_GUINT64_CONSTANT (20000000)
#define DEFAULT_STEPS G_GUINT64_CONSTANT (500000)

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

/* The line's order with the best mixes for it comes first: often nothing is better. */
static PpBestLine *
search (const PpLine    *line,
        const PpBound   *bound,
        guint64          max_steps,
        GCancellable    *enough,
        GCancellable    *cancellable,
        PpScheduleFunc   progress,
        gpointer         data,
        GError         **error)
{
  g_autoptr (PpSplit) split = pp_split_new (line, cancellable, error);

  if (split == NULL)
    return NULL;
  if (max_steps == 0)
    max_steps = line->n <= SMALL ? SMALL_STEPS : DEFAULT_STEPS;

  return pp_search_run (line, bound, split, max_steps, enough, cancellable, progress, data, error);
}

PpSchedule *
pp_schedule_new (const PpProblem *problem,
                 guint64          max_steps,
                 GCancellable    *enough,
                 GCancellable    *cancellable,
                 PpScheduleFunc   progress,
                 gpointer         data,
                 GError         **error)
{
  g_autoptr (PpSchedule) self = g_new0 (PpSchedule, 1);

  self->exists = all_fit (problem);
  if (!self->exists)
    return g_steal_pointer (&self);

  g_autoptr (PpLine) wish = pp_line_new (problem);
  g_autoptr (PpBound) bound = pp_bound_new (wish);
  g_autoptr (PpBestLine) found = search (wish, bound, max_steps, enough, cancellable, progress,
                                         data, error);

  if (found == NULL)
    return NULL;

  g_autoptr (PpLine) line = pp_line_reorder (wish, found->sequence);
  g_autoptr (PpSplit) split = pp_split_at (line, found->firsts, found->n_batches);

  read_slots (self, line, split);
  sit_down (self, line, split);
  self->end = split->end;
  self->optimal = found->optimal;
  /* The bound is summed in another order and must not pass what was found. */
  self->lower_bound = found->optimal ? split->end : fmin (found->lower_bound, split->end);

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
