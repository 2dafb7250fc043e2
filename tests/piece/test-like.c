/* test-like.c: a piece like another is the same shape, larger.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What similar shapes are is Euclid's (Elements VI, 19 and XI, 33): areas go by the square.
 */
#include "piece/like.h"

#include "art/art.h"
#include "panel/panel-error.h"
#include "piece/measures.h"
#include "shape/height.h"
#include "shape/polygon.h"

#include <string.h>

#define CLOSE 1e-9
#define BOX_CLOSE 1e-4 /* mm: librsvg holds boxes in single precision */

static void
assert_close (double a,
              double b)
{
  g_assert_cmpfloat_with_epsilon (a, b, CLOSE * (1 + fabs (a)));
}

/* Its box in mm, and how dark a raster of it is at 4 dots a mm of the piece it was made from. */
static double
paint (GBytes *bytes,
       double  scale,
       PpBox  *box)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpArt) art = pp_art_new (bytes, &error);
  cairo_surface_t *surface;
  cairo_t *cr;
  double covered = 0;

  g_assert_no_error (error);
  *box = pp_art_get_box (art);
  surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 320, 480);
  cr = cairo_create (surface);
  cairo_translate (cr, 160, 240);
  cairo_scale (cr, 4 / scale, 4 / scale);
  pp_art_draw (art, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < 480; y++)
    for (int x = 0; x < 320; x++)
      covered += cairo_image_surface_get_data (surface)[y * cairo_image_surface_get_stride (surface)
                                                        + x] / 255.0;
  cairo_surface_destroy (surface);
  return covered;
}

static PpPiece *
make (PpRecipe recipe,
      PpTouch  touch)
{
  PpMeasures measures = pp_measures_draft (recipe);
  g_autoptr (GError) error = NULL;
  PpPiece *piece;

  measures.lying.touch = touch;
  measures.lying.gap = 6;
  measures.weight = 30;
  piece = pp_measures_make (&measures, &error);
  g_assert_no_error (error);
  return piece;
}

static void
check_heights (const PpPiece *piece,
               const PpPiece *like,
               double         scale)
{
  PpHeights one, other;

  pp_heights_init (&one, piece);
  pp_heights_init (&other, like);
  for (int i = -5; i <= 5; i++)
    for (int j = -5; j <= 5; j++)
      {
        PpPoint p = { 3.7 * i, 4.3 * j };
        PpPoint q = { p.x * scale, p.y * scale };
        double rises = pp_heights_top (&one, p) - piece->thickness;

        assert_close (pp_heights_underside (&other, q), scale * pp_heights_underside (&one, p));
        assert_close (pp_heights_top (&other, q) - like->thickness, scale * rises);
      }
}

static void
check_like (PpRecipe recipe,
            PpTouch  touch,
            double   scale)
{
  g_autoptr (PpPiece) piece = make (recipe, touch);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) like = pp_like_make (piece, "Garden wall", scale, &error);
  PpBox box, like_box;
  double covered, like_covered;

  g_assert_no_error (error);
  g_assert_cmpstr (like->name, ==, "Garden wall");
  g_assert_true (isnan (like->mass));
  assert_close (like->thickness, piece->thickness);
  assert_close (pp_outline_area (like->outline),
                scale * scale * pp_outline_area (piece->outline));
  check_heights (piece, like, scale);
  covered = paint (piece->art, 1, &box);
  like_covered = paint (like->art, scale, &like_box);
  g_assert_cmpfloat_with_epsilon (like_box.x0, scale * box.x0, BOX_CLOSE);
  g_assert_cmpfloat_with_epsilon (like_box.y1, scale * box.y1, BOX_CLOSE);
  g_assert_cmpfloat (covered, >, 1000);
  g_assert_cmpfloat (fabs (like_covered - covered), <, 0.01 * covered);
}

static void
test_similar (void)
{
  for (guint touch = PP_TOUCH_ALL; touch <= PP_TOUCH_TIP; touch++)
    {
      check_like (PP_RECIPE_LEAF, (PpTouch) touch, 1.5);
      check_like (PP_RECIPE_RAY, (PpTouch) touch, 0.6);
    }
}

static void
test_again (void)
{
  g_autoptr (PpPiece) piece = make (PP_RECIPE_BUD, PP_TOUCH_RIM);
  g_autoptr (PpPiece) larger = pp_like_make (piece, NULL, 2.5, NULL);
  g_autoptr (PpPiece) back = pp_like_make (larger, NULL, 0.4, NULL);
  PpBox box, back_box;
  double covered = paint (piece->art, 1, &box);

  g_assert_cmpstr (back->name, ==, piece->name);
  assert_close (pp_outline_area (back->outline), pp_outline_area (piece->outline));
  g_assert_cmpfloat (fabs (paint (back->art, 1, &back_box) - covered), <, 0.01 * covered);
  g_assert_cmpfloat_with_epsilon (back_box.x1, box.x1, BOX_CLOSE);
}

static void
test_same_size (void)
{
  g_autoptr (PpPiece) piece = make (PP_RECIPE_CUP, PP_TOUCH_MIDDLE);
  g_autoptr (PpPiece) like = pp_like_make (piece, "Mallow", 1, NULL);

  g_assert_true (like->art == piece->art);
  assert_close (like->mass, 30);
}

static void
test_art_left_out (void)
{
  g_autoptr (PpPiece) piece = make (PP_RECIPE_ROD, PP_TOUCH_ALL);
  g_autoptr (GBytes) bad = g_bytes_new_static ("<svg><script/></svg>", 20);
  PpPiece draft = *piece;
  g_autoptr (PpPiece) hostile = NULL;
  g_autoptr (PpPiece) like = NULL;

  draft.art = bad;
  hostile = pp_piece_new (&draft, NULL);
  like = pp_like_make (hostile, NULL, 2, NULL);
  g_assert_null (like->art);
}

/* A root without a viewBox: 20 mm wide, whose unit is a CSS pixel; and one with odd attributes. */
static void
test_roots (void)
{
  static const char *const roots[] = {
    "<?xml version='1.0'?><svg xmlns='http://www.w3.org/2000/svg' width='20mm' height='20mm'>"
    "<rect width='37.8' height='37.8' x='19' y='19'/></svg>",
    "<s:svg xmlns:s='http://www.w3.org/2000/svg' s:id='a&gt;b' x='3' width='90' height='1' "
    "viewBox='-10 -10 20 20'><s:rect width='10' height='10' x='-5' y='-5'/></s:svg>",
  };
  g_autoptr (PpPiece) piece = make (PP_RECIPE_ROD, PP_TOUCH_ALL);

  for (guint i = 0; i < G_N_ELEMENTS (roots); i++)
    {
      g_autoptr (GBytes) art = g_bytes_new_static (roots[i], strlen (roots[i]));
      g_autoptr (PpPiece) whole = NULL;
      g_autoptr (PpPiece) like = NULL;
      PpPiece draft = *piece;
      PpBox box;
      double covered = paint (art, 1, &box);

      draft.art = art;
      whole = pp_piece_new (&draft, NULL);
      like = pp_like_make (whole, NULL, 2, NULL);
      g_assert_cmpfloat (fabs (covered - 1600), <, 20);
      g_assert_cmpfloat (fabs (paint (like->art, 2, &box) - covered), <, 20);
      g_assert_cmpfloat_with_epsilon (pp_box_width (box), 40, BOX_CLOSE);
    }
}

static void
test_refused (void)
{
  static const double scales[] = { 0, -1, NAN, INFINITY, 0.04, 21 };
  g_autoptr (PpPiece) piece = make (PP_RECIPE_ROD, PP_TOUCH_ALL);

  for (guint i = 0; i < G_N_ELEMENTS (scales); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (pp_like_make (piece, NULL, scales[i], &error));
      g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/like/similar", test_similar);
  g_test_add_func ("/like/again", test_again);
  g_test_add_func ("/like/same-size", test_same_size);
  g_test_add_func ("/like/art-left-out", test_art_left_out);
  g_test_add_func ("/like/roots", test_roots);
  g_test_add_func ("/like/refused", test_refused);
  return g_test_run ();
}
