/* canvas-draw.c: the snapshot of the canvas.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lower layer, what is in hand, upper layer, marks. While the zoom changes the layers of before
 * are shown, larger or smaller, and made anew once it rests.
 */
#include "config.h"

#include "desk/canvas-private.h"

#define HAND_MARGIN 12 /* px round a piece in hand for the line about it */

static gboolean
is_zooming (PpCanvas *self)
{
  return self->below != NULL && self->settle_timer != 0;
}

static void
append_zoomed (PpCanvas    *self,
               GtkSnapshot *snapshot)
{
  const PpZoom *old = &self->layers_zoom, *now = &self->zoom;
  double grown = now->scale / old->scale;

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) (now->x - old->x * grown),
                                                          (float) (now->y - old->y * grown)));
  gtk_snapshot_scale (snapshot, (float) grown, (float) grown);
  gtk_snapshot_append_node (snapshot, self->below);
  if (self->above != NULL)
    gtk_snapshot_append_node (snapshot, self->above);
  gtk_snapshot_restore (snapshot);
}

/* The body as it is now: where a drag turns it, it is made anew each time. */
static const PpBody *
get_body_in_hand (PpCanvas *self,
                  guint     i)
{
  if (self->drag.kind == PP_DRAG_TURN)
    return pp_document_get_scene (self->document)->bodies[i];
  return self->scene->bodies[i];
}

static void
append_large (PpCanvas        *self,
              GtkSnapshot     *snapshot,
              const PpPalette *palette,
              const PpBody    *body,
              gboolean         in_pocket)
{
  float width = (float) gtk_widget_get_width (GTK_WIDGET (self));
  float height = (float) gtk_widget_get_height (GTK_WIDGET (self));
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  pp_canvas_draw_large (self, cr, body, pp_canvas_get_carried (self, body), in_pocket);
  pp_canvas_draw_chosen (self, cr, palette, body);
  cairo_destroy (cr);
}

static void
append_in_hand (PpCanvas        *self,
                GtkSnapshot     *snapshot,
                const PpPalette *palette,
                guint            i)
{
  const PpBody *body = get_body_in_hand (self, i);
  PpPoint carried = pp_canvas_get_carried (self, body);
  PpPoint at = pp_zoom_to_widget (&self->zoom, (PpPoint) { body->frame.x + carried.x,
                                                           body->frame.y + carried.y });
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  gboolean in_pocket = self->scene->pockets[i] != PP_NO_INDEX;
  PpSprite *sprite = pp_canvas_get_sprite (self, body, in_pocket);
  cairo_rectangle_int_t extents;
  graphene_rect_t bounds;
  cairo_t *cr;

  if (sprite == NULL)
    {
      append_large (self, snapshot, palette, body, in_pocket);
      return;
    }
  pp_sprite_get_extents (sprite, &extents);
  bounds = GRAPHENE_RECT_INIT ((float) floor (at.x + (double) extents.x / factor - HAND_MARGIN),
                               (float) floor (at.y + (double) extents.y / factor - HAND_MARGIN),
                               (float) (extents.width / factor + 2 * HAND_MARGIN + 2),
                               (float) (extents.height / factor + 2 * HAND_MARGIN + 2));
  cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  cairo_save (cr);
  cairo_scale (cr, 1.0 / factor, 1.0 / factor);
  pp_sprite_lay (sprite, cr, at.x * factor, at.y * factor);
  cairo_restore (cr);
  pp_canvas_draw_chosen (self, cr, palette, body);
  cairo_destroy (cr);
}

static void
append_all_in_hand (PpCanvas        *self,
                    GtkSnapshot     *snapshot,
                    const PpPalette *palette)
{
  for (guint i = 0; i < self->scene->n_bodies; i++)
    if (pp_canvas_is_in_hand (self, self->scene->bodies[i]->placement->id))
      append_in_hand (self, snapshot, palette, i);
}

/* On a surface: a node with the strokes themselves would draw them all in every frame of a drag. */
static void
ensure_marks (PpCanvas        *self,
              const PpPalette *palette,
              int              width,
              int              height)
{
  cairo_surface_t *surface;
  cairo_t *cr;

  if (self->marks != NULL && !self->marks_stale)
    return;
  g_clear_pointer (&self->marks, gsk_render_node_unref);
  cr = pp_canvas_begin_layer (self, CAIRO_FORMAT_ARGB32, width, height, &surface);
  pp_canvas_draw_marks (self, cr, palette);
  cairo_destroy (cr);
  self->marks = pp_canvas_end_layer (surface, width, height);
  self->marks_stale = FALSE;
}

/* What follows the pointer and is gone when it is let go. */
static void
append_passing (PpCanvas              *self,
                GtkSnapshot           *snapshot,
                const PpPalette       *palette,
                const graphene_rect_t *bounds)
{
  gboolean is_moved = self->drag.kind == PP_DRAG_MOVE;
  cairo_t *cr;

  if (self->drag.kind != PP_DRAG_FRAME && !self->measuring
      && !(is_moved && (self->drag.evenly || self->drag.said != NULL)))
    return;
  cr = gtk_snapshot_append_cairo (snapshot, bounds);
  if (self->drag.kind == PP_DRAG_FRAME)
    pp_canvas_draw_frame (self, cr, palette);
  if (self->measuring && self->has_measured)
    pp_canvas_draw_measured (self, cr, palette);
  if (is_moved && self->drag.evenly)
    pp_canvas_draw_evenly (self, cr, palette);
  if (is_moved && self->drag.said != NULL)
    pp_canvas_draw_said (self, cr, palette);
  cairo_destroy (cr);
}

void
pp_canvas_snapshot (GtkWidget   *widget,
                    GtkSnapshot *snapshot)
{
  PpCanvas *self = PP_CANVAS (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, width, height);
  PpPalette palette;

  if (self->document == NULL || width <= 0 || height <= 0)
    return;
  palette = pp_palette_of (widget);
  gtk_snapshot_push_clip (snapshot, &bounds);
  if (is_zooming (self))
    {
      gtk_snapshot_append_color (snapshot, &palette.bench, &bounds);
      append_zoomed (self, snapshot);
    }
  else
    {
      pp_canvas_ensure_layers (self, width, height);
      gtk_snapshot_append_node (snapshot, self->below);
      append_all_in_hand (self, snapshot, &palette);
      if (self->above != NULL)
        gtk_snapshot_append_node (snapshot, self->above);
      ensure_marks (self, &palette, width, height);
      gtk_snapshot_append_node (snapshot, self->marks);
    }
  append_passing (self, snapshot, &palette, &bounds);
  gtk_snapshot_pop (snapshot);
}
