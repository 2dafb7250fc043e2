/* plan.c: the glue-up on a clock.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Makes the problem of schedule.h from a check, leaving out jobs that are done, and reads its
 * answer back as steps and mixes. Jobs are numbered anew for that, in the same order. Stages stay
 * those of the whole panel: a flat piece on a shaped one goes with the shaped ones whether or not
 * that one is glued already, so that what is left of a plan does not change as it is worked off.
 */
#include "glue/plan.h"

#include "check/piece-name.h"
#include "glue/job.h"
#include "glue/schedule.h"
#include "panel/i18n.h"
#include "panel/measure.h"

#define NOT_LEFT G_MAXUINT

/* The problem, with the arrays that it points at. */
typedef struct
{
  PpProblem problem;
  PpJob    *jobs;    /* of the order */
  guint    *job_of;  /* of each task */
  guint    *task_of; /* of each job; NOT_LEFT: done */
  PpTask   *tasks;
  PpLink   *links;
  PpTuck   *tucks;
} Work;

static void
work_clear (Work *work)
{
  g_free (work->jobs);
  g_free (work->job_of);
  g_free (work->task_of);
  g_free (work->tasks);
  g_free (work->links);
  g_free (work->tucks);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Work, work_clear)

/* Places in the accepted order, by the ids of its jobs. */
static GHashTable *
find_ranks (const PpPanel *panel)
{
  GHashTable *ranks = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; panel->plan != NULL && panel->plan[i] != NULL; i++)
    if (!g_hash_table_contains (ranks, panel->plan[i]))
      g_hash_table_insert (ranks, (gpointer) panel->plan[i], GUINT_TO_POINTER (i));

  return ranks;
}

static guint
find_rank (GHashTable    *ranks,
           const PpPanel *panel,
           const PpOrder *order,
           guint          job)
{
  g_autofree char *id = pp_job_dup_id (panel, order->n_knots, job);
  gpointer rank;

  if (!g_hash_table_lookup_extended (ranks, id, NULL, &rank))
    return PP_NO_RANK;
  return GPOINTER_TO_UINT (rank);
}

static void
add_tasks (Work         *work,
           const PpPlan *plan)
{
  const PpOrder *order = plan->order;
  g_autoptr (GHashTable) ranks = find_ranks (plan->check->panel);
  guint n = 0;

  for (guint job = 0; job < order->n_jobs; job++)
    {
      work->task_of[job] = NOT_LEFT;
      if (work->jobs[job].done)
        continue;

      work->tasks[n] = (PpTask) {
        .minutes = work->jobs[job].minutes,
        .volume = work->jobs[job].volume,
        .stage = order->stages[job],
        .depth = order->depth[job],
        .rank = find_rank (ranks, plan->check->panel, order, job),
      };
      work->job_of[n] = job;
      work->task_of[job] = n++;
    }
  work->problem.n_tasks = n;
}

static void
add_links (Work         *work,
           const PpPlan *plan)
{
  const PpOrder *order = plan->order;

  for (guint i = 0; i < order->n_hard; i++)
    {
      const PpEdge *edge = &order->hard[i];
      const guint first = work->task_of[edge->first];
      const guint second = work->task_of[edge->second];

      if (first == NOT_LEFT || second == NOT_LEFT)
        continue;

      const gboolean must_grab = pp_job_must_grab (plan->check, order, work->jobs, edge);

      work->links[work->problem.n_links++] = (PpLink) {
        first, second, must_grab ? plan->check->panel->adhesive->grab : 0,
      };
    }
  for (guint i = 0; i < order->n_tucks; i++)
    {
      const guint lower = work->task_of[order->tucks[i].first];
      const guint upper = work->task_of[order->tucks[i].second];

      if (lower != NOT_LEFT && upper != NOT_LEFT)
        work->tucks[work->problem.n_tucks++] = (PpTuck) { lower, upper };
    }
}

static void
work_init (Work         *work,
           const PpPlan *plan)
{
  const PpOrder *order = plan->order;
  const PpAdhesive *adhesive = plan->check->panel->adhesive;

  work->jobs = pp_jobs_new (plan->check);
  work->job_of = g_new (guint, order->n_jobs);
  work->task_of = g_new (guint, order->n_jobs);
  work->tasks = g_new (PpTask, order->n_jobs);
  work->links = g_new (PpLink, order->n_hard);
  work->tucks = g_new (PpTuck, order->n_tucks);
  work->problem = (PpProblem) {
    .tasks = work->tasks,
    .links = work->links,
    .tucks = work->tucks,
    .mixing = adhesive->mixing,
    .life = adhesive->working_life,
    .largest = adhesive->largest_mix,
    .sitting = adhesive->sitting,
  };
  add_tasks (work, plan);
  add_links (work, plan);
}

static void
read_steps (PpPlan           *plan,
            const Work       *work,
            const PpSchedule *schedule)
{
  plan->n_steps = schedule->n_slots;
  plan->steps = g_new (PpStep, schedule->n_slots);

  for (guint i = 0; i < schedule->n_slots; i++)
    {
      const PpSlot *slot = &schedule->slots[i];
      const guint job = work->job_of[slot->task];

      plan->steps[i] = (PpStep) {
        .job = job,
        .mix = slot->mix + 1,
        .sitting = schedule->batches[slot->mix].sitting + 1,
        .start = slot->start,
        .minutes = work->jobs[job].minutes,
        .volume = work->jobs[job].volume,
        .hold = work->jobs[job].hold,
      };
    }
}

void
pp_mix_measure (PpMix            *self,
                const PpAdhesive *adhesive)
{
  const double parts = adhesive->ratio[0] + adhesive->ratio[1];
  const double whole = fmax (self->need, adhesive->smallest_mix);

  self->a = whole * adhesive->ratio[0] / parts;
  self->b = whole * adhesive->ratio[1] / parts;
}

static void
read_mixes (PpPlan           *plan,
            const PpSchedule *schedule)
{
  plan->n_mixes = schedule->n_batches;
  plan->mixes = g_new0 (PpMix, schedule->n_batches);
  for (guint i = 0; i < plan->n_steps; i++)
    plan->mixes[plan->steps[i].mix - 1].need += plan->steps[i].volume;

  for (guint i = 0; i < plan->n_mixes; i++)
    {
      PpMix *mix = &plan->mixes[i];

      mix->start = schedule->batches[i].start;
      pp_mix_measure (mix, plan->check->panel->adhesive);
    }
}

/* NULL for a knot. (transfer full) */
static char *
name_job (const PpPlan *plan,
          guint         job)
{
  const guint n_knots = plan->order->n_knots;

  return job >= n_knots ? pp_piece_name_of (plan->check->scene, job - n_knots) : NULL;
}

static PpPoint
place_job (const PpPlan *plan,
           guint         job)
{
  const PpScene *scene = plan->check->scene;

  if (job >= plan->order->n_knots)
    return scene->bodies[job - plan->order->n_knots]->centroid;
  return pp_scene_knot_place (scene, job);
}

static char *
say_too_long (const PpPlan *plan,
              const PpTask *task,
              const char   *name)
{
  const PpAdhesive *adhesive = plan->check->panel->adhesive;
  g_autofree char *takes = pp_time_format (task->minutes);
  g_autofree char *lasts = pp_time_format (adhesive->working_life - adhesive->mixing);

  if (name == NULL)
    return g_strdup_printf (_("A knot of the wire takes %s to glue, but a mix can be used for only "
                              "%s. Choose a glue that stays workable longer."), takes, lasts);
  /* Translators: the name of a piece, then two times. */
  return g_strdup_printf (_("%s takes %s to glue, but a mix can be used for only %s. Choose a glue "
                            "that stays workable longer."),
                          name, takes, lasts);
}

static char *
say_too_large (const PpPlan *plan,
               const PpTask *task,
               const char   *name)
{
  g_autofree char *takes = pp_volume_format (task->volume);
  g_autofree char *largest = pp_volume_format (plan->check->panel->adhesive->largest_mix);

  if (name == NULL)
    return g_strdup_printf (_("A knot of the wire takes %s of glue at once, but the largest mix is "
                              "%s. Allow a larger mix if the glue's instructions do."), takes,
                            largest);
  /* Translators: the name of a piece, then two volumes. */
  return g_strdup_printf (_("%s takes %s of glue at once, but the largest mix is %s. Allow a "
                            "larger mix if the glue's instructions do."),
                          name, takes, largest);
}

/* Of the first job that fits no mix. */
static void
say_mix_small (PpPlan     *plan,
               const Work *work,
               PpFindings *findings)
{
  guint task = 0;

  while (pp_task_fits (&work->tasks[task], &work->problem))
    task++;

  const gboolean too_large = pp_is_over (work->tasks[task].volume, work->problem.largest);
  g_autofree char *name = name_job (plan, work->job_of[task]);
  const PpFinding finding = {
    .code = "mix-small",
    .level = PP_LEVEL_FAULT,
    .origin = PP_ORIGIN_OWN,
    .at = place_job (plan, work->job_of[task]),
    .about = PP_ABOUT ("adhesive"),
    .value = NAN,
    .limit = NAN,
  };

  pp_findings_add (findings, finding,
                   too_large ? say_too_large (plan, &work->tasks[task], name)
                             : say_too_long (plan, &work->tasks[task], name));
}

static void
read_schedule (PpPlan           *plan,
               const Work       *work,
               const PpSchedule *schedule)
{
  PpFindings findings;

  pp_findings_init (&findings, plan->check->panel);
  plan->exists = schedule->exists;
  plan->placed_by = schedule->exists ? schedule->end : (double) NAN;
  plan->lower_bound = schedule->exists ? schedule->lower_bound : (double) NAN;
  plan->optimal = schedule->optimal;
  if (schedule->exists)
    {
      read_steps (plan, work, schedule);
      read_mixes (plan, schedule);
    }
  else
    say_mix_small (plan, work, &findings);
  plan->findings = g_ptr_array_ref (findings.list);
  pp_findings_clear (&findings);
}

PpPlan *
pp_plan_new (const PpCheck  *check,
             guint64         max_steps,
             GCancellable   *cancellable,
             PpProgressFunc  progress,
             gpointer        data,
             GError        **error)
{
  return pp_plan_new_until (check, NULL, max_steps, NULL, cancellable, progress, data, error);
}

PpPlan *
pp_plan_new_until (const PpCheck  *check,
                   PpOrder        *order,
                   guint64         max_steps,
                   GCancellable   *enough,
                   GCancellable   *cancellable,
                   PpProgressFunc  progress,
                   gpointer        data,
                   GError        **error)
{
  g_return_val_if_fail (check != NULL, NULL);

  g_autoptr (PpPlan) self = g_atomic_rc_box_new0 (PpPlan);
  g_auto (Work) work = { 0 };

  self->check = pp_check_ref (check);
  self->order = order != NULL ? pp_order_ref (order) : pp_order_new (check);
  work_init (&work, self);

  g_autoptr (PpSchedule) schedule = pp_schedule_new (&work.problem, max_steps, enough, cancellable,
                                                     progress, data, error);

  if (schedule == NULL)
    return NULL;
  read_schedule (self, &work, schedule);
  if (progress != NULL)
    progress (1, data);

  return g_steal_pointer (&self);
}

PpPlan *
pp_plan_ref (const PpPlan *self)
{
  return g_atomic_rc_box_acquire ((PpPlan *) self);
}

static void
plan_clear (gpointer data)
{
  PpPlan *self = data;

  g_free (self->steps);
  g_free (self->mixes);
  g_clear_pointer (&self->findings, g_ptr_array_unref);
  pp_order_unref (self->order);
  pp_check_unref (self->check);
}

void
pp_plan_unref (const PpPlan *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full ((PpPlan *) self, plan_clear);
}
