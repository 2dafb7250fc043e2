/* bench-keep.c: what happened at the bench, written to the panel's file at once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/bench-keep.h"

#include "desk/file-state.h"
#include "desk/panel-io.h"
#include "panel/i18n.h"

#define AGAIN_SECONDS 10 /* after which what could not be written is tried again */

struct _PpBenchKeep
{
  PpWindow        *window;
  PpBenchKeepFunc  done;     /* NULL: nobody wants to know any more */
  gpointer         data;
  PpDocument      *document;
  const PpPanel   *panel;    /* that is being written, or NULL */
  GFile           *file;
  gboolean         is_wanted; /* a newer one has come meanwhile */
  guint            timer;
};

static void
clear_writing (PpBenchKeep *self)
{
  g_clear_object (&self->file);
  g_clear_pointer (&self->panel, pp_panel_unref);
}

static void
destroy (PpBenchKeep *self)
{
  clear_writing (self);
  g_object_unref (self->document);
  g_object_unref (self->window);
  g_free (self);
}

static gboolean
again_cb (gpointer data)
{
  PpBenchKeep *self = data;

  self->timer = 0;
  pp_bench_keep_write (self);
  return G_SOURCE_REMOVE;
}

static void
note_written (PpBenchKeep *self,
              const char  *content)
{
  pp_document_set_saved (self->document, self->panel, self->file);
  if (pp_window_get_document (self->window) == self->document)
    pp_file_state_set (self->window, content);
}

static const char *
say_fault (const GError *error)
{
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_WRONG_ETAG))
    return _("Another program changed the file, so nothing was written over it. Save the panel "
             "under another name.");
  return error->message;
}

/* Once the bench is left there is no further try: the document stays unsaved and is asked about. */
static void
end (PpBenchKeep *self,
     const char  *fault)
{
  if (fault != NULL && pp_file_state_is_alive (self->window))
    pp_window_tell (self->window, fault);
  destroy (self);
}

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  PpBenchKeep *self = data;
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_written = pp_panel_io_save_finish (result, &content, &error);
  const char *fault = is_written ? NULL : say_fault (error);

  if (is_written)
    note_written (self, content);
  pp_watch_release (pp_file_state_of (self->window)->watch);
  clear_writing (self);
  if (self->is_wanted)
    pp_bench_keep_write (self);
  else if (self->done == NULL)
    end (self, fault);
  else
    {
      if (!is_written)
        self->timer = g_timeout_add_seconds (AGAIN_SECONDS, again_cb, self);
      self->done (fault, self->data);
    }
}

PpBenchKeep *
pp_bench_keep_new (PpWindow        *window,
                   PpBenchKeepFunc  done,
                   gpointer         data)
{
  PpBenchKeep *self = g_new0 (PpBenchKeep, 1);

  g_return_val_if_fail (PP_IS_WINDOW (window) && done != NULL, NULL);

  self->window = g_object_ref (window);
  self->document = g_object_ref (pp_window_get_document (window));
  self->done = done;
  self->data = data;
  return self;
}

void
pp_bench_keep_free (PpBenchKeep *self)
{
  if (self == NULL)
    return;
  self->done = NULL;
  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->panel == NULL)
    destroy (self);
}

gboolean
pp_bench_keep_is_writing (PpBenchKeep *self)
{
  g_return_val_if_fail (self != NULL, FALSE);
  return self->panel != NULL;
}

void
pp_bench_keep_write (PpBenchKeep *self)
{
  PpWatch *watch;
  g_autofree char *path = NULL;

  g_return_if_fail (self != NULL);

  self->is_wanted = self->panel != NULL;
  if (self->is_wanted)
    return;
  g_clear_handle_id (&self->timer, g_source_remove);
  watch = pp_file_state_of (self->window)->watch;
  self->panel = pp_panel_ref (pp_document_get_panel (self->document));
  self->file = g_object_ref (pp_document_get_file (self->document));
  path = g_file_get_path (self->file);
  pp_watch_hold (watch);
  pp_panel_io_save_async (self->panel, path, pp_watch_get_content (watch), written_cb, self);
}
