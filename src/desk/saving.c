/* saving.c: panels written to their files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A GTask goes from step to step and ends each run: choose a file, ask whether another may be
 * replaced, write, and where that fails, choose again.
 */
#include "config.h"

#include "desk/saving.h"

#include "desk/ask.h"
#include "desk/file-state.h"
#include "desk/file-words.h"
#include "desk/last-folder.h"
#include "desk/opening.h"
#include "desk/panel-io.h"
#include "desk/settings.h"
#include "panel/i18n.h"

typedef struct
{
  PpDocument    *document;
  const PpPanel *panel;    /* that is being written */
  GFile         *file;
  gboolean       is_ours;  /* the document's own file: what stands in it is known */
} Saving;

static void
free_saving (gpointer data)
{
  Saving *self = data;

  g_object_unref (self->document);
  g_clear_pointer (&self->panel, pp_panel_unref);
  g_clear_object (&self->file);
  g_free (self);
}

static void
set_saving (PpWindow *window,
            gboolean  is_saving)
{
  GAction *save = g_action_map_lookup_action (G_ACTION_MAP (window), "save");
  GAction *elsewhere = g_action_map_lookup_action (G_ACTION_MAP (window), "save-as");
  gboolean enabled = !is_saving && pp_window_get_document (window) != NULL;

  pp_file_state_of (window)->is_saving = is_saving;
  g_simple_action_set_enabled (G_SIMPLE_ACTION (save), enabled);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (elsewhere), enabled);
}

/* Takes over `task`. */
static void
end (GTask    *task,
     gboolean  is_saved)
{
  PpWindow *window = g_task_get_source_object (task);
  PpFileState *state = pp_file_state_of (window);
  g_autoptr (GPtrArray) waiting = state->waiting;

  state->waiting = g_ptr_array_new_with_free_func (g_object_unref);
  set_saving (window, FALSE);
  g_task_return_boolean (task, is_saved);
  g_object_unref (task);
  for (guint i = 0; i < waiting->len; i++)
    g_task_return_boolean (g_ptr_array_index (waiting, i), TRUE);
}

static void choose (GTask *task);
static void write_panel (GTask *task);

static void
failed_asked_cb (int      answer,
                 gpointer data)
{
  if (answer == 1)
    choose (data);
  else
    end (data, FALSE);
}

static void
ask_after_failure (GTask      *task,
                   const char *sentence)
{
  const char * const buttons[] = { _("_Cancel"), _("Save _as…"), NULL };
  const PpAsk ask = { .question = sentence, .buttons = buttons, .losing = PP_ASK_NONE };

  pp_ask (g_task_get_source_object (task), &ask, failed_asked_cb, task);
}

static void
changed_asked_cb (int      answer,
                  gpointer data)
{
  GTask *task = data;
  Saving *self = g_task_get_task_data (task);

  if (answer == 1)
    {
      self->is_ours = FALSE;
      write_panel (task);
    }
  else if (answer == 2)
    choose (task);
  else
    end (task, FALSE);
}

static void
ask_about_change (GTask *task)
{
  Saving *self = g_task_get_task_data (task);
  g_autofree char *name = pp_file_name_show (self->file);
  g_autofree char *question = g_strdup_printf (_("“%s” was changed by another program. Save over "
                                                 "it?"), name);
  const char * const buttons[] = { _("_Cancel"), _("Save _over it"), _("Save _as…"), NULL };
  const PpAsk ask = {
    .question = question,
    .detail = _("Saved over, what the other program wrote is kept among the earlier saves. Saved "
                "under another name, both have a file."),
    .buttons = buttons,
    .losing = 1,
  };

  pp_ask (g_task_get_source_object (task), &ask, changed_asked_cb, task);
}

static void
tell_saved (PpWindow *window,
            GFile    *file)
{
  g_autofree char *name = pp_file_name_show (file);
  g_autofree char *folder = pp_file_folder_show (file);
  g_autofree char *sentence
      = g_strdup_printf (_("The panel is saved as “%s” in the folder “%s”."), name, folder);

  pp_window_tell (window, sentence);
}

static void
note_saved (PpWindow     *window,
            const Saving *self,
            const char   *content)
{
  gboolean was_gone = pp_watch_get_state (pp_file_state_of (window)->watch) == PP_WATCH_GONE;

  pp_document_set_saved (self->document, self->panel, self->file);
  if (pp_window_get_document (window) == self->document)
    pp_file_state_set (window, content);
  pp_opening_note (self->file);
  if (was_gone) /* so that what was told of it is not true any more */
    tell_saved (window, self->file);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  GTask *task = data;
  PpWindow *window = g_task_get_source_object (task);
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_saved = pp_panel_io_save_finish (result, &content, &error);

  if (is_saved)
    note_saved (window, g_task_get_task_data (task), content);
  pp_watch_release (pp_file_state_of (window)->watch);
  if (is_saved)
    end (task, TRUE);
  else if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_WRONG_ETAG))
    ask_about_change (task);
  else
    ask_after_failure (task, error->message);
}

static void
write_panel (GTask *task)
{
  PpWatch *watch = pp_file_state_of (g_task_get_source_object (task))->watch;
  Saving *self = g_task_get_task_data (task);
  g_autofree char *path = g_file_get_path (self->file);

  g_clear_pointer (&self->panel, pp_panel_unref);
  self->panel = pp_panel_ref (pp_document_get_panel (self->document));
  pp_watch_hold (watch);
  pp_panel_io_save_async (self->panel, path,
                          self->is_ours ? pp_watch_get_content (watch) : NULL, saved_cb, task);
}

static void
replace_asked_cb (int      answer,
                  gpointer data)
{
  if (answer == PP_ASK_REPLACE)
    write_panel (data);
  else
    choose (data);
}

static gboolean
is_elsewhere_open (PpWindow *window,
                   GFile    *file)
{
  PpWindow *other = pp_file_state_find (gtk_window_get_application (GTK_WINDOW (window)), file);

  return other != NULL && other != window;
}

/* (transfer full) */
static void
take_file (GTask *task,
           char  *typed)
{
  PpWindow *window = g_task_get_source_object (task);
  Saving *self = g_task_get_task_data (task);
  g_autofree char *old = typed;
  g_autofree char *path = pp_file_path_with_ending (typed, PP_PANEL_ENDING);
  GFile *ours = pp_document_get_file (self->document);

  g_clear_object (&self->file);
  self->file = g_file_new_for_path (path);
  self->is_ours = ours != NULL && g_file_equal (self->file, ours);
  if (is_elsewhere_open (window, self->file))
    ask_after_failure (task, _("That panel is open in another window: choose another name."));
  else if (!g_str_equal (path, old) && g_file_test (path, G_FILE_TEST_EXISTS))
    pp_ask_replace (GTK_WINDOW (window), path, replace_asked_cb, task);
  else
    write_panel (task);
}

static void
chosen_cb (GtkNativeDialog *dialog,
           int              response,
           GTask           *task)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  char *path = file != NULL ? g_file_get_path (file) : NULL;

  g_object_unref (dialog);
  if (response == GTK_RESPONSE_ACCEPT && path != NULL)
    {
      pp_last_folder_keep (PP_SETTINGS_PANEL_FOLDER, file);
      take_file (task, path);
      return;
    }
  g_free (path);
  if (response == GTK_RESPONSE_ACCEPT)
    ask_after_failure (task, _("A panel can only be saved to this computer: choose a folder "
                               "here."));
  else
    end (task, FALSE);
}

static void
suggest (GtkFileChooser *chooser,
         PpDocument     *document)
{
  GFile *file = pp_document_get_file (document);
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  g_autofree char *title = pp_document_dup_title (document);
  g_autofree char *name = pp_file_name_suggest (title, PP_PANEL_ENDING);

  if (folder != NULL)
    gtk_file_chooser_set_current_folder (chooser, folder, NULL);
  else
    pp_last_folder_offer (chooser, PP_SETTINGS_PANEL_FOLDER, NULL);
  gtk_file_chooser_set_current_name (chooser, name);
}

static void
choose (GTask *task)
{
  Saving *self = g_task_get_task_data (task);
  GtkFileChooserNative *dialog;

  dialog = gtk_file_chooser_native_new (_("Save the panel"), g_task_get_source_object (task),
                                        GTK_FILE_CHOOSER_ACTION_SAVE, _("_Save"), _("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  pp_opening_add_filters (GTK_FILE_CHOOSER (dialog));
  suggest (GTK_FILE_CHOOSER (dialog), self->document);
  g_signal_connect (dialog, "response", G_CALLBACK (chosen_cb), task);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
pp_saving_run_async (PpWindow            *window,
                     gboolean             elsewhere,
                     GAsyncReadyCallback  done,
                     gpointer             data)
{
  PpDocument *document = pp_window_get_document (window);
  GTask *task = g_task_new (window, NULL, done, data);
  GFile *file = pp_document_get_file (document);
  Saving *self = g_new0 (Saving, 1);

  self->document = g_object_ref (document);
  g_task_set_task_data (task, self, free_saving);
  set_saving (window, TRUE);
  if (elsewhere || file == NULL)
    {
      choose (task);
      return;
    }
  self->file = g_object_ref (file);
  self->is_ours = TRUE;
  write_panel (task);
}

gboolean
pp_saving_run_finish (GAsyncResult *result)
{
  return g_task_propagate_boolean (G_TASK (result), NULL);
}

void
pp_saving_wait_async (PpWindow            *window,
                      GAsyncReadyCallback  done,
                      gpointer             data)
{
  PpFileState *state = pp_file_state_of (window);
  GTask *task = g_task_new (window, NULL, done, data);

  if (state->is_saving)
    {
      g_ptr_array_add (state->waiting, task);
      return;
    }
  g_task_return_boolean (task, TRUE);
  g_object_unref (task);
}
