/* panel-peek.c: a look into a panel's file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/panel-peek.h"

#include "desk/panel-picture.h"
#include "file/panel-read.h"
#include "panel/i18n.h"
#include "panel/measure.h"

void
pp_peek_free (PpPeek *self)
{
  if (self == NULL)
    return;
  g_free (self->title);
  g_free (self->size);
  g_clear_object (&self->picture);
  g_free (self);
}

static GdkTexture *
draw_picture (const PpPanel *panel,
              int            side)
{
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);
  g_autoptr (PpGallery) gallery = pp_gallery_new (panel, NULL);

  return pp_panel_picture_new (scene, gallery, side, NULL, NULL);
}

static void
peek_thread (GTask        *task,
             gpointer      source,
             gpointer      data,
             GCancellable *cancellable)
{
  GFile *file = source;
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *name = g_file_get_basename (file);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = NULL;
  PpPeek *self;

  if (path == NULL || !g_file_query_exists (file, NULL))
    {
      g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_NOT_FOUND, "%s", name);
      return;
    }
  panel = pp_panel_load (path, &error);
  if (panel == NULL)
    {
      g_task_return_error (task, g_steal_pointer (&error));
      return;
    }
  self = g_new0 (PpPeek, 1);
  self->title = *panel->title != '\0' ? g_strdup (panel->title) : g_filename_display_name (name);
  self->size = pp_size_format (panel->background->width, panel->background->height, panel->units);
  self->picture = draw_picture (panel, GPOINTER_TO_INT (data));
  g_task_return_pointer (task, self, (GDestroyNotify) pp_peek_free);
}

void
pp_peek_async (GFile               *file,
               int                  side,
               GAsyncReadyCallback  callback,
               gpointer             data)
{
  g_autoptr (GTask) task = NULL;

  g_return_if_fail (G_IS_FILE (file) && side > 0);
  task = g_task_new (file, NULL, callback, data);
  g_task_set_task_data (task, GINT_TO_POINTER (side), NULL);
  g_task_run_in_thread (task, peek_thread);
}

PpPeek *
pp_peek_finish (GAsyncResult  *result,
                GError       **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
