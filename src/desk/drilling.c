/* drilling.c: the action that proposes where to drill.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What it finds is shown before it is done, and is then one edit.
 */
#include "config.h"

#include "desk/drilling.h"

#include "advise/advise.h"
#include "advise/drill.h"
#include "desk/advice-dialog.h"
#include "desk/file-state.h"
#include "desk/work-dialog.h"
#include "panel/i18n.h"

/* The main thread's, but for panel and work. */
typedef struct
{
  PpWindow      *window;
  PpWorkDialog  *dialog;
  PpWork        *work;
  const PpPanel *panel;
} Job;

static void
job_free (Job *self)
{
  gtk_window_destroy (GTK_WINDOW (self->dialog));
  pp_work_unref (self->work);
  pp_panel_unref (self->panel);
  g_object_unref (self->window);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Job, job_free)

/* NULL where there is no such pair of holes, or nobody waits for it. */
static void
search_in_thread (GTask        *task,
                  gpointer      source,
                  gpointer      data,
                  GCancellable *cancellable)
{
  const Job *self = data;
  GCancellable *stop = pp_work_get_cancellable (self->work);
  g_autoptr (PpCheck) check = pp_check_new (self->panel, NULL, stop, pp_work_report, self->work,
                                            NULL);
  g_autoptr (PpPanel) better = check != NULL ? pp_drill_new (check, stop) : NULL;

  g_task_return_pointer (task, better != NULL && !g_cancellable_is_cancelled (stop)
                                 ? pp_advice_new (self->panel, better)
                                 : NULL,
                         (GDestroyNotify) pp_advice_free);
}

static void
accepted_cb (PpAdviceDialog *dialog,
             PpWindow       *window)
{
  const PpAdvice *advice = pp_advice_dialog_get_advice (dialog);

  pp_document_take (pp_window_get_document (window), pp_panel_ref (advice->panel), NULL,
                    _("Where to drill"), NULL);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* Takes over `advice`. */
static void
show (const Job *self,
      PpAdvice  *advice)
{
  PpGallery *gallery = pp_document_get_gallery (pp_window_get_document (self->window));
  PpAdviceDialog *dialog = pp_advice_dialog_new (GTK_WINDOW (self->window), advice, gallery);

  pp_advice_dialog_set_words (dialog, _("Where to drill"),
                              _("The safest pair of holes that this layout hides."));
  g_signal_connect_object (dialog, "accepted", G_CALLBACK (accepted_cb), self->window, 0);
  gtk_window_present (GTK_WINDOW (dialog));
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
    pp_window_tell (self->window, _("The panel was changed meanwhile. Nothing was moved."));
  else if (g_cancellable_is_cancelled (pp_work_get_cancellable (self->work)))
    pp_window_tell (self->window, _("Stopped: nothing was changed."));
  else if (advice == NULL)
    pp_window_tell (self->window, _("No pair of holes was found that is safe to drill here. Move "
                                    "pieces so that they cover more of the upper glass, and ask "
                                    "again."));
  else if (!advice->changed)
    pp_window_tell (self->window, _("The holes are at the best places already."));
  else
    show (self, g_steal_pointer (&advice));
}

static gboolean
can_drill (PpDocument *document)
{
  const PpPanel *panel = document != NULL ? pp_document_get_panel (document) : NULL;

  return panel != NULL && panel->wire != NULL && panel->wire->knotted_at == NULL
         && !(pp_panel_find_hole (panel, panel->wire->from, NULL)->drilled
              && pp_panel_find_hole (panel, panel->wire->to, NULL)->drilled);
}

static void
where_to_drill_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  PpWindow *window = data;
  Job *self = g_new0 (Job, 1);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, searched_cb, self);

  self->window = g_object_ref (window);
  self->work = pp_work_new ();
  self->panel = pp_panel_ref (pp_document_get_panel (pp_window_get_document (window)));
  self->dialog = pp_work_dialog_new (GTK_WINDOW (window),
                                     _("Looking for the safest holes that this layout hides."),
                                     self->work);
  g_task_set_task_data (task, self, NULL);
  g_task_run_in_thread (task, search_in_thread);
}

static void
update (PpWindow *window)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), "where-to-drill");

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action),
                               can_drill (pp_window_get_document (window)));
}

static void
changed_cb (PpDocument *document,
            PpWindow   *window)
{
  update (window);
}

static void
document_cb (PpWindow   *window,
             GParamSpec *pspec,
             gpointer    data)
{
  update (window);
}

void
pp_drilling_add (PpWindow *window)
{
  static const GActionEntry entries[] = { { "where-to-drill", where_to_drill_cb } };
  GSignalGroup *signals = g_signal_group_new (PP_TYPE_DOCUMENT);

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  g_signal_group_connect (signals, "changed", G_CALLBACK (changed_cb), window);
  g_object_bind_property (window, "document", signals, "target", G_BINDING_SYNC_CREATE);
  g_object_set_data_full (G_OBJECT (window), "pp-drilling-signals", signals, g_object_unref);
  g_signal_connect (window, "notify::document", G_CALLBACK (document_cb), NULL);
  update (window);
}
