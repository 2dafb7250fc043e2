/* sprite.h: a placed piece with its shadow as a picture ready to be laid down.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Made once for a turn, a scale and a height, and laid at whole pixels wherever the piece goes:
 * what makes a window of many pieces quick. Counted, for one thread.
 */
#pragma once

#include "art/art.h"
#include "shape/scene.h"

G_BEGIN_DECLS

typedef struct _PpSprite PpSprite;

/* How it is to look; two sprites of the same body with equal wishes are the same. */
typedef struct
{
  double   scale;       /* device pixels a mm, more than 0 */
  double   top;         /* mm over the glass, for the shadow */
  gboolean with_shadow;
  gboolean flipped;     /* as seen from behind */
} PpSpriteWish;

#define PP_SPRITE_MAX_PIXELS 4e6 /* 16 MB */

/* `art` is nullable. NULL, which is no error, for one larger than PP_SPRITE_MAX_PIXELS: draw the
 * body itself then. (transfer full) */
PpSprite *pp_sprite_new   (const PpBody       *body,
                           PpArt              *art,
                           const PpSpriteWish *wish);
void      pp_sprite_unref (PpSprite           *self);
/* Whether it is what pp_sprite_new() would give; where the body lies does not matter. */
gboolean  pp_sprite_suits (const PpSprite     *self,
                           const PpBody       *body,
                           const PpSpriteWish *wish);
/* Lays it with the piece's origin at (x, y) device pixels, rounded. `cr` has no transformation but
 * a translation by whole pixels. */
void      pp_sprite_lay   (const PpSprite     *self,
                           cairo_t            *cr,
                           double              x,
                           double              y);
/* The pixels it covers when its origin lies at (0, 0). */
void      pp_sprite_get_extents (const PpSprite        *self,
                                 cairo_rectangle_int_t *extents);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSprite, pp_sprite_unref)

G_END_DECLS
