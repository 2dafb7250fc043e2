/* panel-io.c: panels read and written in a thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/panel-io.h"

#include "desk/file-words.h"
#include "file/earlier.h"
#include "file/json-scan.h"
#include "file/load.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "panel/i18n.h"

typedef struct
{
  char          *path;
  const PpPanel *panel;    /* to be saved */
  char          *expected; /* nullable */
  char          *content;  /* the answer */
} Work;

static void
free_work (gpointer data)
{
  Work *work = data;

  g_free (work->path);
  g_free (work->expected);
  g_free (work->content);
  g_clear_pointer (&work->panel, pp_panel_unref);
  g_free (work);
}

static char *
content_of_bytes (GBytes *bytes)
{
  gsize length;
  const void *data = g_bytes_get_data (bytes, &length);

  return pp_file_content_of (data, length);
}

/* What is wrong inside a file says where, but not in which file. */
static PpPanel *
read_panel (GBytes      *bytes,
            const char  *path,
            GError     **error)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autoptr (GError) wrong = NULL;
  PpPanel *panel = pp_panel_read (bytes, &wrong);

  if (panel == NULL)
    g_set_error (error, wrong->domain, wrong->code, _("“%s” could not be opened: %s"), name,
                 wrong->message);
  return panel;
}

static void
load_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Work *work = data;
  g_autoptr (GBytes) bytes = NULL;
  PpPanel *panel = NULL;
  GError *error = NULL;

  if (pp_file_load (work->path, PP_JSON_MAX_BYTES, &bytes, &error))
    panel = read_panel (bytes, work->path, &error);
  if (panel == NULL)
    {
      g_task_return_error (task, error);
      return;
    }
  work->content = content_of_bytes (bytes);
  g_task_return_pointer (task, panel, (GDestroyNotify) pp_panel_unref);
}

static void
run (Work                *work,
     GTaskThreadFunc      in_thread,
     GAsyncReadyCallback  done,
     gpointer             data)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, done, data);

  g_task_set_task_data (task, work, free_work);
  g_task_run_in_thread (task, in_thread);
}

void
pp_panel_io_load_async (const char          *path,
                        GAsyncReadyCallback  done,
                        gpointer             data)
{
  Work *work = g_new0 (Work, 1);

  g_return_if_fail (path != NULL);

  work->path = g_strdup (path);
  run (work, load_in_thread, done, data);
}

PpPanel *
pp_panel_io_load_finish (GAsyncResult  *result,
                         char         **content,
                         GError       **error)
{
  PpPanel *panel = g_task_propagate_pointer (G_TASK (result), error);
  Work *work = g_task_get_task_data (G_TASK (result));

  if (panel != NULL)
    *content = g_steal_pointer (&work->content);
  return panel;
}

static void
save_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Work *work = data;
  g_autofree char *there = work->expected != NULL ? pp_panel_io_look (work->path) : NULL;
  g_autofree char *history = pp_earlier_folder ();
  g_autoptr (GString) text = NULL;
  GError *error = NULL;

  if (there != NULL && !g_str_equal (there, work->expected))
    {
      g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_WRONG_ETAG, "%s", work->path);
      return;
    }
  /* A history that cannot be kept is no reason not to save. */
  pp_earlier_keep (history, work->path, PP_EARLIER_MOST_BYTES, NULL);
  if (!pp_panel_save (work->panel, work->path, &error))
    {
      g_task_return_error (task, error);
      return;
    }
  text = pp_panel_write (work->panel);
  work->content = pp_file_content_of (text->str, text->len);
  g_task_return_boolean (task, TRUE);
}

void
pp_panel_io_save_async (const PpPanel       *panel,
                        const char          *path,
                        const char          *expected,
                        GAsyncReadyCallback  done,
                        gpointer             data)
{
  Work *work = g_new0 (Work, 1);

  g_return_if_fail (panel != NULL && path != NULL);

  work->panel = pp_panel_ref (panel);
  work->path = g_strdup (path);
  work->expected = g_strdup (expected);
  run (work, save_in_thread, done, data);
}

gboolean
pp_panel_io_save_finish (GAsyncResult  *result,
                         char         **content,
                         GError       **error)
{
  Work *work = g_task_get_task_data (G_TASK (result));

  if (!g_task_propagate_boolean (G_TASK (result), error))
    return FALSE;
  *content = g_steal_pointer (&work->content);
  return TRUE;
}

char *
pp_panel_io_look (const char *path)
{
  g_autoptr (GBytes) bytes = NULL;

  g_return_val_if_fail (path != NULL, NULL);

  if (pp_file_load (path, PP_JSON_MAX_BYTES, &bytes, NULL))
    return content_of_bytes (bytes);
  return g_file_test (path, G_FILE_TEST_EXISTS) ? g_strdup ("") : NULL;
}
