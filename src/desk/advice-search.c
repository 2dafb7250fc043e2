/* advice-search.c: a search for a better panel, behind a dialog that can stop it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/advice-search.h"

#include "desk/file-state.h"
#include "desk/work-dialog.h"

/* The main thread's, but for what the search is given: panel, work and its data. */
typedef struct
{
  PpAdviceSearch  search;
  PpWindow       *window;
  PpWorkDialog   *dialog;
  PpWork         *work;
  const PpPanel  *panel;
} Job;

static void
job_free (Job *self)
{
  gtk_window_destroy (GTK_WINDOW (self->dialog));
  pp_work_unref (self->work);
  pp_panel_unref (self->panel);
  if (self->search.free_data != NULL)
    self->search.free_data (self->search.data);
  g_object_unref (self->window);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Job, job_free)

static void
search_in_thread (GTask        *task,
                  gpointer      source,
                  gpointer      data,
                  GCancellable *cancellable)
{
  const Job *self = data;

  g_task_return_pointer (task, self->search.find (self->panel, self->work, self->search.data),
                         (GDestroyNotify) pp_advice_free);
}

static void
searched_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  g_autoptr (Job) self = data;
  g_autoptr (PpAdvice) advice = g_task_propagate_pointer (G_TASK (result), NULL);
  PpDocument *document;

  if (!pp_file_state_is_alive (self->window))
    return;
  document = pp_window_get_document (self->window);
  if (document == NULL || pp_document_get_panel (document) != self->panel)
    pp_window_tell (self->window, self->search.outdated);
  else
    self->search.done (self->window, g_steal_pointer (&advice),
                       g_cancellable_is_cancelled (pp_work_get_cancellable (self->work)),
                       self->search.data);
}

void
pp_advice_search_run (PpWindow             *window,
                      const PpAdviceSearch *search)
{
  Job *self = g_new0 (Job, 1);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, searched_cb, self);

  self->search = *search;
  self->window = g_object_ref (window);
  self->work = pp_work_new ();
  self->panel = pp_panel_ref (pp_document_get_panel (pp_window_get_document (window)));
  self->dialog = pp_work_dialog_new (GTK_WINDOW (window), search->doing, self->work);
  g_task_set_task_data (task, self, NULL);
  g_task_run_in_thread (task, search_in_thread);
}
