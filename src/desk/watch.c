/* watch.c: whether a file still holds what it held.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One look at a time: what comes in during one asks for another one after it. A program that
 * replaces a file makes several events of it, with the file not there in between; so a look waits
 * a little.
 */
#include "config.h"

#include "desk/watch.h"

#include "desk/panel-io.h"

#define SETTLE_MSEC 400

struct _PpWatch
{
  GObject       parent_instance;
  GFile        *file;
  GFileMonitor *monitor;
  char         *content;  /* ours */
  char         *theirs;   /* as last seen; NULL: gone */
  PpWatchState  state;
  guint         timer;
  guint         holds;
  gboolean      is_looking;
  gboolean      wants_look;
};

G_DEFINE_FINAL_TYPE (PpWatch, pp_watch, G_TYPE_OBJECT)

static guint noticed_signal;

static void look_soon (PpWatch *self);

/* Which file was looked at, and what was ours then, is known by `content` itself: an answer that
 * comes after pp_watch_set() is asked for again. */
static void
notice (PpWatch    *self,
        const char *theirs)
{
  PpWatchState state = PP_WATCH_CHANGED;

  if (theirs == NULL)
    state = PP_WATCH_GONE;
  else if (g_str_equal (theirs, self->content))
    state = PP_WATCH_SAME;
  if (state == self->state && g_strcmp0 (theirs, self->theirs) == 0)
    return;
  self->state = state;
  g_free (self->theirs);
  self->theirs = g_strdup (theirs);
  g_signal_emit (self, noticed_signal, 0);
}

static void
looked_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (PpWatch) self = data;
  g_autofree char *theirs = g_task_propagate_pointer (G_TASK (result), NULL);
  const char *path = g_task_get_task_data (G_TASK (result));
  g_autofree char *now = self->file != NULL ? g_file_get_path (self->file) : NULL;

  self->is_looking = FALSE;
  if (self->wants_look || self->holds > 0)
    look_soon (self);
  else if (g_strcmp0 (path, now) == 0)
    notice (self, theirs);
}

static void
look_in_thread (GTask        *task,
                gpointer      source,
                gpointer      path,
                GCancellable *cancellable)
{
  g_task_return_pointer (task, pp_panel_io_look (path), g_free);
}

static gboolean
look_cb (gpointer data)
{
  PpWatch *self = data;
  g_autoptr (GTask) task = NULL;

  self->timer = 0;
  self->wants_look = FALSE;
  self->is_looking = TRUE;
  task = g_task_new (NULL, NULL, looked_cb, g_object_ref (self));
  g_task_set_task_data (task, g_file_get_path (self->file), g_free);
  g_task_run_in_thread (task, look_in_thread);
  return G_SOURCE_REMOVE;
}

static void
look_soon (PpWatch *self)
{
  if (self->is_looking || self->holds > 0 || self->file == NULL)
    self->wants_look = TRUE;
  else if (self->timer == 0)
    self->timer = g_timeout_add (SETTLE_MSEC, look_cb, self);
}

static void
event_cb (GFileMonitor      *monitor,
          GFile             *file,
          GFile             *other,
          GFileMonitorEvent  event,
          PpWatch           *self)
{
  look_soon (self);
}

static void
let_go (PpWatch *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->monitor != NULL)
    g_signal_handlers_disconnect_by_data (self->monitor, self);
  g_clear_object (&self->monitor);
  g_clear_object (&self->file);
  g_clear_pointer (&self->content, g_free);
  g_clear_pointer (&self->theirs, g_free);
  self->state = PP_WATCH_SAME;
}

static void
pp_watch_dispose (GObject *object)
{
  let_go (PP_WATCH (object));
  G_OBJECT_CLASS (pp_watch_parent_class)->dispose (object);
}

static void
pp_watch_class_init (PpWatchClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = pp_watch_dispose;
  noticed_signal = g_signal_new ("noticed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
pp_watch_init (PpWatch *self)
{
}

PpWatch *
pp_watch_new (void)
{
  return g_object_new (PP_TYPE_WATCH, NULL);
}

void
pp_watch_set (PpWatch    *self,
              GFile      *file,
              const char *content)
{
  g_autoptr (GFile) kept = file != NULL ? g_object_ref (file) : NULL;
  gboolean was_changed;

  g_return_if_fail (PP_IS_WATCH (self));
  g_return_if_fail (file == NULL || content != NULL);

  was_changed = self->state != PP_WATCH_SAME;
  let_go (self);
  if (file != NULL)
    {
      self->file = g_steal_pointer (&kept);
      self->content = g_strdup (content);
      self->theirs = g_strdup (content);
      /* without one, as on some disks, the file is looked at when the window is */
      self->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
    }
  if (self->monitor != NULL)
    g_signal_connect (self->monitor, "changed", G_CALLBACK (event_cb), self);
  self->wants_look |= self->is_looking;
  if (was_changed)
    g_signal_emit (self, noticed_signal, 0);
}

const char *
pp_watch_get_content (PpWatch *self)
{
  g_return_val_if_fail (PP_IS_WATCH (self), NULL);
  return self->content;
}

PpWatchState
pp_watch_get_state (PpWatch *self)
{
  g_return_val_if_fail (PP_IS_WATCH (self), PP_WATCH_SAME);
  return self->state;
}

void
pp_watch_hold (PpWatch *self)
{
  g_return_if_fail (PP_IS_WATCH (self));
  self->holds++;
}

void
pp_watch_release (PpWatch *self)
{
  g_return_if_fail (PP_IS_WATCH (self) && self->holds > 0);

  self->holds--;
  look_soon (self);
}

void
pp_watch_look (PpWatch *self)
{
  g_return_if_fail (PP_IS_WATCH (self));

  if (self->file != NULL)
    look_soon (self);
}

void
pp_watch_accept (PpWatch *self)
{
  g_return_if_fail (PP_IS_WATCH (self));

  if (self->state != PP_WATCH_CHANGED)
    return;
  g_free (self->content);
  self->content = g_strdup (self->theirs);
  self->state = PP_WATCH_SAME;
  g_signal_emit (self, noticed_signal, 0);
}
