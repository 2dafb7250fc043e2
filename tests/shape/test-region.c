/* test-region.c: overlay, distance and inset against published and exact values.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/tolerance.h"
#include "rings.h"
#include "shape/polygon.h"
#include "shape/region.h"

/* Shapes: JTS is the test data of the JTS topology suite (general/TestOverlayAA and
 * TestNGOverlayA), OGC the "Blue Lake" data of the Simple Features conformance tests. The areas
 * are exact, by slab decomposition, computed without any geometry library. */
typedef struct
{
  const char *name;
  const char *a;
  const char *b;
  double      area_a;
  double      area_b;
  double      common;
} Overlay;

static const Overlay overlays[] = {
  { "jts/simple", "10 10, 100 10, 100 100, 10 100", "50 50, 200 50, 200 200, 50 200", 8100, 22500,
    2500 },
  { "jts/a-with-hole", "20 20, 20 160, 160 160, 160 20; 140 140, 40 140, 40 40, 140 40",
    "80 100, 220 100, 220 240, 80 240", 9600, 19600, 2400 },
  { "jts/two", "20 340, 330 380, 50 40", "210 320, 140 270, 0 270, 140 220", 47100, 5250, 5115 },
  { "jts/line-and-point",
    "0 0, 110 0, 110 60, 40 60, 180 140, 40 220, 110 260, 0 260",
    "220 0, 110 0, 110 60, 180 60, 40 140, 180 220, 110 260, 220 260", 27200, 27200, 5600 },
  { "jts/inside", "10 10, 10 30, 30 30, 30 10", "15 25, 15 15, 25 15", 400, 50, 50 },
  { "jts/shared-edge", "10 10, 10 30, 30 30, 30 10", "50 30, 50 10, 30 10, 30 30", 400, 400, 0 },
  { "jts/touching-point", "10 10, 10 30, 30 30, 30 10", "50 30, 30 20, 50 10", 400, 200, 0 },
  { "jts/notch", "10 10, 10 30, 30 30, 30 10", "40 25, 30 25, 30 20, 35 20, 30 15, 40 15", 400,
    87.5, 0 },
  { "ogc/lake-and-island", "52 18, 66 23, 73 9, 48 6; 59 18, 67 18, 67 13, 59 13",
    "59 18, 67 18, 67 13, 59 13", 219.5, 40, 0 },
  { "apart", "0 0, 1 0, 1 1, 0 1", "5 5, 6 5, 6 6, 5 6", 1, 1, 0 },
};

static void
test_overlay (gconstpointer data)
{
  const Overlay *row = data;
  g_autoptr (PpOutline) outline_a = test_outline (row->a);
  g_autoptr (PpOutline) outline_b = test_outline (row->b);
  g_autoptr (PpRegion) a = pp_region_new (outline_a);
  g_autoptr (PpRegion) b = pp_region_new (outline_b);
  PpRegion *both[] = { a, b };
  g_autoptr (PpRegion) all = pp_region_union (both, 2);
  g_autoptr (PpRegion) left = pp_region_difference (a, b);

  g_assert_cmpfloat_with_epsilon (pp_region_get_area (a), row->area_a, 1e-9);
  g_assert_cmpfloat_with_epsilon (pp_region_get_area (b), row->area_b, 1e-9);
  g_assert_cmpfloat_with_epsilon (pp_region_overlap (a, b), row->common, 1e-9);
  g_assert_cmpfloat_with_epsilon (pp_region_overlap (b, a), row->common, 1e-9);
  g_assert_cmpfloat_with_epsilon (pp_region_get_area (all),
                                  row->area_a + row->area_b - row->common, 1e-9);
  g_assert_cmpfloat_with_epsilon (pp_region_get_area (left), row->area_a - row->common, 1e-9);
}

/* OGC conformance item T46: point (44 31) to Ashton is 12 exactly. */
/* They share a line of their borders, and below it an area: the line is no part of the region. */
static void
test_touching (void)
{
  g_autoptr (PpOutline) outline_a = test_outline ("0 0, 10 0, 10 10, 0 10");
  g_autoptr (PpOutline) outline_b = test_outline ("10 0, 20 0, 20 10, 5 10, 5 5, 10 5");
  g_autoptr (PpRegion) a = pp_region_new (outline_a);
  g_autoptr (PpRegion) b = pp_region_new (outline_b);
  g_autoptr (PpRegion) common = pp_region_intersection (a, b);
  PpBox box = pp_region_get_box (common);

  g_assert_cmpfloat_with_epsilon (pp_region_get_area (common), 25, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.y0, 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.x0, 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (pp_region_border_distance (common, a), 0, 1e-9);
}

static void
test_point_distance (void)
{
  g_autoptr (PpOutline) outline = test_outline ("62 48, 84 48, 84 30, 56 30, 56 34");
  g_autoptr (PpRegion) ashton = pp_region_new (outline);

  g_assert_cmpfloat_with_epsilon (pp_region_point_to_border (ashton, (PpPoint) { 44, 31 }), 12,
                                  1e-12);
  g_assert_false (pp_region_contains (ashton, (PpPoint) { 44, 31 }));
  g_assert_true (pp_region_contains (ashton, (PpPoint) { 70, 40 }));
  g_assert_true (pp_region_contains (ashton, (PpPoint) { 84, 40 }));
}

static void
test_distances (void)
{
  g_autoptr (PpOutline) outer = test_outline ("0 0, 10 0, 10 10, 0 10");
  g_autoptr (PpOutline) inner = test_outline ("3 4, 5 4, 5 5, 3 5");
  g_autoptr (PpOutline) away = test_outline ("13 14, 15 14, 15 16, 13 16");
  g_autoptr (PpRegion) a = pp_region_new (outer);
  g_autoptr (PpRegion) b = pp_region_new (inner);
  g_autoptr (PpRegion) c = pp_region_new (away);
  g_autoptr (PpRegion) none = pp_region_new_empty ();

  g_assert_cmpfloat (pp_region_border_distance (a, b), ==, 3);
  g_assert_cmpfloat (pp_region_border_distance (c, a), ==, 5);
  g_assert_true (isinf (pp_region_border_distance (a, none)));
  g_assert_cmpfloat (pp_region_overlap (a, none), ==, 0);
  g_assert_true (pp_box_is_empty (pp_region_get_box (none)));
}

/* Elementary geometry: a rectangle drawn in loses the distance on each side; an L loses a square
 * less a quarter disc more about its inner corner. */
static void
test_inset (void)
{
  g_autoptr (PpOutline) rectangle = test_outline ("0 0, 30 0, 30 20, 0 20");
  g_autoptr (PpOutline) angle = test_outline ("0 0, 20 0, 20 10, 10 10, 10 20, 0 20");
  g_autoptr (PpOutline) framed = test_outline ("0 0, 30 0, 30 30, 0 30; 12 12, 18 12, 18 18, 12 18");
  g_autoptr (PpRegion) a = pp_region_new (rectangle);
  g_autoptr (PpRegion) l = pp_region_new (angle);
  g_autoptr (PpRegion) f = pp_region_new (framed);
  g_autoptr (PpRegion) a3 = pp_region_inset (a, 3);
  g_autoptr (PpRegion) a10 = pp_region_inset (a, 10);
  g_autoptr (PpRegion) l3 = pp_region_inset (l, 3);
  g_autoptr (PpRegion) f3 = pp_region_inset (f, 3);

  g_assert_cmpfloat_with_epsilon (pp_region_get_area (a3), 24 * 14, 1e-9);
  g_assert_cmpfloat_with_epsilon (pp_region_get_area (a10), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (pp_region_get_area (l3),
                                  14 * 4 + 4 * 10 + (9 - G_PI / 4 * 9), 0.01);
  g_assert_cmpfloat_with_epsilon (pp_region_get_area (f3),
                                  24 * 24 - (36 + 4 * 6 * 3 + G_PI * 9), 0.04);
}

/* The inset by its definition: points on a grid, each asked for its distance to the border. */
static void
test_inset_brute (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);

  for (guint k = 0; k < 12; k++)
    {
      PpPoint points[40];
      g_autoptr (PpOutline) outline = NULL;
      g_autoptr (PpRegion) region = NULL;
      g_autoptr (PpRegion) inset = NULL;

      for (guint i = 0; i < 40; i++)
        {
          double r = g_rand_double_range (rand, 15, 30), t = 2 * G_PI * i / 40;

          points[i] = (PpPoint) { r * cos (t), r * sin (t) };
        }
      outline = pp_outline_new_ring (points, 40);
      region = pp_region_new (outline);
      inset = pp_region_inset (region, 3);
      for (double x = -30; x < 30; x += 0.77)
        for (double y = -30; y < 30; y += 0.77)
          {
            PpPoint p = { x, y };
            double distance = pp_region_point_to_border (region, p);

            if (fabs (distance - 3) > 2 * PP_CURVE_TOLERANCE)
              g_assert_cmpint (pp_region_contains (inset, p), ==,
                               pp_region_contains (region, p) && distance > 3);
          }
    }
}

static void
test_disc (void)
{
  g_autoptr (PpRegion) disc = pp_region_new_disc ((PpPoint) { 5, 6 }, 4);
  PpBox box = pp_region_get_box (disc);

  g_assert_cmpfloat_with_epsilon (pp_region_get_area (disc), G_PI * 16, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.x0, 1, PP_CURVE_TOLERANCE);
  g_assert_cmpfloat_with_epsilon (box.y1, 10, PP_CURVE_TOLERANCE);
}

static void
test_box (void)
{
  g_autoptr (PpRegion) box = pp_region_new_box ((PpBox) { 5, 6, 9, 16 });
  g_autoptr (PpRegion) none = pp_region_new_box (pp_box_empty ());
  g_autoptr (PpRegion) line = pp_region_new_box ((PpBox) { 5, 6, 5, 16 });

  g_assert_cmpfloat (pp_region_get_area (box), ==, 40);
  g_assert_cmpfloat (pp_region_get_box (box).x0, ==, 5);
  g_assert_cmpfloat (pp_region_get_box (box).y1, ==, 16);
  g_assert_true (pp_region_contains (box, (PpPoint) { 9, 6 }));
  g_assert_cmpfloat (pp_region_get_area (none), ==, 0);
  g_assert_true (pp_box_is_empty (pp_region_get_box (none)));
  g_assert_cmpfloat (pp_region_overlap (line, box), ==, 0);
}

static void
add_area (const PpOutline *polygon,
          gpointer         data)
{
  *(double *) data += pp_outline_area (polygon);
}

static void
test_foreach (void)
{
  g_autoptr (PpOutline) bar = test_outline ("0 0, 30 0, 30 10, 0 10");
  g_autoptr (PpOutline) cut = test_outline ("10 -5, 20 -5, 20 15, 10 15");
  g_autoptr (PpRegion) a = pp_region_new (bar);
  g_autoptr (PpRegion) b = pp_region_new (cut);
  g_autoptr (PpRegion) halves = pp_region_difference (a, b);
  double area = 0;

  pp_region_foreach (halves, add_area, &area);
  g_assert_cmpfloat_with_epsilon (area, 200, 1e-9);
}

static gpointer
use_in_thread (gpointer data)
{
  PpRegion *region = data;

  return GINT_TO_POINTER (pp_region_contains (region, (PpPoint) { 1, 1 }));
}

/* A region made, asked and freed by different threads, the maker's context long gone. */
static void
test_threads (void)
{
  g_autoptr (PpOutline) outline = test_outline ("0 0, 2 0, 2 2, 0 2");
  PpRegion *region = pp_region_new (outline);

  for (guint i = 0; i < 4; i++)
    {
      GThread *thread = g_thread_new ("region", use_in_thread, region);

      g_assert_true (GPOINTER_TO_INT (g_thread_join (thread)));
    }
  pp_region_unref (region);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (overlays); i++)
    {
      g_autofree char *path = g_strconcat ("/region/overlay/", overlays[i].name, NULL);

      g_test_add_data_func (path, &overlays[i], test_overlay);
    }
  g_test_add_func ("/region/touching", test_touching);
  g_test_add_func ("/region/point-distance", test_point_distance);
  g_test_add_func ("/region/distances", test_distances);
  g_test_add_func ("/region/inset", test_inset);
  g_test_add_func ("/region/inset/brute", test_inset_brute);
  g_test_add_func ("/region/disc", test_disc);
  g_test_add_func ("/region/box", test_box);
  g_test_add_func ("/region/foreach", test_foreach);
  g_test_add_func ("/region/threads", test_threads);
  return g_test_run ();
}
