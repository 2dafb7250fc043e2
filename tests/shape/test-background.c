/* test-background.c: exact areas of the background's shapes, and the polygons that stand for them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/tolerance.h"
#include "rings.h"
#include "shape/background.h"
#include "shape/polygon.h"

/* Handbook formulas: rounded rectangle wh - (4 - π)r², ellipse πab; semi-ellipse centroid 4b/(3π)
 * from its base (worked out anew). */
typedef struct
{
  const char       *name;
  PpBackgroundShape shape;
  double            width;
  double            height;
  double            corner;
  double            area;
  PpPoint           centroid;
} Shape;

static const Shape shapes[] = {
  { "square-corners", PP_SHAPE_RECTANGLE, 300, 420, 0, 126000, { 150, 210 } },
  { "round-corners", PP_SHAPE_RECTANGLE, 300, 420, 4, 125986.26548245743, { 150, 210 } },
  { "all-corner", PP_SHAPE_RECTANGLE, 40, 40, 20, 1256.6370614359173, { 20, 20 } },
  { "ellipse", PP_SHAPE_ELLIPSE, 60, 40, 0, 1884.9555921538759, { 30, 20 } },
  /* Rectangle 200 x 300 under half an ellipse of half axes 100 and 100. */
  { "arch", PP_SHAPE_ARCH, 200, 400, 0, 60000 + 15707.963267948966,
    { 100, (60000 * 250 + 15707.963267948966 * (100 - 42.441318157838759)) / 75707.963267948966 } },
};

static PpBackground *
background_of (const Shape *row)
{
  PpBackground draft = pp_background_draft ();
  g_autoptr (GError) error = NULL;
  PpBackground *background;

  draft.shape = row->shape;
  draft.width = row->width;
  draft.height = row->height;
  draft.corner_radius = row->corner;
  draft.thickness = 6;
  background = pp_background_new (&draft, &error);
  g_assert_no_error (error);
  return background;
}

static void
test_shape (gconstpointer data)
{
  const Shape *row = data;
  g_autoptr (PpBackground) background = background_of (row);
  g_autoptr (PpOutline) outline = pp_background_make_outline (background);
  PpPoint centroid = pp_background_get_centroid (background);
  PpBox box = pp_outline_get_box (outline);

  g_assert_cmpfloat_with_epsilon (pp_background_get_area (background), row->area, 1e-9);
  g_assert_cmpfloat_with_epsilon (centroid.x, row->centroid.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (centroid.y, row->centroid.y, 1e-9);
  g_assert_true (pp_outline_is_simple (outline, NULL, NULL));
  g_assert_cmpfloat_with_epsilon (pp_outline_area (outline), row->area,
                                  PP_CURVE_TOLERANCE * 2 * (row->width + row->height));
  g_assert_cmpfloat_with_epsilon (box.x0, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.y1, row->height, 1e-9);
}

/* Every side of the polygon for an ellipse stays within the tolerance of the curve. */
static void
test_tolerance (void)
{
  const Shape row = { "", PP_SHAPE_ELLIPSE, 500, 300, 0, 0, { 0, 0 } };
  g_autoptr (PpBackground) background = background_of (&row);
  g_autoptr (PpOutline) outline = pp_background_make_outline (background);
  guint n;
  const PpPoint *p = pp_outline_get_ring (outline, 0, &n);

  for (guint i = 0; i + 1 < n; i++)
    {
      double x = (p[i].x + p[i + 1].x) / 2 - 250, y = (p[i].y + p[i + 1].y) / 2 - 150;
      double level = hypot (x / 250, y / 150);
      double steepness = hypot (x / (250 * 250), y / (150 * 150)) / level;

      g_assert_cmpfloat (fabs (level - 1) / steepness, <=, PP_CURVE_TOLERANCE);
    }
}

static void
test_free (void)
{
  g_autoptr (PpOutline) outline = test_outline ("-5 -5, 25 0, 20 30");
  PpBackground draft = pp_background_draft ();
  g_autoptr (PpBackground) background = NULL;
  g_autoptr (PpOutline) same = NULL;

  draft.shape = PP_SHAPE_FREE;
  draft.thickness = 4;
  draft.outline = outline;
  background = pp_background_new (&draft, NULL);
  g_assert_nonnull (background);
  same = pp_background_make_outline (background);
  g_assert_true (same == outline);
  g_assert_cmpfloat (background->width, ==, 30);
  g_assert_cmpfloat (background->height, ==, 35);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    {
      g_autofree char *path = g_strconcat ("/background/", shapes[i].name, NULL);

      g_test_add_data_func (path, &shapes[i], test_shape);
    }
  g_test_add_func ("/background/tolerance", test_tolerance);
  g_test_add_func ("/background/free", test_free);
  return g_test_run ();
}
