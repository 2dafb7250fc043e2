/* verify.c: whether a schedule keeps the rules of the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "verify.h"

/* Limits count as met within this. */
#define MET 1e-6

typedef struct
{
  const PpProblem  *problem;
  const PpSchedule *schedule;
  double           *start; /* of each task */
  double           *end;
} Trial;

typedef gboolean (*Rule) (const Trial *trial);

static gboolean
each_task_is_done_once (const Trial *trial)
{
  g_autofree guint *times = g_new0 (guint, trial->problem->n_tasks);

  if (trial->schedule->n_slots != trial->problem->n_tasks)
    return FALSE;
  for (guint i = 0; i < trial->schedule->n_slots; i++)
    {
      const PpSlot *slot = &trial->schedule->slots[i];

      if (slot->task >= trial->problem->n_tasks || slot->mix >= trial->schedule->n_batches
          || times[slot->task]++ > 0)
        return FALSE;
    }

  return TRUE;
}

static gboolean
no_mix_is_empty (const Trial *trial)
{
  for (guint mix = 0; mix < trial->schedule->n_batches; mix++)
    {
      guint n = 0;

      for (guint i = 0; i < trial->schedule->n_slots; i++)
        n += trial->schedule->slots[i].mix == mix;
      if (n == 0)
        return FALSE;
    }

  return TRUE;
}

static gboolean
time_begins_with_the_first_mixing (const Trial *trial)
{
  double least = G_MAXDOUBLE;

  if (trial->schedule->n_batches == 0)
    return TRUE;
  for (guint mix = 0; mix < trial->schedule->n_batches; mix++)
    least = MIN (least, trial->schedule->batches[mix].start);

  return ABS (least) <= MET && ABS (trial->schedule->batches[0].start) <= MET;
}

static gboolean
are_apart (double a0, double a1, double b0, double b1)
{
  return a1 <= b0 + MET || b1 <= a0 + MET;
}

static gboolean
hands_do_one_thing_at_a_time (const Trial *trial)
{
  const PpBatch *mixes = trial->schedule->batches;
  const double mixing = trial->problem->mixing;

  for (guint i = 0; i < trial->problem->n_tasks; i++)
    {
      for (guint j = 0; j < i; j++)
        if (!are_apart (trial->start[i], trial->end[i], trial->start[j], trial->end[j]))
          return FALSE;
      for (guint mix = 0; mix < trial->schedule->n_batches; mix++)
        if (!are_apart (trial->start[i], trial->end[i],
                        mixes[mix].start, mixes[mix].start + mixing))
          return FALSE;
    }
  for (guint i = 1; i < trial->schedule->n_batches; i++)
    if (mixes[i].start < mixes[i - 1].start + mixing - MET)
      return FALSE;

  return TRUE;
}

static gboolean
glue_is_mixed_before_use (const Trial *trial)
{
  for (guint i = 0; i < trial->schedule->n_slots; i++)
    {
      const PpSlot *slot = &trial->schedule->slots[i];
      const double mixed = trial->schedule->batches[slot->mix].start + trial->problem->mixing;

      if (slot->start < mixed - MET)
        return FALSE;
    }

  return TRUE;
}

static gboolean
glue_is_used_in_its_life (const Trial *trial)
{
  for (guint i = 0; i < trial->schedule->n_slots; i++)
    {
      const PpSlot *slot = &trial->schedule->slots[i];
      const double dead = trial->schedule->batches[slot->mix].start + trial->problem->life;

      if (trial->end[slot->task] > dead + MET)
        return FALSE;
    }

  return TRUE;
}

static gboolean
a_mix_is_used_before_the_next (const Trial *trial)
{
  for (guint i = 0; i < trial->schedule->n_slots; i++)
    {
      const PpSlot *slot = &trial->schedule->slots[i];

      for (guint mix = slot->mix + 1; mix < trial->schedule->n_batches; mix++)
        if (trial->end[slot->task] > trial->schedule->batches[mix].start + MET)
          return FALSE;
    }

  return TRUE;
}

static gboolean
no_mix_is_too_large (const Trial *trial)
{
  for (guint mix = 0; mix < trial->schedule->n_batches; mix++)
    {
      double volume = 0;

      for (guint i = 0; i < trial->schedule->n_slots; i++)
        if (trial->schedule->slots[i].mix == mix)
          volume += trial->problem->tasks[trial->schedule->slots[i].task].volume;
      if (volume > trial->problem->largest + MET)
        return FALSE;
    }

  return TRUE;
}

static gboolean
links_are_kept (const Trial *trial)
{
  for (guint i = 0; i < trial->problem->n_links; i++)
    {
      const PpLink *link = &trial->problem->links[i];

      if (trial->start[link->second] < trial->end[link->first] + link->lag - MET)
        return FALSE;
    }

  return TRUE;
}

static gboolean
stages_follow_one_another (const Trial *trial)
{
  for (guint i = 0; i < trial->problem->n_tasks; i++)
    for (guint j = 0; j < trial->problem->n_tasks; j++)
      if (trial->problem->tasks[i].stage < trial->problem->tasks[j].stage
          && trial->start[j] < trial->end[i] - MET)
        return FALSE;

  return TRUE;
}

static gboolean
the_end_is_the_last (const Trial *trial)
{
  double last = 0;

  for (guint i = 0; i < trial->problem->n_tasks; i++)
    last = MAX (last, trial->end[i]);

  return ABS (trial->schedule->end - last) <= MET;
}

static gboolean
the_bound_is_no_later (const Trial *trial)
{
  return trial->schedule->lower_bound <= trial->schedule->end;
}

static double
find_last_end (const Trial *trial, guint mix)
{
  double last = 0;

  for (guint i = 0; i < trial->schedule->n_slots; i++)
    if (trial->schedule->slots[i].mix == mix)
      last = MAX (last, trial->end[trial->schedule->slots[i].task]);

  return last;
}

static gboolean
sittings_are_counted (const Trial *trial)
{
  const gboolean endless = trial->problem->sitting != trial->problem->sitting;
  guint sitting = 0;
  guint first = 0;

  for (guint mix = 0; mix < trial->schedule->n_batches; mix++)
    {
      const double length = find_last_end (trial, mix) - trial->schedule->batches[first].start;

      if (!endless && mix != first && length > trial->problem->sitting + MET)
        {
          first = mix;
          sitting++;
        }
      if (trial->schedule->batches[mix].sitting != sitting)
        return FALSE;
    }

  return TRUE;
}

static const struct
{
  const char *name;
  Rule        keeps;
} rules[] = {
  { "empty", no_mix_is_empty },
  { "zero", time_begins_with_the_first_mixing },
  { "hands", hands_do_one_thing_at_a_time },
  { "mixed", glue_is_mixed_before_use },
  { "life", glue_is_used_in_its_life },
  { "ended", a_mix_is_used_before_the_next },
  { "volume", no_mix_is_too_large },
  { "link", links_are_kept },
  { "stage", stages_follow_one_another },
  { "end", the_end_is_the_last },
  { "bound", the_bound_is_no_later },
  { "sitting", sittings_are_counted },
};

const char *
verify_schedule (const PpProblem  *problem,
                 const PpSchedule *schedule)
{
  g_autofree double *start = g_new0 (double, problem->n_tasks);
  g_autofree double *end = g_new0 (double, problem->n_tasks);
  const Trial trial = { problem, schedule, start, end };

  if (!each_task_is_done_once (&trial))
    return "tasks";
  for (guint i = 0; i < schedule->n_slots; i++)
    {
      const PpSlot *slot = &schedule->slots[i];

      start[slot->task] = slot->start;
      end[slot->task] = slot->start + problem->tasks[slot->task].minutes;
    }
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (!rules[i].keeps (&trial))
      return rules[i].name;

  return NULL;
}

const char *
verify_plan (const PpPlan *plan)
{
  const PpAdhesive *adhesive = plan->check->panel->adhesive;
  const guint n_knots = plan->order->n_knots;
  g_autofree PpTask *tasks = g_new0 (PpTask, plan->n_steps);
  g_autofree PpSlot *slots = g_new0 (PpSlot, plan->n_steps);
  g_autofree PpBatch *batches = g_new0 (PpBatch, plan->n_mixes);
  g_autofree PpLink *links = g_new0 (PpLink, plan->order->n_hard);
  PpProblem problem = { .n_tasks = plan->n_steps, .tasks = tasks, .links = links,
                        .mixing = adhesive->mixing, .life = adhesive->working_life,
                        .largest = adhesive->largest_mix, .sitting = adhesive->sitting };
  const PpSchedule schedule = { .exists = TRUE, .n_slots = plan->n_steps, .slots = slots,
                                .n_batches = plan->n_mixes, .batches = batches,
                                .end = plan->placed_by, .lower_bound = plan->lower_bound };

  for (guint i = 0; i < plan->n_steps; i++)
    {
      const PpStep *step = &plan->steps[i];

      tasks[i] = (PpTask) { step->minutes, step->volume, plan->order->stages[step->job], 0, 0 };
      slots[i] = (PpSlot) { i, step->mix - 1, step->start };
      batches[step->mix - 1] = (PpBatch) { plan->mixes[step->mix - 1].start, step->sitting - 1 };
    }
  for (guint e = 0; e < plan->order->n_hard; e++)
    for (guint a = 0; a < plan->n_steps; a++)
      for (guint b = 0; b < plan->n_steps; b++)
        {
          const PpEdge *edge = &plan->order->hard[e];

          if (plan->steps[a].job != edge->first || plan->steps[b].job != edge->second)
            continue;
          const gboolean grab = edge->first >= n_knots
                                && plan->check->rests[edge->first - n_knots]->hold
                                && pp_rest_rests_on (plan->check->rests[edge->second - n_knots],
                                                     PP_OWNER (PP_OWNER_PLACEMENT,
                                                               edge->first - n_knots));
          links[problem.n_links++] = (PpLink) { a, b, grab ? adhesive->grab : 0 };
        }

  return verify_schedule (&problem, &schedule);
}
