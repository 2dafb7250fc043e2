/* opening.c: panels opened from their files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading goes on in a thread, and meanwhile windows come and go: where the panel is shown is
 * decided when it is there.
 */
#include "config.h"

#include "desk/opening.h"

#include "desk/ask.h"
#include "desk/clock.h"
#include "desk/file-state.h"
#include "desk/file-words.h"
#include "desk/last-folder.h"
#include "desk/panel-io.h"
#include "desk/settings.h"
#include "panel/i18n.h"

typedef struct
{
  PpWindow       *window;
  GtkApplication *application;
  GFile          *file;
  gboolean        as_copy;
} Opening;

static void
free_opening (Opening *self)
{
  g_application_release (G_APPLICATION (self->application));
  g_object_unref (self->window);
  g_object_unref (self->application);
  g_object_unref (self->file);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Opening, free_opening)

/* Shows the start page, or a panel just begun that nobody touched. */
static gboolean
is_free (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);

  if (document == NULL)
    return TRUE;
  return pp_document_get_file (document) == NULL && pp_document_is_saved (document)
         && pp_document_get_undo (document) == NULL && pp_document_get_redo (document) == NULL;
}

static PpWindow *
find_place (PpWindow       *window,
            GtkApplication *application)
{
  if (!pp_file_state_is_alive (window) || !is_free (window))
    window = pp_window_new (application);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

/* A copy is a panel of its own, which begins today. (transfer full) */
static PpPanel *
date (const PpPanel *panel)
{
  g_autofree char *today = pp_clock_today ();
  PpPanel draft = *panel;

  draft.created = today;
  return pp_panel_new (&draft, NULL);
}

static void
show_loaded (Opening       *self,
             const PpPanel *panel,
             const char    *content)
{
  PpWindow *window = find_place (self->window, self->application);
  g_autoptr (PpPanel) copy = self->as_copy ? date (panel) : NULL;
  g_autoptr (PpDocument) document
      = pp_document_new (copy != NULL ? copy : panel, self->as_copy ? NULL : self->file);

  pp_window_set_document (window, document);
  pp_file_state_set (window, content);
  if (!self->as_copy)
    pp_opening_note (self->file);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (Opening) self = data;
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_panel_io_load_finish (result, &content, &error);
  PpWindow *window, *other;

  if (gtk_application_get_windows (self->application) == NULL) /* closed or quit meanwhile */
    return;
  other = self->as_copy ? NULL : pp_file_state_find (self->application, self->file);
  if (other != NULL) /* two asked for it at once */
    {
      gtk_window_present (GTK_WINDOW (other));
      return;
    }
  if (panel == NULL)
    {
      window = pp_file_state_is_alive (self->window) ? self->window
                                                     : find_place (self->window, self->application);
      pp_ask_tell (GTK_WINDOW (window), error->message);
      return;
    }
  show_loaded (self, panel, content);
}

PpWindow *
pp_opening_show_unsaved (PpWindow      *window,
                         const PpPanel *panel)
{
  g_autoptr (PpDocument) document = pp_document_new (panel, NULL);
  PpWindow *place = find_place (window, gtk_window_get_application (GTK_WINDOW (window)));

  pp_window_set_document (place, document);
  pp_document_set_lost (document); /* the journal of the window hears of it, and writes it down */
  return place;
}

char *
pp_opening_find_path (PpWindow *window,
                      GFile    *file)
{
  char *path = g_file_get_path (file);

  if (path == NULL)
    pp_ask_tell (GTK_WINDOW (window), _("Only files on this computer can be opened: copy the file "
                                        "to a folder here first."));
  return path;
}

void
pp_opening_open (PpWindow *window,
                 GFile    *file,
                 gboolean  as_copy)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (window));
  g_autofree char *path = NULL;
  PpWindow *other = as_copy ? NULL : pp_file_state_find (application, file);
  Opening *self;

  if (other != NULL)
    {
      gtk_window_present (GTK_WINDOW (other));
      return;
    }
  path = pp_opening_find_path (window, file);
  if (path == NULL)
    return;
  self = g_new0 (Opening, 1);
  *self = (Opening) { g_object_ref (window), g_object_ref (application), g_object_ref (file),
                      as_copy };
  g_application_hold (G_APPLICATION (application));
  pp_panel_io_load_async (path, loaded_cb, self);
}

static void
chosen_cb (GtkNativeDialog *dialog,
           int              response,
           PpWindow        *window)
{
  g_autoptr (GListModel) files = NULL;

  if (response == GTK_RESPONSE_ACCEPT && pp_file_state_is_alive (window))
    files = gtk_file_chooser_get_files (GTK_FILE_CHOOSER (dialog));
  for (guint i = 0; files != NULL && i < g_list_model_get_n_items (files); i++)
    {
      g_autoptr (GFile) file = g_list_model_get_item (files, i);

      pp_last_folder_keep (PP_SETTINGS_PANEL_FOLDER, file);
      pp_opening_open (window, file, FALSE);
    }
  g_object_unref (dialog);
}

void
pp_opening_add_filters (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) panels = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();

  gtk_file_filter_set_name (panels, _("Panels"));
  gtk_file_filter_add_suffix (panels, PP_PANEL_ENDING + 1);
  gtk_file_chooser_add_filter (chooser, panels);
  gtk_file_filter_set_name (all, _("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, all);
}

void
pp_opening_choose (PpWindow *window)
{
  GtkFileChooserNative *dialog;
  GtkFileChooser *chooser;

  dialog = gtk_file_chooser_native_new (_("Open a panel"), GTK_WINDOW (window),
                                        GTK_FILE_CHOOSER_ACTION_OPEN, _("_Open"), _("_Cancel"));
  chooser = GTK_FILE_CHOOSER (dialog);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  gtk_file_chooser_set_select_multiple (chooser, TRUE);
  pp_opening_add_filters (chooser);
  pp_last_folder_offer (chooser, PP_SETTINGS_PANEL_FOLDER, NULL);
  g_signal_connect_object (dialog, "response", G_CALLBACK (chosen_cb), window, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

/* The system keeps the list; it wants to know the kind of file and how to open it again. */
void
pp_opening_note (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = {
    .mime_type = (char *) PP_PANEL_MEDIA_TYPE,
    .app_name = (char *) "Petalpane",
    .app_exec = (char *) "petalpane %f",
  };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}
