/* templating.c: what is done with the maker's own templates.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/templating.h"

#include "desk/ask.h"
#include "desk/file-words.h"
#include "desk/name-dialog.h"
#include "desk/own-templates.h"
#include "desk/typing.h"
#include "panel/i18n.h"

/* Where a sentence says that a name cannot be had, the dialog stays. */
static gboolean
finish (PpNameDialog *dialog,
        gboolean      is_done,
        GError       *error)
{
  if (!is_done)
    pp_name_dialog_refuse (dialog, error->message);
  g_clear_error (&error);
  return is_done;
}

static gboolean
kept_cb (PpNameDialog *dialog,
         const char   *name,
         PpWindow     *window)
{
  const PpPanel *panel = pp_document_get_panel (pp_window_get_document (window));
  g_autofree char *sentence = NULL;
  GError *error = NULL;
  gboolean is_kept = pp_own_templates_keep (panel, name, &error);

  if (is_kept)
    {
      sentence = g_strdup_printf (_("“%s” is kept as a template. It stands on the first page, "
                                    "where new panels begin."), name);
      pp_window_tell (window, sentence);
    }
  return finish (dialog, is_kept, error);
}

static void
keep_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       window)
{
  PpNameDialog *dialog;
  g_autofree char *title = NULL;

  pp_typing_finish (window);
  title = pp_document_dup_title (pp_window_get_document (window));
  dialog = pp_name_dialog_new (window, _("Keep as a template"),
                               _("New panels can begin as this one is now: its glass, its tray and "
                                 "all that lies on it. Nothing on them is glued yet."), title,
                               _("_Keep it"));
  g_signal_connect_object (dialog, "named", G_CALLBACK (kept_cb), window, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
pp_templating_add (PpWindow *window)
{
  static const GActionEntry entries[] = { { "keep-template", keep_cb } };

  g_return_if_fail (PP_IS_WINDOW (window));

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  pp_window_tie_to_document (window, "keep-template");
}

static gboolean
renamed_cb (PpNameDialog *dialog,
            const char   *name,
            GFile        *file)
{
  GError *error = NULL;
  gboolean is_renamed = pp_own_templates_rename (file, name, &error);

  return finish (dialog, is_renamed, error);
}

void
pp_templating_rename (PpWindow *window,
                      GFile    *file)
{
  g_autofree char *name = NULL;
  PpNameDialog *dialog;

  g_return_if_fail (PP_IS_WINDOW (window) && G_IS_FILE (file));

  name = pp_file_name_show_bare (file);
  dialog = pp_name_dialog_new (GTK_WINDOW (window), _("Rename the template"),
                               _("Panels that were begun from it keep their own names."), name,
                               _("_Rename"));
  g_signal_connect_data (dialog, "named", G_CALLBACK (renamed_cb), g_object_ref (file),
                         (GClosureNotify) (GCallback) g_object_unref, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

typedef struct
{
  PpWindow *window;
  GFile    *file;
} PuttingAway;

static void
putting_away_free (PuttingAway *self)
{
  g_object_unref (self->window);
  g_object_unref (self->file);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PuttingAway, putting_away_free)

static void
for_good_cb (int      answer,
             gpointer data)
{
  g_autoptr (PuttingAway) self = data;
  g_autoptr (GError) error = NULL;

  if (answer == 0 && !pp_own_templates_delete (self->file, &error))
    pp_ask_tell (GTK_WINDOW (self->window), error->message);
}

/* (transfer full) `self` */
static void
ask_for_good (PuttingAway *self)
{
  const char * const buttons[] = { _("_Delete it"), _("_Leave it"), NULL };
  g_autofree char *name = pp_file_name_show_bare (self->file);
  g_autofree char *question = g_strdup_printf (_("Delete the template “%s” for good?"), name);
  const PpAsk ask = { .question = question, .buttons = buttons, .losing = 0,
                      .detail = _("Its folder has no wastebasket, so it cannot be brought back.") };

  pp_ask (GTK_WINDOW (self->window), &ask, for_good_cb, self);
}

static void
answered_cb (int      answer,
             gpointer data)
{
  g_autoptr (PuttingAway) self = data;

  if (answer == 0 && !pp_own_templates_put_away (self->file))
    ask_for_good (g_steal_pointer (&self));
}

void
pp_templating_put_away (PpWindow *window,
                        GFile    *file)
{
  const char * const buttons[] = { _("_Put it away"), _("_Leave it"), NULL };
  PpAsk ask = { .buttons = buttons, .losing = 0 };
  g_autofree char *name = NULL;
  g_autofree char *question = NULL;
  PuttingAway *self;

  g_return_if_fail (PP_IS_WINDOW (window) && G_IS_FILE (file));

  name = pp_file_name_show_bare (file);
  question = g_strdup_printf (_("Put the template “%s” away?"), name);
  ask.question = question;
  ask.detail = _("Panels that were begun from it stay as they are.");
  self = g_new (PuttingAway, 1);
  *self = (PuttingAway) { g_object_ref (window), g_object_ref (file) };
  pp_ask (GTK_WINDOW (window), &ask, answered_cb, self);
}
