/* test-piece-picture.c: how a piece lies in its compartment, and its picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/piece-picture.h"

#include "shape/place.h"

#include "small-panel.h"

#define WIDTH 200.0 /* px of the room for a picture */
#define HEIGHT 80.0
#define LEAST 24.0
#define ROUNDING 1e-9 /* of doubles, in px or mm */

/* `width` x `height` mm about its origin. */
static PpPiece *
make_piece (double width,
            double height)
{
  const PpPoint corners[] = { { -width / 2, -height / 2 }, { width / 2, -height / 2 },
                              { width / 2, height / 2 }, { -width / 2, height / 2 } };
  g_autoptr (PpPiece) square = small_piece ("cornflower", NULL);
  g_autoptr (PpOutline) outline = pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
  PpPiece draft = *square;

  draft.outline = outline;
  return pp_piece_new (&draft, NULL);
}

/* A usual tray: flowers of 50 to 75 mm, a bud, a leaf. */
static PpPieceSpan
make_span (void)
{
  static const double sizes[][2] = { { 50, 50 }, { 75, 75 }, { 60, 60 }, { 12, 30 }, { 48, 130 } };
  g_autoptr (GPtrArray) tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    g_ptr_array_add (tray, make_piece (sizes[i][0], sizes[i][1]));
  return pp_piece_span_of_tray (tray);
}

static void
test_lie (void)
{
  const double common = HEIGHT / 75; /* the largest flower just has room */
  const struct
  {
    double   width;
    double   height;
    double   scale;
    gboolean turned;
  } rows[] = {
    { 75, 75, common, FALSE },
    { 50, 50, common, FALSE },
    { 12, 30, common, FALSE },
    { 48, 130, common, TRUE },
    { 130, 48, common, FALSE },      /* lies already */
    { 10, 80, common, TRUE },        /* too high to stand by a little */
    { 6, 400, WIDTH / 400, TRUE },   /* longer than there is room */
    { 300, 290, HEIGHT / 290, FALSE },
    { 4, 5, LEAST / 5, FALSE },      /* too small to be told apart */
    { 0.5, 0.5, LEAST / 0.5, FALSE },
    { 3000, 3000, HEIGHT / 3000, FALSE },
  };
  PpPieceSpan span = make_span ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (PpPiece) piece = make_piece (rows[i].width, rows[i].height);
      PpPieceLie lie = pp_piece_lie (piece, span, WIDTH, HEIGHT, LEAST);

      g_assert_cmpfloat_with_epsilon (lie.scale, rows[i].scale, ROUNDING);
      g_assert_cmpint (lie.turned, ==, rows[i].turned);
      g_assert_cmpfloat (pp_box_width (lie.box), <=, WIDTH + ROUNDING);
      g_assert_cmpfloat (pp_box_height (lie.box), <=, HEIGHT + ROUNDING);
    }
}

/* One very large piece has no say in the scale of the others. */
static void
test_unusual (void)
{
  static const double sizes[] = { 50, 50, 50, 3000 };
  g_autoptr (GPtrArray) tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  PpPieceSpan span;

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    g_ptr_array_add (tray, make_piece (sizes[i], sizes[i]));
  span = pp_piece_span_of_tray (tray);
  g_assert_cmpfloat (span.across, ==, 100);
  g_assert_cmpfloat (span.along, ==, 100);
}

/* A place on the piece, drawn where pp_frame_to_panel() has it for the same turn, is found again. */
static void
test_grip (void)
{
  static const double sizes[][2] = { { 50, 50 }, { 48, 130 }, { 6, 184 } };
  PpPieceSpan span = make_span ();

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (PpPiece) piece = make_piece (sizes[i][0], sizes[i][1]);
      PpPieceLie lie = pp_piece_lie (piece, span, WIDTH, HEIGHT, LEAST);
      PpPlacement placement = { .rotation = lie.turned ? 90 : 0 };
      PpFrame frame = pp_frame_of (&placement);
      PpPoint own = { 0.3 * sizes[i][0], -0.45 * sizes[i][1] };
      PpPoint at = pp_frame_to_panel (&frame, own);
      PpPoint found = pp_piece_lie_to_piece (&lie, piece, (PpPoint) { at.x * lie.scale,
                                                                      at.y * lie.scale });

      g_assert_cmpfloat_with_epsilon (found.x, own.x, ROUNDING);
      g_assert_cmpfloat_with_epsilon (found.y, own.y, ROUNDING);
    }
}

static void
test_grip_beside (void)
{
  static const struct
  {
    PpPoint px;
    PpPoint expected;
  } rows[] = {
    { { 100, 0 }, { 25, 0 } },
    { { -100, -100 }, { -25, -25 } },
    { { 0, 100 }, { 0, 25 } },
    { { 0, 0 }, { 0, 0 } },
  };
  g_autoptr (PpPiece) piece = make_piece (50, 50);
  PpPieceLie lie = { .scale = 1, .box = { -25, -25, 25, 25 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      PpPoint found = pp_piece_lie_to_piece (&lie, piece, rows[i].px);

      g_assert_cmpfloat_with_epsilon (found.x, rows[i].expected.x, ROUNDING);
      g_assert_cmpfloat_with_epsilon (found.y, rows[i].expected.y, ROUNDING);
    }
}

static guint
get_alpha (cairo_surface_t *picture,
           double           x,
           double           y)
{
  const guint32 *row;

  cairo_surface_flush (picture);
  row = (const guint32 *) (gconstpointer)
        (cairo_image_surface_get_data (picture)
         + (gsize) y * (gsize) cairo_image_surface_get_stride (picture));
  return row[(gsize) x] >> 24;
}

/* The piece is opaque as far as it goes from its origin, and turned when it should be. */
static void
test_picture (void)
{
  g_autoptr (PpPiece) piece = make_piece (10, 40);

  for (int factor = 1; factor <= 2; factor++)
    for (int turned = 0; turned <= 1; turned++)
      {
        PpPoint origin;
        cairo_surface_t *picture = pp_piece_picture (piece, NULL, 2, turned, 0, factor, &origin);
        double along_x = turned ? 37 : 0, along_y = turned ? 0 : 37; /* px; its half is 40 */

        g_assert_cmpuint (get_alpha (picture, (origin.x + along_x) * factor,
                                     (origin.y + along_y) * factor), ==, 255);
        g_assert_cmpuint (get_alpha (picture, (origin.x - along_x) * factor,
                                     (origin.y - along_y) * factor), ==, 255);
        g_assert_cmpuint (get_alpha (picture, 0, 0), ==, 0);
        g_assert_cmpint (cairo_image_surface_get_width (picture) % factor, ==, 0);
        cairo_surface_destroy (picture);
      }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/piece-picture/lie", test_lie);
  g_test_add_func ("/piece-picture/unusual", test_unusual);
  g_test_add_func ("/piece-picture/grip", test_grip);
  g_test_add_func ("/piece-picture/grip-beside", test_grip_beside);
  g_test_add_func ("/piece-picture/picture", test_picture);
  return g_test_run ();
}
