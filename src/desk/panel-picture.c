/* panel-picture.c: a whole panel as a picture for a widget.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/panel-picture.h"

#define MARGIN 2 /* px round the picture, for its shadows */
#define LINE 2.0 /* px */
#define DASH 5.0 /* px */

PpBox
pp_panel_picture_get_box (const PpScene *scene)
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

static const PpBody *
find_body (const PpScene *scene,
           const char    *id)
{
  guint index;

  if (pp_panel_find_placement (scene->panel, id, &index) == NULL)
    return NULL;
  return scene->bodies[index];
}

static gboolean
lies_alike (const PpBody *a,
            const PpBody *b)
{
  return a != NULL && b != NULL && a->placement->x == b->placement->x
         && a->placement->y == b->placement->y && a->placement->rotation == b->placement->rotation;
}

/* Round those bodies of `scene` that lie otherwise in `other`, or not at all. */
static void
outline_moved (cairo_t       *cr,
               const PpScene *scene,
               const PpScene *other)
{
  for (guint i = 0; i < scene->n_bodies; i++)
    if (!lies_alike (scene->bodies[i], find_body (other, scene->bodies[i]->placement->id)))
      pp_draw_outline_path (cr, scene->bodies[i]->outline);
  cairo_stroke (cr);
}

/* Holes too, larger than they are, as they are small beside pieces. */
static void
ring_moved (cairo_t       *cr,
            const PpPanel *panel,
            const PpPanel *other)
{
  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, i);
      const PpHole *there = pp_panel_find_hole (other, hole->id, NULL);

      if (there != NULL && there->x == hole->x && there->y == hole->y)
        continue;
      cairo_new_sub_path (cr);
      cairo_arc (cr, hole->x, hole->y, hole->diameter, 0, 2 * G_PI);
    }
  cairo_stroke (cr);
}

static void
draw_moved (cairo_t       *cr,
            const PpScene *scene,
            const PpScene *before,
            const GdkRGBA *colour,
            double         scale)
{
  double dash = DASH / scale;

  gdk_cairo_set_source_rgba (cr, colour);
  cairo_set_line_width (cr, LINE / scale);
  outline_moved (cr, scene, before);
  ring_moved (cr, scene->panel, before->panel);
  cairo_set_dash (cr, &dash, 1, 0);
  outline_moved (cr, before, scene);
  ring_moved (cr, before->panel, scene->panel);
}

GdkTexture *
pp_panel_picture_new (const PpScene *scene,
                      PpGallery     *gallery,
                      int            side,
                      const PpScene *before,
                      const GdkRGBA *colour)
{
  PpBox box = pp_panel_picture_get_box (scene);
  double scale;
  cairo_surface_t *surface;
  cairo_t *cr;
  GdkTexture *texture;

  g_return_val_if_fail (side > 2 * MARGIN && (before == NULL || colour != NULL), NULL);

  scale = (side - 2 * MARGIN) / fmax (pp_box_width (box), pp_box_height (box));
  surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32,
                                        (int) ceil (pp_box_width (box) * scale) + 2 * MARGIN,
                                        (int) ceil (pp_box_height (box) * scale) + 2 * MARGIN);
  cr = cairo_create (surface);
  cairo_translate (cr, MARGIN, MARGIN);
  cairo_scale (cr, scale, scale);
  cairo_translate (cr, -box.x0, -box.y0);
  pp_draw_scene (cr, scene, gallery, NULL, NULL, NULL);
  if (before != NULL)
    draw_moved (cr, scene, before, colour, scale);
  cairo_destroy (cr);
  texture = texture_of (surface);
  cairo_surface_destroy (surface);
  return texture;
}

GdkPaintable *
pp_panel_picture_halve (GdkTexture *texture)
{
  graphene_size_t half = GRAPHENE_SIZE_INIT ((float) gdk_texture_get_width (texture) / 2,
                                             (float) gdk_texture_get_height (texture) / 2);
  GtkSnapshot *snapshot = gtk_snapshot_new ();

  gdk_paintable_snapshot (GDK_PAINTABLE (texture), snapshot, half.width, half.height);
  return gtk_snapshot_free_to_paintable (snapshot, &half);
}
