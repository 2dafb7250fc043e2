/* job.c: what each job of a glue-up takes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/job.h"

/* Dabs that a job's own minutes are for. */
#define DABS_WITHIN 2

/* The last that the log says of a knot. */
static gboolean
is_logged_as_tied (const PpPanel *panel,
                   const char    *id)
{
  for (guint i = panel->log->len; i-- > 0;)
    {
      const PpLogEntry *entry = g_ptr_array_index (panel->log, i);

      if (g_strv_contains (entry->about, id))
        return entry->what == PP_LOG_PLACED;
    }

  return FALSE;
}

gboolean
pp_job_is_done (const PpPanel *panel,
                guint          n_knots,
                guint          job)
{
  if (job >= n_knots)
    return pp_panel_placement (panel, job - n_knots)->glued_at != NULL;
  if (panel->wire->knotted_at != NULL)
    return TRUE;

  g_autofree char *id = pp_job_dup_id (panel, n_knots, job);

  return is_logged_as_tied (panel, id);
}

static PpJob
knot_job (const PpPanel *panel)
{
  return (PpJob) {
    .minutes = pp_panel_get_limit (panel, PP_LIMIT_KNOT_MINUTES),
    .volume = pp_panel_get_limit (panel, PP_LIMIT_KNOT_GLUE),
  };
}

static PpJob
placement_job (const PpCheck *check,
               guint          placement)
{
  const PpJoint *joint = check->joints[placement];
  const gboolean is_stem = check->scene->pockets[placement] != PP_NO_INDEX;
  const guint more_dabs = joint->n_dabs > DABS_WITHIN ? joint->n_dabs - DABS_WITHIN : 0;
  const double own = pp_panel_get_limit (check->panel,
                                         is_stem ? PP_LIMIT_STEM_MINUTES : PP_LIMIT_PIECE_MINUTES);

  return (PpJob) {
    .hold = check->rests[placement]->hold,
    .minutes = own + more_dabs * pp_panel_get_limit (check->panel, PP_LIMIT_DAB_MINUTES),
    .volume = joint->volume,
  };
}

PpJob *
pp_jobs_new (const PpCheck *check)
{
  const guint n_knots = check->scene->n_knots, n_jobs = n_knots + check->n;
  PpJob *jobs = g_new (PpJob, n_jobs);

  for (guint job = 0; job < n_jobs; job++)
    {
      jobs[job] = job < n_knots ? knot_job (check->panel) : placement_job (check, job - n_knots);
      jobs[job].done = pp_job_is_done (check->panel, n_knots, job);
    }

  return jobs;
}

gboolean
pp_job_must_grab (const PpCheck *check,
                  const PpOrder *order,
                  const PpJob   *jobs,
                  const PpEdge  *edge)
{
  const guint n_knots = order->n_knots;

  return edge->first >= n_knots && jobs[edge->first].hold
         && pp_rest_rests_on (check->rests[edge->second - n_knots],
                              PP_OWNER (PP_OWNER_PLACEMENT, edge->first - n_knots));
}
