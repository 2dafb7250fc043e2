/* test-sprite.c: a sprite laid down is the piece drawn there.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "arrangement.h"

#include "art/sprite.h"

#define SCALE 5.0
#define SIDE 600 /* pixels */
#define NEAR 3   /* of 255, each channel: antialiasing rounds twice in a sprite */

typedef struct
{
  const char *name;
  double      rotation;
  gboolean    mirrored;
  gboolean    with_shadow;
  gboolean    flipped;
} Row;

static const Row rows[] = {
  { "as-it-is", 0, FALSE, FALSE, FALSE },
  { "with-shadow", 0, FALSE, TRUE, FALSE },
  { "turned", 30, FALSE, TRUE, FALSE },
  { "mirrored", 75, TRUE, TRUE, FALSE },
  { "from-behind", 30, FALSE, FALSE, TRUE },
};

static cairo_surface_t *
make_sheet (cairo_t **cr)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, SIDE, SIDE);

  *cr = cairo_create (surface);
  cairo_set_source_rgb (*cr, 1, 1, 1);
  cairo_paint (*cr);
  return surface;
}

/* Origin of the piece at pixel (x, y). */
static cairo_surface_t *
draw_directly (const Arrangement *self,
               const Row         *row,
               double             x,
               double             y)
{
  cairo_t *cr;
  cairo_surface_t *surface = make_sheet (&cr);

  cairo_translate (cr, x, y);
  cairo_scale (cr, row->flipped ? -SCALE : SCALE, SCALE);
  cairo_translate (cr, -self->body.frame.x, -self->body.frame.y);
  if (row->with_shadow)
    pp_draw_shadow (cr, &self->body, 8);
  pp_draw_body (cr, &self->body, pp_gallery_get (self->gallery, &self->piece));
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static cairo_surface_t *
lay (PpSprite *sprite,
     double    x,
     double    y)
{
  cairo_t *cr;
  cairo_surface_t *surface = make_sheet (&cr);

  pp_sprite_lay (sprite, cr, x, y);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static int
get_greatest_difference (cairo_surface_t *a,
                         cairo_surface_t *b)
{
  const guchar *one = cairo_image_surface_get_data (a), *other = cairo_image_surface_get_data (b);
  int greatest = 0;

  for (int i = 0; i < SIDE * cairo_image_surface_get_stride (a); i++)
    greatest = MAX (greatest, ABS (one[i] - other[i]));
  return greatest;
}

/* The arrangement with its piece as a counted record, which a sprite keeps. */
static PpPiece *
begin (Arrangement       *self,
       const PpPlacement *placement,
       gboolean           with_art)
{
  PpPiece draft = pp_piece_draft ();
  PpPiece *piece;

  arrangement_init (self, placement, with_art);
  draft.id = draft.name = "leaf";
  draft.thickness = 4;
  draft.outline = self->piece.outline;
  draft.art = self->piece.art;
  piece = pp_piece_new (&draft, NULL);
  g_assert_nonnull (piece);
  self->body.piece = piece;
  return piece;
}

static PpSpriteWish
get_wish (const Row *row)
{
  return (PpSpriteWish) { SCALE, 8, row->with_shadow, row->flipped };
}

static void
test_laid (gconstpointer data)
{
  const Row *row = data;
  const PpPlacement placement = { .x = 50, .y = 40, .rotation = row->rotation,
                                  .mirrored = row->mirrored };
  g_auto (Arrangement) self = { 0 };
  PpSpriteWish wish = get_wish (row);
  g_autoptr (PpPiece) piece = NULL;
  g_autoptr (PpSprite) sprite = NULL;
  cairo_surface_t *expected, *laid;

  piece = begin (&self, &placement, TRUE);
  sprite = pp_sprite_new (&self.body, pp_gallery_get (self.gallery, &self.piece), &wish);
  g_assert_nonnull (sprite);
  expected = draw_directly (&self, row, 300, 300);
  laid = lay (sprite, 299.6, 300.4);
  g_assert_cmpint (get_greatest_difference (expected, laid), <=, NEAR);
  cairo_surface_destroy (expected);
  cairo_surface_destroy (laid);
}

static void
test_suits (void)
{
  const PpPlacement placement = { .x = 50, .y = 40, .rotation = 30 };
  PpPlacement other = placement;
  PpSpriteWish wish = get_wish (&rows[1]);
  g_auto (Arrangement) self = { 0 };
  g_autoptr (PpPiece) piece = NULL;
  g_autoptr (PpSprite) sprite = NULL;
  PpBody body;

  piece = begin (&self, &placement, TRUE);
  sprite = pp_sprite_new (&self.body, NULL, &wish);
  body = self.body;
  body.placement = &other;
  other.x = 90;
  g_assert_true (pp_sprite_suits (sprite, &body, &wish));
  other.rotation = 31;
  g_assert_false (pp_sprite_suits (sprite, &body, &wish));
  other.rotation = 30;
  other.mirrored = TRUE;
  g_assert_false (pp_sprite_suits (sprite, &body, &wish));
  other.mirrored = FALSE;
  wish.top = 9;
  g_assert_false (pp_sprite_suits (sprite, &body, &wish));
}

static void
test_too_large (void)
{
  const PpPlacement placement = { .x = 50, .y = 40 };
  PpSpriteWish wish = { 150, 8, TRUE, FALSE };
  g_auto (Arrangement) self = { 0 };
  g_autoptr (PpPiece) piece = begin (&self, &placement, TRUE);

  g_assert_null (pp_sprite_new (&self.body, NULL, &wish));
}

/* All that a shadow darkens lies within the reach it is said to have. */
static void
test_reach (void)
{
  const PpPlacement placement = { .x = 50, .y = 40 };
  g_auto (Arrangement) self = { 0 };
  double reach = pp_draw_get_shadow_reach (20);
  cairo_surface_t *surface;
  const guint32 *pixels;
  cairo_t *cr;

  arrangement_init (&self, &placement, FALSE);
  surface = make_sheet (&cr);
  cairo_scale (cr, SCALE, SCALE);
  pp_draw_shadow (cr, &self.body, 20);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  pixels = (const guint32 *) (gconstpointer) cairo_image_surface_get_data (surface);
  for (int y = 0; y < SIDE; y++)
    for (int x = 0; x < SIDE; x++)
      {
        PpBox box = pp_box_grow (self.body.box, reach + 1 / SCALE);
        gboolean inside = x / SCALE >= box.x0 && x / SCALE <= box.x1 && y / SCALE >= box.y0
                          && y / SCALE <= box.y1;

        if (!inside)
          g_assert_cmphex (pixels[y * SIDE + x], ==, 0xffffffffu);
      }
  cairo_surface_destroy (surface);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/sprite/laid/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_laid);
    }
  g_test_add_func ("/sprite/suits", test_suits);
  g_test_add_func ("/sprite/too-large", test_too_large);
  g_test_add_func ("/sprite/shadow-reach", test_reach);
  return g_test_run ();
}
