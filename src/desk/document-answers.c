/* document-answers.c: what is said of the panel in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It comes from three values that arrive one after another: the check, the plan of that check, and
 * what the art was judged to be; the findings shown are all of theirs.
 */
#include "config.h"

#include "desk/document-private.h"
#include "desk/nagging.h"
#include "sheet/left-out.h"

static void
sort_out (PpDocument *self,
          GPtrArray  *findings)
{
  for (guint i = 0; findings != NULL && i < findings->len; i++)
    {
      PpFinding *finding = g_ptr_array_index (findings, i);

      if (finding->quiet)
        g_ptr_array_add (self->known, finding);
      else if (!pp_finding_waits (finding, pp_document_get_panel (self)))
        g_ptr_array_add (self->findings, finding);
    }
}

static void
gather_findings (PpDocument *self)
{
  g_ptr_array_set_size (self->findings, 0);
  g_ptr_array_set_size (self->known, 0);
  if (self->check != NULL)
    sort_out (self, self->check->findings);
  if (self->plan != NULL)
    sort_out (self, self->plan->findings);
  sort_out (self, self->left_out);
  g_ptr_array_sort (self->findings, pp_finding_compare);
  g_ptr_array_sort (self->known, pp_finding_compare);
}

static void
checked_cb (PpChecker     *checker,
            const PpCheck *check,
            PpDocument    *self)
{
  g_ptr_array_set_size (self->findings, 0);
  g_ptr_array_set_size (self->known, 0);
  g_hash_table_remove_all (self->rests);
  g_clear_pointer (&self->check, pp_check_unref);
  self->check = pp_check_ref (check);
  for (guint i = 0; i < check->n; i++)
    g_hash_table_insert (self->rests, (char *) pp_panel_placement (check->panel, i)->id,
                         check->rests[i]);
  gather_findings (self);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHECKED], 0);
}

static void
planned_cb (PpChecker    *checker,
            const PpPlan *plan,
            PpDocument   *self)
{
  if (plan->check != self->check)
    return;
  g_ptr_array_set_size (self->findings, 0);
  g_ptr_array_set_size (self->known, 0);
  g_clear_pointer (&self->plan, pp_plan_unref);
  self->plan = pp_plan_ref (plan);
  gather_findings (self);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHECKED], 0);
}

/* What goes to the thread that judges the art. */
typedef struct
{
  const PpPanel *panel;
  PpGallery     *previous; /* nullable */
} Judging;

static void
free_judging (gpointer data)
{
  Judging *judging = data;

  pp_panel_unref (judging->panel);
  pp_gallery_unref (judging->previous);
  g_free (judging);
}

static void
judge_in_thread (GTask        *task,
                 gpointer      source,
                 gpointer      data,
                 GCancellable *cancellable)
{
  const Judging *judging = data;

  g_task_return_pointer (task, pp_gallery_new (judging->panel, judging->previous),
                         (GDestroyNotify) pp_gallery_unref);
}

static void
judged_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (PpDocument) self = data;
  g_autoptr (PpGallery) gallery = g_task_propagate_pointer (G_TASK (result), NULL);
  const Judging *judging = g_task_get_task_data (G_TASK (result));

  if (gallery == NULL || self->checker == NULL)
    return;
  pp_document_set_gallery (self, gallery);
  if (judging->panel->tray != pp_document_get_panel (self)->tray)
    pp_document_judge_art (self);
}

/* The document is not the task's source, for the last of a task may go in its thread. */
void
pp_document_judge_art (PpDocument *self)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, judged_cb, g_object_ref (self));
  Judging *judging = g_new0 (Judging, 1);

  judging->panel = pp_panel_ref (pp_document_get_panel (self));
  judging->previous = self->gallery != NULL ? pp_gallery_ref (self->gallery) : NULL;
  g_task_set_task_data (task, judging, free_judging);
  g_task_run_in_thread (task, judge_in_thread);
}

void
pp_document_answers_init (PpDocument *self)
{
  self->findings = g_ptr_array_new ();
  self->known = g_ptr_array_new ();
  self->rests = g_hash_table_new (g_str_hash, g_str_equal);
  self->checker = pp_checker_new ();
  g_signal_connect (self->checker, "checked", G_CALLBACK (checked_cb), self);
  g_signal_connect (self->checker, "planned", G_CALLBACK (planned_cb), self);
}

void
pp_document_answers_stop (PpDocument *self)
{
  if (self->checker != NULL)
    {
      pp_checker_stop (self->checker);
      g_signal_handlers_disconnect_by_data (self->checker, self);
    }
  g_clear_object (&self->checker);
}

void
pp_document_answers_clear (PpDocument *self)
{
  g_clear_pointer (&self->findings, g_ptr_array_unref);
  g_clear_pointer (&self->known, g_ptr_array_unref);
  g_clear_pointer (&self->left_out, g_ptr_array_unref);
  g_clear_pointer (&self->rests, g_hash_table_unref);
  g_clear_pointer (&self->plan, pp_plan_unref);
  g_clear_pointer (&self->check, pp_check_unref);
  g_clear_pointer (&self->gallery, pp_gallery_unref);
}

PpGallery *
pp_document_get_gallery (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->gallery;
}

void
pp_document_set_gallery (PpDocument *self,
                         PpGallery  *gallery)
{
  g_return_if_fail (PP_IS_DOCUMENT (self) && gallery != NULL);

  g_ptr_array_set_size (self->findings, 0);
  g_ptr_array_set_size (self->known, 0);
  g_clear_pointer (&self->left_out, g_ptr_array_unref);
  pp_gallery_ref (gallery);
  g_clear_pointer (&self->gallery, pp_gallery_unref);
  self->gallery = gallery;
  self->left_out = pp_left_out_findings (pp_document_get_panel (self), gallery);
  gather_findings (self);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_DRAWN], 0);
  if (self->check != NULL)
    g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHECKED], 0);
}

const PpCheck *
pp_document_get_check (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->check;
}

const PpPlan *
pp_document_get_plan (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->plan != NULL && self->plan->check == self->check ? self->plan : NULL;
}

double
pp_document_get_planning (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), (double) NAN);
  return pp_checker_get_planning (self->checker);
}

void
pp_document_stop_planning (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  pp_checker_end_planning (self->checker);
}

GPtrArray *
pp_document_get_findings (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->findings;
}

GPtrArray *
pp_document_get_known (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->known;
}

const PpRest *
pp_document_get_rest (PpDocument *self,
                      const char *placement)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self) && placement != NULL, NULL);
  return g_hash_table_lookup (self->rests, placement);
}

double
pp_document_get_top (PpDocument *self,
                     const char *placement)
{
  const PpRest *rest = pp_document_get_rest (self, placement);

  return rest == NULL || rest->state == PP_STATE_FLOATS ? (double) NAN : rest->top;
}

double
pp_document_get_base (PpDocument *self,
                      const char *placement)
{
  const PpRest *rest = pp_document_get_rest (self, placement);

  return rest == NULL || rest->state == PP_STATE_FLOATS ? (double) NAN : rest->base;
}

gboolean
pp_document_is_checked (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), FALSE);
  return self->check != NULL && self->check->panel == pp_document_get_panel (self);
}
