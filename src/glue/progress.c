/* progress.c: what happens at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The panel knows of the wire's knots only when both are tied. Until then the log does: a knot is
 * tied if the last that it says of it is that it was placed (job.h).
 */
#include "glue/progress.h"

#include "glue/act.h"
#include "glue/job.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"

#define NO_JOB G_MAXUINT

static PpPanel *
record (const PpPanel *panel,
        PpLogWhat      what,
        GDateTime     *at,
        GError       **error)
{
  g_auto (PpAct) act = { 0 };

  pp_act_init (&act, panel, at);
  pp_act_log (&act, act.at, what, NULL);

  return pp_panel_new (&act.panel, error);
}

PpPanel *
pp_progress_mixed (const PpPanel *panel,
                   GDateTime     *at,
                   GError       **error)
{
  g_return_val_if_fail (panel != NULL && at != NULL, NULL);

  return record (panel, PP_LOG_MIXED, at, error);
}

PpPanel *
pp_progress_unmixed (const PpPanel *panel,
                     GDateTime     *at,
                     GError       **error)
{
  g_return_val_if_fail (panel != NULL && at != NULL, NULL);

  return record (panel, PP_LOG_TAKEN_BACK, at, error);
}

PpPanel *
pp_progress_paused (const PpPanel *panel,
                    GDateTime     *at,
                    GError       **error)
{
  g_return_val_if_fail (panel != NULL && at != NULL, NULL);

  return record (panel, PP_LOG_PAUSED, at, error);
}

static gboolean
is_of (const PpOrder *order,
       const PpPanel *panel)
{
  return order->n_jobs == order->n_knots + panel->placements->len;
}

static guint
find_job (const PpPanel *panel,
          const PpOrder *order,
          const char    *id,
          GError       **error)
{
  guint index;

  if (pp_panel_find_placement (panel, id, &index) != NULL)
    return order->n_knots + index;
  for (guint knot = 0; knot < order->n_knots; knot++)
    {
      g_autofree char *name = pp_job_dup_id (panel, order->n_knots, knot);

      if (g_str_equal (name, id))
        return knot;
    }
  pp_edit_refuse_unknown (id, error);

  return NO_JOB;
}

/* After the log has been written. */
static void
set_knotted_if_all_tied (PpAct         *self,
                         const PpOrder *order)
{
  for (guint knot = 0; knot < order->n_knots; knot++)
    if (!pp_job_is_done (&self->panel, order->n_knots, knot))
      return;
  pp_act_set_knotted (self, self->at);
}

static gboolean
refuse_if_early (const PpPanel *panel,
                 const PpOrder *order,
                 guint          job,
                 const char    *id,
                 GError       **error)
{
  for (guint i = 0; i < order->n_hard; i++)
    if (order->hard[i].second == job
        && !pp_job_is_done (panel, order->n_knots, order->hard[i].first))
      {
        g_autofree char *first = pp_job_dup_id (panel, order->n_knots, order->hard[i].first);

        g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                     _("“%s” must be glued before “%s”."), first, id);
        return TRUE;
      }

  return FALSE;
}

PpPanel *
pp_progress_placed (const PpPanel *panel,
                    const PpOrder *order,
                    const char    *job,
                    GDateTime     *at,
                    GError       **error)
{
  g_return_val_if_fail (panel != NULL && is_of (order, panel), NULL);
  g_return_val_if_fail (job != NULL && at != NULL, NULL);

  const guint number = find_job (panel, order, job, error);
  const char * const about[] = { job, NULL };

  if (number == NO_JOB || refuse_if_early (panel, order, number, job, error))
    return NULL;
  if (pp_job_is_done (panel, order->n_knots, number))
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, _("“%s” is glued already."), job);
      return NULL;
    }

  g_auto (PpAct) act = { 0 };

  pp_act_init (&act, panel, at);
  pp_act_log (&act, act.at, PP_LOG_PLACED, about);
  if (number >= order->n_knots)
    pp_act_set_glued (&act, number - order->n_knots, act.at);
  else
    set_knotted_if_all_tied (&act, order);

  return pp_panel_new (&act.panel, error);
}

static gboolean
refuse_if_under_glue (const PpPanel  *panel,
                      const PpOrder  *order,
                      guint           job,
                      const gboolean *named,
                      GError        **error)
{
  g_autofree gboolean *follows = pp_order_find_followers (order, job);

  for (guint k = 0; k < order->n_jobs; k++)
    if (follows[k] && !named[k] && pp_job_is_done (panel, order->n_knots, k))
      {
        g_autofree char *lower = pp_job_dup_id (panel, order->n_knots, job);
        g_autofree char *upper = pp_job_dup_id (panel, order->n_knots, k);

        g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                     _("“%s” is glued on “%s” and would have to come off with it."), upper, lower);
        return TRUE;
      }

  return FALSE;
}

/* A file may say that the wire is knotted where its log says nothing of a knot that stays. */
static void
unknot (PpAct          *self,
        const PpOrder  *order,
        const gboolean *named)
{
  g_autofree char *tied_at = g_strdup (self->panel.wire->knotted_at);

  pp_act_set_knotted (self, NULL);
  for (guint knot = 0; knot < order->n_knots && tied_at != NULL; knot++)
    if (!named[knot] && !pp_job_is_done (&self->panel, order->n_knots, knot))
      {
        g_autofree char *id = pp_job_dup_id (&self->panel, order->n_knots, knot);
        const char * const about[] = { id, NULL };

        pp_act_log (self, tied_at, PP_LOG_PLACED, about);
      }
}

static void
undo (PpAct              *self,
      const PpOrder      *order,
      const gboolean     *named,
      PpLogWhat           what,
      const char * const *jobs)
{
  gboolean is_wire = FALSE;

  for (guint knot = 0; knot < order->n_knots; knot++)
    is_wire |= named[knot];
  if (is_wire)
    unknot (self, order, named);
  for (guint job = order->n_knots; job < order->n_jobs; job++)
    if (named[job])
      pp_act_set_glued (self, job - order->n_knots, NULL);
  pp_act_log (self, self->at, what, jobs);
}

/* Of each job, whether `jobs` names it; NULL if they cannot have come off. (transfer full) */
static gboolean *
find_named (const PpPanel      *panel,
            const PpOrder      *order,
            const char * const *jobs,
            PpLogWhat           what,
            GError            **error)
{
  g_autofree gboolean *named = g_new0 (gboolean, order->n_jobs + 1);

  for (guint i = 0; jobs[i] != NULL; i++)
    {
      const guint job = find_job (panel, order, jobs[i], error);

      if (job == NO_JOB)
        return NULL;
      if (what != PP_LOG_BROKE && !pp_job_is_done (panel, order->n_knots, job))
        {
          g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                       _("“%s” is not glued yet."), jobs[i]);
          return NULL;
        }
      named[job] = TRUE;
    }
  for (guint job = 0; job < order->n_jobs; job++)
    if (named[job] && pp_job_is_done (panel, order->n_knots, job)
        && refuse_if_under_glue (panel, order, job, named, error))
      return NULL;

  return g_steal_pointer (&named);
}

static void
break_piece (PpAct         *act,
             const PpPanel *panel,
             guint          placement)
{
  guint piece;

  if (pp_panel_find_piece (panel, pp_panel_placement (panel, placement)->piece, &piece) != NULL)
    pp_act_break (act, piece);
}

static PpPanel *
come_off (const PpPanel      *panel,
          const PpOrder      *order,
          const char * const *jobs,
          PpLogWhat           what,
          GDateTime          *at,
          GError            **error)
{
  g_autofree gboolean *named = find_named (panel, order, jobs, what, error);

  if (named == NULL)
    return NULL;

  g_auto (PpAct) act = { 0 };

  pp_act_init (&act, panel, at);
  undo (&act, order, named, what, jobs);
  for (guint job = order->n_knots; what == PP_LOG_BROKE && job < order->n_jobs; job++)
    if (named[job])
      break_piece (&act, panel, job - order->n_knots);

  return pp_panel_new (&act.panel, error);
}

PpPanel *
pp_progress_taken_back (const PpPanel *panel,
                        const PpOrder *order,
                        const char    *job,
                        GDateTime     *at,
                        GError       **error)
{
  g_return_val_if_fail (panel != NULL && is_of (order, panel), NULL);
  g_return_val_if_fail (job != NULL && at != NULL, NULL);

  const char * const jobs[] = { job, NULL };

  return come_off (panel, order, jobs, PP_LOG_TAKEN_BACK, at, error);
}

PpPanel *
pp_progress_fell (const PpPanel      *panel,
                  const PpOrder      *order,
                  const char * const *jobs,
                  GDateTime          *at,
                  GError            **error)
{
  g_return_val_if_fail (panel != NULL && is_of (order, panel), NULL);
  g_return_val_if_fail (jobs != NULL && jobs[0] != NULL && at != NULL, NULL);

  return come_off (panel, order, jobs, PP_LOG_FELL, at, error);
}

PpPanel *
pp_progress_broke (const PpPanel      *panel,
                   const PpOrder      *order,
                   const char * const *jobs,
                   GDateTime          *at,
                   GError            **error)
{
  g_return_val_if_fail (panel != NULL && is_of (order, panel), NULL);
  g_return_val_if_fail (jobs != NULL && jobs[0] != NULL && at != NULL, NULL);

  return come_off (panel, order, jobs, PP_LOG_BROKE, at, error);
}

PpPanel *
pp_progress_moved (const PpPanel *panel,
                   const char    *placement,
                   PpPose         pose,
                   GDateTime     *at,
                   GError       **error)
{
  g_return_val_if_fail (panel != NULL && placement != NULL && at != NULL, NULL);

  const char * const about[] = { placement, NULL };
  const PpPlacement *old = pp_panel_find_placement (panel, placement, NULL);

  if (old != NULL && old->glued_at == NULL)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, _("“%s” is not glued yet."),
                   placement);
      return NULL;
    }

  g_autoptr (PpPanel) there = pp_edit_set_pose (panel, placement, pose, error);

  if (there == NULL)
    return NULL;

  g_auto (PpAct) act = { 0 };

  pp_act_init (&act, there, at);
  pp_act_log (&act, act.at, PP_LOG_MOVED, about);

  return pp_panel_new (&act.panel, error);
}

char **
pp_progress_find_above (const PpPanel *panel,
                        const PpOrder *order,
                        const char    *job)
{
  g_return_val_if_fail (panel != NULL && is_of (order, panel) && job != NULL, NULL);

  const guint number = find_job (panel, order, job, NULL);
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();

  if (number == NO_JOB)
    return g_strv_builder_end (ids);

  g_autofree gboolean *follows = pp_order_find_followers (order, number);

  for (guint k = 0; k < order->n_jobs; k++)
    if (follows[k] && pp_job_is_done (panel, order->n_knots, k))
      {
        g_autofree char *id = pp_job_dup_id (panel, order->n_knots, k);

        g_strv_builder_add (ids, id);
      }

  return g_strv_builder_end (ids);
}
