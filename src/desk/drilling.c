/* drilling.c: the action that proposes where to drill.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What it finds is shown before it is done, and is then one edit.
 */
#include "config.h"

#include "desk/drilling.h"

#include "advise/drill.h"
#include "desk/advice-dialog.h"
#include "desk/advice-search.h"
#include "panel/i18n.h"

/* NULL where there is no such pair of holes, or nobody waits for it. */
static PpAdvice *
find (const PpPanel *panel,
      PpWork        *work,
      gconstpointer  data)
{
  GCancellable *stop = pp_work_get_cancellable (work);
  g_autoptr (PpCheck) check = pp_check_new (panel, NULL, stop, pp_work_report, work, NULL);
  g_autoptr (PpPanel) better = check != NULL ? pp_drill_new (check, stop) : NULL;

  if (better == NULL || g_cancellable_is_cancelled (stop))
    return NULL;
  return pp_advice_new (panel, better);
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
show (PpWindow *window,
      PpAdvice *advice)
{
  PpGallery *gallery = pp_document_get_gallery (pp_window_get_document (window));
  PpAdviceDialog *dialog = pp_advice_dialog_new (GTK_WINDOW (window), advice, gallery);

  pp_advice_dialog_set_words (dialog, _("Where to drill"),
                              _("The safest pair of holes that this layout hides."));
  g_signal_connect_object (dialog, "accepted", G_CALLBACK (accepted_cb), window, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
tell (PpWindow      *window,
      PpAdvice      *found,
      gboolean       is_stopped,
      gconstpointer  data)
{
  g_autoptr (PpAdvice) advice = found;

  if (is_stopped)
    pp_window_tell (window, _("Stopped: nothing was changed."));
  else if (advice == NULL)
    pp_window_tell (window, _("No pair of holes was found that is safe to drill here. Move pieces "
                              "so that they cover more of the upper glass, and ask again."));
  else if (!advice->changed)
    pp_window_tell (window, _("The holes are at the best places already."));
  else
    show (window, g_steal_pointer (&advice));
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
                   gpointer       window)
{
  const PpAdviceSearch search = {
    .doing = _("Looking for the safest holes that this layout hides."),
    .outdated = _("The panel was changed meanwhile. Nothing was moved."),
    .find = find, .done = tell,
  };

  pp_advice_search_run (window, &search);
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
