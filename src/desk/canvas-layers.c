/* canvas-layers.c: what does not move, drawn once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lower layer has bench, glass, wire and every piece under the lowest one in hand, the upper
 * one the rest. As long as the two nodes are the same pointers GTK paints only where the piece in
 * hand was and is. A piece is drawn into a sprite once for its turn and scale, and the sprite is
 * laid down, so that even both layers together are made within a frame.
 */
#include "config.h"

#include "desk/canvas-private.h"

#define TOP_STEP 0.5 /* mm: a shadow is drawn anew only when the top has moved that far */

void
pp_canvas_drop_layers (PpCanvas *self)
{
  self->layers_stale = TRUE;
  self->marks_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
pp_canvas_is_in_hand (PpCanvas   *self,
                      const char *id)
{
  return (self->drag.kind == PP_DRAG_MOVE || self->drag.kind == PP_DRAG_TURN)
         && pp_document_get_chosen (self->document) == PP_CHOSEN_PLACEMENTS
         && pp_document_is_chosen (self->document, id);
}

static double
get_top (PpCanvas     *self,
         const PpBody *body)
{
  double top = pp_document_get_top (self->document, body->placement->id);

  if (isnan (top))
    top = pp_draw_guess_top (body);
  return round (top / TOP_STEP) * TOP_STEP;
}

PpSprite *
pp_canvas_get_sprite (PpCanvas     *self,
                      const PpBody *body,
                      gboolean      in_pocket)
{
  const char *id = body->placement->id;
  PpSprite *sprite = g_hash_table_lookup (self->sprites, id);
  PpSpriteWish wish = {
    .scale = self->zoom.scale * gtk_widget_get_scale_factor (GTK_WIDGET (self)),
    .top = self->look.from_behind ? 0 : get_top (self, body),
    .with_shadow = !in_pocket && !self->look.from_behind,
    .flipped = self->look.from_behind,
  };

  if (sprite != NULL && pp_sprite_suits (sprite, body, &wish))
    return sprite;
  sprite = pp_sprite_new (body, pp_gallery_get (pp_document_get_gallery (self->document),
                                                body->piece), &wish);
  if (sprite == NULL)
    g_hash_table_remove (self->sprites, id);
  else
    g_hash_table_insert (self->sprites, g_strdup (id), sprite);
  return sprite;
}

static gboolean
drop_gone (gpointer key,
           gpointer value,
           gpointer data)
{
  return pp_panel_find_placement (data, key, NULL) == NULL;
}

/* `cr` to one unit a mm of the panel. */
static void
enter_panel (PpCanvas *self,
             cairo_t  *cr)
{
  cairo_translate (cr, self->zoom.x, self->zoom.y);
  cairo_scale (cr, self->zoom.from_behind ? -self->zoom.scale : self->zoom.scale, self->zoom.scale);
}

static void
draw_bare (PpCanvas *self,
           cairo_t  *cr)
{
  PpViewFrom view = pp_canvas_get_view (self);

  cairo_save (cr);
  enter_panel (self, cr);
  pp_draw_bare (cr, self->scene, &view);
  cairo_restore (cr);
}

void
pp_canvas_draw_large (PpCanvas     *self,
                      cairo_t      *cr,
                      const PpBody *body,
                      PpPoint       shift,
                      gboolean      in_pocket)
{
  cairo_save (cr);
  enter_panel (self, cr);
  cairo_translate (cr, shift.x, shift.y);
  if (!in_pocket && !self->look.from_behind)
    pp_draw_shadow (cr, body, get_top (self, body));
  pp_draw_body (cr, body, pp_gallery_get (pp_document_get_gallery (self->document), body->piece));
  cairo_restore (cr);
}

static gboolean
is_in_sight (PpCanvas     *self,
             const PpBody *body,
             PpPoint       shift,
             int           width,
             int           height)
{
  double reach = pp_draw_get_shadow_reach (get_top (self, body)) + body->length / 2;
  PpPoint a = pp_zoom_to_widget (&self->zoom, (PpPoint) { body->box.x0 + shift.x - reach,
                                                          body->box.y0 + shift.y - reach });
  PpPoint b = pp_zoom_to_widget (&self->zoom, (PpPoint) { body->box.x1 + shift.x + reach,
                                                          body->box.y1 + shift.y + reach });

  return fmax (a.x, b.x) > 0 && fmin (a.x, b.x) < width && b.y > 0 && a.y < height;
}

/* mm from where it lies to where it is seen. */
static PpPoint
get_shift (PpCanvas     *self,
           const PpBody *body)
{
  double base = pp_document_get_base (self->document, body->placement->id);
  PpViewFrom view = pp_canvas_get_view (self);

  return pp_draw_get_shift (&view, isnan (base) ? 0 : base, get_top (self, body));
}

static void
draw_one (PpCanvas *self,
          cairo_t  *cr,
          guint     i,
          int       width,
          int       height)
{
  const PpBody *body = self->scene->bodies[i];
  gboolean in_pocket = self->scene->pockets[i] != PP_NO_INDEX;
  PpPoint shift = get_shift (self, body);
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  PpSprite *sprite;
  PpPoint at;

  if (!is_in_sight (self, body, shift, width, height))
    return;
  sprite = pp_canvas_get_sprite (self, body, in_pocket);
  if (sprite == NULL)
    {
      pp_canvas_draw_large (self, cr, body, shift, in_pocket);
      return;
    }
  at = pp_canvas_to_px (self, body->frame.x + shift.x, body->frame.y + shift.y);
  cairo_save (cr);
  cairo_scale (cr, 1.0 / factor, 1.0 / factor);
  pp_sprite_lay (sprite, cr, at.x * factor, at.y * factor);
  cairo_restore (cr);
}

static void
draw_pocket_front (PpCanvas *self,
                   cairo_t  *cr,
                   guint     i)
{
  if (self->scene->pockets[i] == PP_NO_INDEX || self->look.from_behind)
    return;
  cairo_save (cr);
  enter_panel (self, cr);
  pp_draw_pocket_front (cr, self->scene, i, get_shift (self, self->scene->bodies[i]));
  cairo_restore (cr);
}

/* Stack place of the lowest piece in hand; the number of pieces if none is. */
static guint
find_split (PpCanvas *self)
{
  for (guint i = 0; i < self->scene->n_bodies; i++)
    if (pp_canvas_is_in_hand (self, self->scene->bodies[i]->placement->id))
      return i;
  return self->scene->n_bodies;
}

static void
draw_pieces (PpCanvas *self,
             cairo_t  *cr,
             guint     from,
             guint     to,
             int       width,
             int       height)
{
  for (guint i = from; i < to; i++)
    if (!pp_canvas_is_in_hand (self, self->scene->bodies[i]->placement->id))
      {
        draw_one (self, cr, i, width, height);
        draw_pocket_front (self, cr, i);
      }
}

/* From behind: the topmost is farthest away, and the glass comes last. */
static void
draw_all_from_behind (PpCanvas *self,
                      cairo_t  *cr,
                      int       width,
                      int       height)
{
  for (guint i = self->scene->n_bodies; i-- > 0;)
    draw_one (self, cr, i, width, height);
  draw_bare (self, cr);
}

cairo_t *
pp_canvas_begin_layer (PpCanvas         *self,
                       cairo_format_t    format,
                       int               width,
                       int               height,
                       cairo_surface_t **surface)
{
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));

  *surface = cairo_image_surface_create (format, width * factor, height * factor);
  cairo_surface_set_device_scale (*surface, factor, factor);
  return cairo_create (*surface);
}

GskRenderNode *
pp_canvas_end_layer (cairo_surface_t *surface,
                     int              width,
                     int              height)
{
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, width, height);
  GskRenderNode *node = gsk_cairo_node_new (&bounds);
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);

  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return node;
}

static void
make_below (PpCanvas *self,
            guint     split,
            int       width,
            int       height)
{
  PpPalette palette = pp_palette_of (GTK_WIDGET (self));
  cairo_surface_t *surface;
  cairo_t *cr = pp_canvas_begin_layer (self, CAIRO_FORMAT_RGB24, width, height, &surface);

  pp_palette_set (cr, &palette.bench, 1);
  cairo_paint (cr);
  if (self->look.from_behind)
    draw_all_from_behind (self, cr, width, height);
  else
    {
      draw_bare (self, cr);
      draw_pieces (self, cr, 0, split, width, height);
    }
  cairo_destroy (cr);
  self->below = pp_canvas_end_layer (surface, width, height);
}

static void
make_above (PpCanvas *self,
            guint     split,
            int       width,
            int       height)
{
  cairo_surface_t *surface;
  cairo_t *cr;

  if (self->look.from_behind || split + 1 >= self->scene->n_bodies)
    return;
  cr = pp_canvas_begin_layer (self, CAIRO_FORMAT_ARGB32, width, height, &surface);
  draw_pieces (self, cr, split + 1, self->scene->n_bodies, width, height);
  cairo_destroy (cr);
  self->above = pp_canvas_end_layer (surface, width, height);
}

void
pp_canvas_ensure_layers (PpCanvas *self,
                         int       width,
                         int       height)
{
  guint split;

  if (self->below != NULL && !self->layers_stale)
    return;
  g_clear_pointer (&self->below, gsk_render_node_unref);
  g_clear_pointer (&self->above, gsk_render_node_unref);
  g_clear_pointer (&self->scene, pp_scene_unref);
  self->scene = pp_scene_ref (pp_document_get_scene (self->document));
  g_hash_table_foreach_remove (self->sprites, drop_gone, (gpointer) self->scene->panel);
  split = find_split (self);
  make_below (self, split, width, height);
  make_above (self, split, width, height);
  self->layers_zoom = self->zoom;
  self->layers_stale = FALSE;
  self->marks_stale = TRUE;
}
