/* panel-peek.c: a look into a panel's file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/panel-peek.h"

#include "art/draw.h"
#include "file/panel-read.h"
#include "panel/i18n.h"
#include "panel/measure.h"

#include <cairo.h>

#define MARGIN 2 /* px round the picture, for its shadows */

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

static PpBox
get_extent (const PpScene *scene)
{
  PpBox box = pp_background_get_box (scene->panel->background);

  for (guint i = 0; i < scene->n_bodies; i++)
    box = pp_box_union (box, scene->bodies[i]->box);
  return box;
}

static GdkTexture *
texture_of (cairo_surface_t *surface)
{
  int width = cairo_image_surface_get_width (surface);
  int height = cairo_image_surface_get_height (surface);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = NULL;

  cairo_surface_flush (surface);
  bytes = g_bytes_new (cairo_image_surface_get_data (surface), stride * (gsize) height);
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}

static GdkTexture *
draw_picture (const PpPanel *panel,
              int            side)
{
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);
  g_autoptr (PpGallery) gallery = pp_gallery_new (panel, NULL);
  PpBox box = get_extent (scene);
  double scale = (side - 2 * MARGIN) / fmax (pp_box_width (box), pp_box_height (box));
  cairo_surface_t *surface
    = cairo_image_surface_create (CAIRO_FORMAT_ARGB32,
                                  (int) ceil (pp_box_width (box) * scale) + 2 * MARGIN,
                                  (int) ceil (pp_box_height (box) * scale) + 2 * MARGIN);
  cairo_t *cr = cairo_create (surface);
  GdkTexture *texture;

  cairo_translate (cr, MARGIN, MARGIN);
  cairo_scale (cr, scale, scale);
  cairo_translate (cr, -box.x0, -box.y0);
  pp_draw_scene (cr, scene, gallery, NULL, NULL, NULL);
  cairo_destroy (cr);
  texture = texture_of (surface);
  cairo_surface_destroy (surface);
  return texture;
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

  if (g_task_return_error_if_cancelled (task))
    return;
  if (path == NULL || !g_file_query_exists (file, cancellable))
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
               GCancellable        *cancellable,
               GAsyncReadyCallback  callback,
               gpointer             data)
{
  g_autoptr (GTask) task = NULL;

  g_return_if_fail (G_IS_FILE (file) && side > 2 * MARGIN);
  task = g_task_new (file, cancellable, callback, data);
  g_task_set_task_data (task, GINT_TO_POINTER (side), NULL);
  g_task_run_in_thread (task, peek_thread);
}

PpPeek *
pp_peek_finish (GAsyncResult  *result,
                GError       **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
