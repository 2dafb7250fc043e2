/* sprite.c: a placed piece with its shadow as a picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "art/sprite.h"

#include "art/draw.h"

struct _PpSprite
{
  cairo_surface_t      *surface;
  cairo_rectangle_int_t extents; /* px, round the piece's origin */
  const PpPiece        *piece;
  double                rotation;
  gboolean              mirrored;
  PpSpriteWish          wish;
};

/* Of outline, art and shadow, mm round the piece's origin in the panel's directions. */
static PpBox
get_box (const PpBody       *body,
         PpArt              *art,
         const PpSpriteWish *wish)
{
  PpBox box = body->box;

  if (art != NULL)
    {
      PpBox own = pp_art_get_box (art);

      box = pp_box_add_point (box, pp_frame_to_panel (&body->frame, (PpPoint) { own.x0, own.y0 }));
      box = pp_box_add_point (box, pp_frame_to_panel (&body->frame, (PpPoint) { own.x1, own.y0 }));
      box = pp_box_add_point (box, pp_frame_to_panel (&body->frame, (PpPoint) { own.x0, own.y1 }));
      box = pp_box_add_point (box, pp_frame_to_panel (&body->frame, (PpPoint) { own.x1, own.y1 }));
    }
  if (wish->with_shadow)
    box = pp_box_grow (box, pp_draw_get_shadow_reach (wish->top));
  box = (PpBox) { box.x0 - body->frame.x, box.y0 - body->frame.y, box.x1 - body->frame.x,
                  box.y1 - body->frame.y };
  if (wish->flipped)
    box = (PpBox) { -box.x1, box.y0, -box.x0, box.y1 };
  return box;
}

static void
draw (PpSprite     *self,
      const PpBody *body,
      PpArt        *art)
{
  cairo_t *cr = cairo_create (self->surface);
  double scale = self->wish.scale;

  cairo_translate (cr, -self->extents.x, -self->extents.y);
  cairo_scale (cr, self->wish.flipped ? -scale : scale, scale);
  cairo_translate (cr, -body->frame.x, -body->frame.y);
  if (self->wish.with_shadow)
    pp_draw_shadow (cr, body, self->wish.top);
  pp_draw_body (cr, body, art);
  cairo_destroy (cr);
}

PpSprite *
pp_sprite_new (const PpBody       *body,
               PpArt              *art,
               const PpSpriteWish *wish)
{
  PpSprite *self;
  PpBox box;
  double x0, y0, x1, y1;

  g_return_val_if_fail (body != NULL && wish != NULL && wish->scale > 0, NULL);

  box = get_box (body, art, wish);
  x0 = floor (box.x0 * wish->scale) - 1;
  y0 = floor (box.y0 * wish->scale) - 1;
  x1 = ceil (box.x1 * wish->scale) + 1;
  y1 = ceil (box.y1 * wish->scale) + 1;
  if ((x1 - x0) * (y1 - y0) > PP_SPRITE_MAX_PIXELS)
    return NULL;
  self = g_rc_box_new0 (PpSprite);
  self->extents = (cairo_rectangle_int_t) { (int) x0, (int) y0, (int) (x1 - x0), (int) (y1 - y0) };
  self->piece = pp_piece_ref (body->piece);
  self->rotation = body->placement->rotation;
  self->mirrored = body->placement->mirrored;
  self->wish = *wish;
  self->surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, self->extents.width,
                                              self->extents.height);
  draw (self, body, art);
  return self;
}

static void
sprite_clear (gpointer data)
{
  PpSprite *self = data;

  cairo_surface_destroy (self->surface);
  pp_piece_unref (self->piece);
}

void
pp_sprite_unref (PpSprite *self)
{
  if (self != NULL)
    g_rc_box_release_full (self, sprite_clear);
}

gboolean
pp_sprite_suits (const PpSprite     *self,
                 const PpBody       *body,
                 const PpSpriteWish *wish)
{
  g_return_val_if_fail (self != NULL && body != NULL && wish != NULL, FALSE);

  return self->piece == body->piece
         && self->rotation == body->placement->rotation
         && self->mirrored == body->placement->mirrored
         && self->wish.scale == wish->scale
         && self->wish.top == wish->top
         && self->wish.with_shadow == wish->with_shadow
         && self->wish.flipped == wish->flipped;
}

void
pp_sprite_lay (const PpSprite *self,
               cairo_t        *cr,
               double          x,
               double          y)
{
  g_return_if_fail (self != NULL && cr != NULL);

  cairo_set_source_surface (cr, self->surface, round (x) + self->extents.x,
                            round (y) + self->extents.y);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
}

void
pp_sprite_get_extents (const PpSprite        *self,
                       cairo_rectangle_int_t *extents)
{
  g_return_if_fail (self != NULL && extents != NULL);
  *extents = self->extents;
}
