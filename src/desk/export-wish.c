/* export-wish.c: where the files of an export are to go.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/export-wish.h"

#include "desk/ask.h"
#include "desk/file-state.h"
#include "desk/file-words.h"
#include "desk/last-folder.h"
#include "desk/settings.h"
#include "panel/i18n.h"

/* What is wanted, until a place for it is chosen. */
typedef struct
{
  PpWindow   *window;
  PpExport    export;
  const char *ending;    /* of the one file */
  gboolean    is_folder;
} Wish;

static void
free_wish (Wish *self)
{
  if (self->export.free_data != NULL)
    self->export.free_data (self->export.data);
  g_object_unref (self->window);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Wish, free_wish)

static void
run (Wish  *self,
     GFile *target)
{
  pp_export_job_run (self->window, &self->export, target, self->is_folder);
  self->export.free_data = NULL;
}

typedef struct
{
  Wish  *wish;
  GFile *target;
} Replacing;

static void
replace_asked_cb (int      answer,
                  gpointer data)
{
  Replacing *self = data;

  if (answer == PP_ASK_REPLACE)
    run (self->wish, self->target);
  free_wish (self->wish);
  g_object_unref (self->target);
  g_free (self);
}

static void
ask_replace (Wish  *wish,
             GFile *target)
{
  Replacing *self = g_new (Replacing, 1);

  *self = (Replacing) { wish, g_object_ref (target) };
  pp_ask_replace (GTK_WINDOW (wish->window), g_file_peek_path (target), replace_asked_cb, self);
}

static void
take_path (Wish       *wish,
           const char *path)
{
  g_autoptr (Wish) self = wish;
  g_autofree char *whole = self->is_folder ? g_strdup (path)
                                           : pp_file_path_with_ending (path, self->ending);
  g_autoptr (GFile) target = g_file_new_for_path (whole);

  pp_last_folder_keep (PP_SETTINGS_EXPORT_FOLDER, target);
  if (!g_str_equal (path, whole) && g_file_test (whole, G_FILE_TEST_EXISTS))
    ask_replace (g_steal_pointer (&self), target);
  else
    run (self, target);
}

static void
chosen_cb (GtkNativeDialog *dialog,
           int              response,
           gpointer         data)
{
  g_autoptr (Wish) self = data;
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  g_object_unref (dialog);
  if (response != GTK_RESPONSE_ACCEPT || !pp_file_state_is_alive (self->window))
    return;
  if (path == NULL)
    pp_ask_tell (GTK_WINDOW (self->window), _("Files can only be written to this computer: choose "
                                              "a folder here."));
  else
    take_path (g_steal_pointer (&self), path);
}

static char *
suggest (const Wish *self,
         const char *suffix)
{
  g_autofree char *title = pp_document_dup_title (pp_window_get_document (self->window));
  g_autofree char *words = g_strconcat (title, " ", suffix, NULL);

  return pp_file_name_suggest (words, self->ending);
}

static void
choose (Wish       *self,
        const char *title,
        const char *suffix)
{
  GFile *file = pp_document_get_file (pp_window_get_document (self->window));
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  g_autofree char *name = self->is_folder ? NULL : suggest (self, suffix);
  GtkFileChooserAction action = self->is_folder ? GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER
                                                : GTK_FILE_CHOOSER_ACTION_SAVE;
  GtkFileChooserNative *dialog;

  dialog = gtk_file_chooser_native_new (title, GTK_WINDOW (self->window), action, _("_Export"),
                                        _("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  pp_last_folder_offer (GTK_FILE_CHOOSER (dialog), PP_SETTINGS_EXPORT_FOLDER, folder);
  if (name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  g_signal_connect (dialog, "response", G_CALLBACK (chosen_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
pp_export_wish_file (PpWindow       *window,
                     const PpExport *export,
                     const char     *title,
                     const char     *suffix,
                     const char     *ending)
{
  Wish *self = g_new0 (Wish, 1);

  *self = (Wish) { g_object_ref (window), *export, ending, FALSE };
  choose (self, title, suffix);
}

void
pp_export_wish_folder (PpWindow       *window,
                       const PpExport *export,
                       const char     *title)
{
  Wish *self = g_new0 (Wish, 1);

  *self = (Wish) { g_object_ref (window), *export, NULL, TRUE };
  choose (self, title, NULL);
}
