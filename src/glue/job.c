/* job.c: what each job of a glue-up takes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/job.h"

/* Dabs that a job's own minutes are for. */
#define DABS_WITHIN 2

static PpJob
knot_job (const PpPanel *panel)
{
  return (PpJob) {
    .done = panel->wire->knotted_at != NULL,
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
    .done = pp_panel_placement (check->panel, placement)->glued_at != NULL,
    .hold = check->rests[placement]->hold,
    .minutes = own + more_dabs * pp_panel_get_limit (check->panel, PP_LIMIT_DAB_MINUTES),
    .volume = joint->volume,
  };
}

PpJob *
pp_jobs_new (const PpCheck *check,
             const PpOrder *order)
{
  PpJob *jobs = g_new (PpJob, order->n_jobs);

  for (guint job = 0; job < order->n_jobs; job++)
    jobs[job] = job < order->n_knots ? knot_job (check->panel)
                                     : placement_job (check, job - order->n_knots);

  return jobs;
}
