/* export-job.c: an export as it goes on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/export-job.h"

#include "desk/ask.h"
#include "desk/file-state.h"
#include "desk/file-words.h"
#include "desk/work-dialog.h"
#include "file/save.h"
#include "panel/i18n.h"

/* The main thread's, but for what `draw` and the writing are given. */
typedef struct
{
  PpWindow       *window;
  PpWorkDialog   *dialog;
  PpWork         *work;
  const PpPanel  *panel;
  PpExport        export;
  char           *target;
  gboolean        is_folder;
  GPtrArray      *files;
} Job;

static void
free_job (Job *self)
{
  if (self->dialog != NULL)
    gtk_window_destroy (GTK_WINDOW (self->dialog));
  if (self->export.free_data != NULL)
    self->export.free_data (self->export.data);
  g_clear_pointer (&self->files, g_ptr_array_unref);
  pp_panel_unref (self->panel);
  pp_work_unref (self->work);
  g_object_unref (self->window);
  g_free (self->target);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Job, free_job)

static void
hide_dialog (Job *self)
{
  gtk_window_destroy (GTK_WINDOW (g_steal_pointer (&self->dialog)));
}

static void
tell_done (const Job *self)
{
  g_autoptr (GFile) target = g_file_new_for_path (self->target);
  g_autofree char *name = pp_file_name_show (target);
  g_autofree char *folder = pp_file_folder_show (target);
  g_autofree char *sentence = self->is_folder ? self->export.tell (NULL, name)
                                               : self->export.tell (name, folder);

  pp_window_tell (self->window, sentence);
}

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  g_autoptr (Job) self = data;
  g_autoptr (GError) error = NULL;

  hide_dialog (self);
  g_application_release (g_application_get_default ());
  g_task_propagate_boolean (G_TASK (result), &error);
  if (!pp_file_state_is_alive (self->window))
    return;
  if (error != NULL)
    pp_ask_tell (GTK_WINDOW (self->window), error->message);
  else
    tell_done (self);
}

static char *
path_of (const Job         *self,
         const PpSheetFile *file)
{
  return self->is_folder ? g_build_filename (self->target, file->name, NULL)
                         : g_strdup (self->target);
}

static gboolean
write_one (const Job         *self,
           const PpSheetFile *file,
           GError           **error)
{
  g_autofree char *path = path_of (self, file);
  gsize length;
  const char *bytes = g_bytes_get_data (file->bytes, &length);

  return pp_file_save (path, bytes, length, error);
}

static void
write_in_thread (GTask        *task,
                 gpointer      source,
                 gpointer      data,
                 GCancellable *cancellable)
{
  const Job *self = data;
  GError *error = NULL;
  guint n = self->files->len;

  for (guint i = 0; error == NULL && i < n; i++)
    if (g_cancellable_is_cancelled (pp_work_get_cancellable (self->work)))
      g_set_error (&error, G_IO_ERROR, G_IO_ERROR_CANCELLED,
                   ngettext ("Stopped: %u of %u file was written.",
                             "Stopped: %u of %u files were written.", n), i, n);
    else if (write_one (self, g_ptr_array_index (self->files, i), &error))
      pp_work_report ((i + 1.0) / n, self->work);
  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_boolean (task, TRUE);
}

/* The program stays until all is written, though the last window be closed: half a set of sheets
 * looks like a whole one. */
static void
write_files (Job *self)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, written_cb, self);

  g_application_hold (g_application_get_default ());
  pp_work_set_part (self->work, 0, 1);
  self->dialog = pp_work_dialog_new (GTK_WINDOW (self->window), _("The files are being written."),
                                     self->work);
  g_task_set_task_data (task, self, NULL);
  g_task_run_in_thread (task, write_in_thread);
}

static void
replace_asked_cb (int      answer,
                  gpointer data)
{
  if (answer == 1)
    write_files (data);
  else
    free_job (data);
}

static guint
count_there (const Job *self)
{
  guint n = 0;

  for (guint i = 0; self->is_folder && i < self->files->len; i++)
    {
      g_autofree char *path = path_of (self, g_ptr_array_index (self->files, i));

      n += g_file_test (path, G_FILE_TEST_EXISTS) ? 1 : 0;
    }
  return n;
}

static void
ask_replace (Job   *self,
             guint  n)
{
  g_autofree char *folder = g_filename_display_basename (self->target);
  g_autofree char *question
      = g_strdup_printf (ngettext ("%u file of that name is in “%s” already. Replace it?",
                                   "%u files of those names are in “%s” already. Replace them?",
                                   n), n, folder);
  const char * const buttons[] = { _("_Cancel"), _("_Replace"), NULL };
  const PpAsk ask = { .question = question, .buttons = buttons, .losing = 1 };

  pp_ask (GTK_WINDOW (self->window), &ask, replace_asked_cb, self);
}

static void
drawn_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (Job) self = data;
  g_autoptr (GError) error = NULL;
  guint n;

  hide_dialog (self);
  self->files = g_task_propagate_pointer (G_TASK (result), &error);
  if (!pp_file_state_is_alive (self->window))
    return;
  if (self->files == NULL)
    {
      if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        pp_ask_tell (GTK_WINDOW (self->window), error->message);
      return;
    }
  n = count_there (self);
  if (n > 0)
    ask_replace (g_steal_pointer (&self), n);
  else
    write_files (g_steal_pointer (&self));
}

static void
draw_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  const Job *self = data;
  GError *error = NULL;
  GPtrArray *files = self->export.draw (self->panel, self->export.data, self->work, &error);

  /* drawing itself does not stop half way */
  if (files != NULL
      && g_cancellable_set_error_if_cancelled (pp_work_get_cancellable (self->work), &error))
    g_clear_pointer (&files, g_ptr_array_unref);
  if (files == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, files, (GDestroyNotify) g_ptr_array_unref);
}

void
pp_export_job_run (PpWindow       *window,
                   const PpExport *export,
                   GFile          *target,
                   gboolean        is_folder)
{
  Job *self = g_new0 (Job, 1);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, drawn_cb, self);

  self->window = g_object_ref (window);
  self->work = pp_work_new ();
  self->panel = pp_panel_ref (pp_document_get_panel (pp_window_get_document (window)));
  self->export = *export;
  self->target = g_file_get_path (target);
  self->is_folder = is_folder;
  self->dialog = pp_work_dialog_new (GTK_WINDOW (window), export->doing, self->work);
  g_task_set_task_data (task, self, NULL);
  g_task_run_in_thread (task, draw_in_thread);
}
