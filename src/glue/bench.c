/* bench.c: where the maker stands in a glue-up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An open mix is gone on with while the step in hand ends within its life, there is glue left, and
 * the plan has the step in no later mix: at the pace of the plan no other way is sooner. As much
 * was mixed as the plan asked for; if the plan was made later than the mix, that is not known, and
 * the glue of the smallest mix is counted on, which every mix has.
 *
 * A mix of which nothing is used is also gone on with if a held piece will not let go in its life:
 * the maker did not wait to mix, and need not wait to place. Else the step would ask for one mix
 * after the other. Of a mix from which something was placed the stirring is over.
 */
#include "glue/bench.h"

#include "glue/job.h"
#include "panel/tolerance.h"

#include <math.h>
#include <string.h>

#define NO_MIX 0

/* What the log says of the mix at hand. */
typedef struct
{
  gboolean is_open;
  double   began;  /* min, as `now` below */
  double   poured; /* ml, at least */
  double   used;   /* ml */
  guint    mix;    /* that the plan asked for; NO_MIX: the plan was made later */
  int      n_done; /* jobs */
} Open;

typedef struct
{
  const PpPlan     *plan;
  const PpPanel    *panel;
  const PpAdhesive *adhesive;
  PpJob            *jobs;
  double            now; /* min, of no matter which beginning */
} Reading;

static double
minutes_of (GDateTime *time)
{
  return (double) g_date_time_to_unix (time) / 60 + g_date_time_get_microsecond (time) / 60e6;
}

/* RFC 3339 knows small letters and leap seconds, GLib does not. NAN: not a time. */
static double
read_minutes (const char *text)
{
  g_autofree char *plain = g_ascii_strup (text, -1);

  if (strlen (plain) > 19 && plain[17] == '6')
    memcpy (plain + 17, "59", 2);
  g_autoptr (GDateTime) time = g_date_time_new_from_iso8601 (plain, NULL);

  return time != NULL ? minutes_of (time) : (double) NAN;
}

/* When a job was done, min; NAN: not known. */
static double
find_done_at (const Reading *reading,
              guint          job)
{
  const guint n_knots = reading->plan->order->n_knots;
  const char *at = job < n_knots ? reading->panel->wire->knotted_at
                                 : pp_panel_placement (reading->panel, job - n_knots)->glued_at;

  return at != NULL ? read_minutes (at) : (double) NAN;
}

static gboolean
is_done (const Reading *reading,
         guint          job)
{
  return pp_job_is_done (reading->panel, reading->plan->order->n_knots, job);
}

static gboolean
is_same_place (const PpPlacement *a,
               const PpPlacement *b)
{
  return a == b || (g_str_equal (a->id, b->id) && g_str_equal (a->piece, b->piece) && a->x == b->x
                    && a->y == b->y && a->rotation == b->rotation && a->mirrored == b->mirrored);
}

/* Whether the plan is for what lies on the panel, as it lies there, and has all that is not
 * done. */
static gboolean
is_plan_good (const Reading *reading)
{
  const PpPlan *plan = reading->plan;
  const PpPanel *before = plan->check->panel;
  g_autofree gboolean *has = g_new0 (gboolean, plan->order->n_jobs + 1);

  if (!plan->exists || before->placements->len != reading->panel->placements->len
      || (before->wire == NULL) != (reading->panel->wire == NULL))
    return FALSE;
  for (guint i = 0; i < before->placements->len; i++)
    if (!is_same_place (pp_panel_placement (before, i), pp_panel_placement (reading->panel, i)))
      return FALSE;
  for (guint i = 0; i < plan->n_steps; i++)
    has[plan->steps[i].job] = TRUE;
  for (guint job = 0; job < plan->order->n_jobs; job++)
    if (!has[job] && !is_done (reading, job))
      return FALSE;

  return TRUE;
}

/* Where the log begins to speak of the mix at hand; its length if there is none. */
static guint
find_mixing (const PpPanel *panel)
{
  guint n_unmixed = 0;

  for (guint i = panel->log->len; i-- > 0;)
    {
      const PpLogEntry *entry = g_ptr_array_index (panel->log, i);

      if (entry->what == PP_LOG_PAUSED)
        break;
      if (entry->what == PP_LOG_TAKEN_BACK && entry->about[0] == NULL)
        n_unmixed++;
      else if (entry->what == PP_LOG_MIXED && n_unmixed-- == 0)
        return i;
    }

  return panel->log->len;
}

static gboolean
changes_job (const PpLogEntry *entry,
             const char       *id)
{
  return entry->what != PP_LOG_MOVED && g_strv_contains (entry->about, id);
}

/* Of each job, whether it was still to be done when the log had that length. (transfer full) */
static gboolean *
find_undone_at (const Reading *reading,
                guint          length)
{
  const PpOrder *order = reading->plan->order;
  const GPtrArray *log = reading->panel->log;
  gboolean *undone = g_new (gboolean, order->n_jobs + 1);

  for (guint job = 0; job < order->n_jobs; job++)
    {
      g_autofree char *id = pp_job_dup_id (reading->panel, order->n_knots, job);
      guint i = length;

      while (i < log->len && !changes_job (g_ptr_array_index (log, i), id))
        i++;
      undone[job] = i < log->len
                      ? ((const PpLogEntry *) g_ptr_array_index (log, i))->what == PP_LOG_PLACED
                      : !is_done (reading, job);
    }

  return undone;
}

/* The mix of the first step that was not done then, and the glue that those of it need. */
static void
find_poured (const Reading *reading,
             guint          mixing,
             Open          *open)
{
  const PpPlan *plan = reading->plan;

  open->poured = reading->adhesive->smallest_mix;
  if (plan->check->panel->log->len > mixing)
    return;

  g_autofree gboolean *undone = find_undone_at (reading, mixing);
  double need = 0;

  for (guint i = 0; i < plan->n_steps; i++)
    {
      const PpStep *step = &plan->steps[i];

      if (undone[step->job] && open->mix == NO_MIX)
        open->mix = step->mix;
      if (undone[step->job] && open->mix == step->mix)
        need += step->volume;
    }
  open->poured = fmax (open->poured, need);
}

static void
count_used (const Reading    *reading,
            const PpLogEntry *entry,
            Open             *open)
{
  const PpOrder *order = reading->plan->order;

  if (entry->what != PP_LOG_PLACED && entry->what != PP_LOG_TAKEN_BACK)
    return;
  for (guint job = 0; job < order->n_jobs; job++)
    {
      g_autofree char *id = pp_job_dup_id (reading->panel, order->n_knots, job);

      if (!g_strv_contains (entry->about, id))
        continue;
      open->used += entry->what == PP_LOG_PLACED ? reading->jobs[job].volume
                                                 : -reading->jobs[job].volume;
      open->n_done += entry->what == PP_LOG_PLACED ? 1 : -1;
    }
}

static void
read_log (const Reading *reading,
          Open          *open)
{
  const GPtrArray *log = reading->panel->log;
  const guint mixing = find_mixing (reading->panel);

  *open = (Open) { .mix = NO_MIX };
  if (mixing == log->len)
    return;
  open->began = read_minutes (((const PpLogEntry *) g_ptr_array_index (log, mixing))->at);
  open->is_open = reading->now < open->began + reading->adhesive->working_life;
  find_poured (reading, mixing, open);
  for (guint i = mixing + 1; i < log->len; i++)
    count_used (reading, g_ptr_array_index (log, i), open);
}

/* When the glue under a job has grabbed, min; now or before: at once. */
static double
find_release (const Reading *reading,
              guint          job)
{
  const PpPlan *plan = reading->plan;
  double release = reading->now;

  for (guint i = 0; i < plan->order->n_hard; i++)
    {
      const PpEdge *edge = &plan->order->hard[i];

      if (edge->second == job && is_done (reading, edge->first)
          && pp_job_must_grab (plan->check, plan->order, reading->jobs, edge))
        release = fmax (release, find_done_at (reading, edge->first) + reading->adhesive->grab);
    }

  return release;
}

static gboolean
has_glue_for (const Open   *open,
              const PpStep *step)
{
  return (open->mix == NO_MIX || step->mix <= open->mix)
         && open->used + step->volume <= open->poured + PP_TIE;
}

/* Whether the job, begun then, is done while the open mix can be used. */
static gboolean
is_in_life (const Reading *reading,
            const Open    *open,
            const PpStep  *step,
            double         start)
{
  return start + step->minutes <= open->began + reading->adhesive->working_life + PP_TIE;
}

static void
read_step (PpBench       *self,
           const Reading *reading,
           const Open    *open)
{
  const PpAdhesive *adhesive = reading->adhesive;
  const double release = find_release (reading, self->step->job);
  const double stirred = open->n_done > 0 ? reading->now
                                          : fmax (open->began + adhesive->mixing, reading->now);
  const double start = fmax (release, stirred);
  const gboolean is_good = open->is_open && has_glue_for (open, self->step);

  if (is_good && is_in_life (reading, open, self->step, open->n_done > 0 ? start : stirred))
    {
      self->next = PP_NEXT_PLACE;
      self->wait = start - reading->now;
      return;
    }

  self->next = PP_NEXT_MIX;
  self->can_hurry = is_good && is_in_life (reading, open, self->step, stirred);
  self->wait = fmax (release - adhesive->mixing - reading->now, 0);
  for (guint i = 0; i < reading->plan->n_steps; i++)
    {
      const PpStep *step = &reading->plan->steps[i];

      if (step->mix == self->step->mix && !is_done (reading, step->job))
        self->mix.need += step->volume;
    }
  pp_mix_measure (&self->mix, adhesive);
}

static void
read_end (PpBench       *self,
          const Reading *reading)
{
  double last = -INFINITY;

  self->next = PP_NEXT_NONE;
  for (guint job = 0; job < reading->plan->order->n_jobs; job++)
    last = fmax (last, find_done_at (reading, job));
  self->wait = fmax (last + reading->adhesive->hard - reading->now, 0);
  self->cured = fmax (last + reading->adhesive->cure - reading->now, 0);
}

static void
read_bench (PpBench       *self,
            const Reading *reading)
{
  const PpPlan *plan = reading->plan;
  Open open;

  read_log (reading, &open);
  self->is_open = open.is_open;
  if (open.is_open)
    {
      self->age = fmax (reading->now - open.began, 0);
      self->left = reading->adhesive->working_life - self->age;
    }
  for (guint i = 0; i < plan->n_steps && self->step == NULL; i++)
    if (!is_done (reading, plan->steps[i].job))
      self->step = &plan->steps[i];
  if (self->step != NULL)
    read_step (self, reading, &open);
  else
    read_end (self, reading);
}

void
pp_bench_read (PpBench       *self,
               const PpPlan  *plan,
               const PpPanel *panel,
               GDateTime     *now)
{
  g_return_if_fail (self != NULL && plan != NULL && panel != NULL && now != NULL);

  g_autofree PpJob *jobs = pp_jobs_new (plan->check);
  const Reading reading = { plan, panel, panel->adhesive, jobs, minutes_of (now) };

  *self = (PpBench) { .next = PP_NEXT_PLAN, .cured = NAN, .age = NAN, .left = NAN };
  if (is_plan_good (&reading))
    read_bench (self, &reading);
}

double
pp_bench_age_of (const PpPlan  *plan,
                 const PpPanel *panel,
                 guint          job,
                 GDateTime     *now)
{
  g_return_val_if_fail (plan != NULL && panel != NULL && now != NULL, (double) NAN);
  g_return_val_if_fail (job < plan->order->n_jobs, (double) NAN);

  const Reading reading = { .plan = plan, .panel = panel };

  return minutes_of (now) - find_done_at (&reading, job);
}
