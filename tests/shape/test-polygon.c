/* test-polygon.c: areas, centroids, widths and hulls against published values.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "rings.h"
#include "shape/polygon.h"

/* Sources: ES is "Engineering Statics: Open and Interactive", chapter 7; JTS is
 * general/TestCentroid.xml of the JTS topology suite; OGC is the "Blue Lake" data of the Simple
 * Features conformance tests. */
typedef struct
{
  const char *name;
  const char *outline;
  double      area;
  double      x;
  double      y;
  double      tolerance;
} Centroid;

static const Centroid centroids[] = {
  { "es/rectangle", "0 0, 6 0, 6 4, 0 4", 24, 3, 2, 1e-12 },
  { "es/right-triangle", "0 0, 6 0, 0 3", 9, 2, 1, 1e-12 },
  /* Trapezoid, base 5, top 3, height 2, left side upright: A = (a+b)h/2,
   * x = (a²+ab+b²)/(3(a+b)), y = h(2a+b)/(3(a+b)). */
  { "es/trapezoid", "0 0, 5 0, 3 2, 0 2", 8, 49.0 / 24, 22.0 / 24, 1e-12 },
  /* Areas 18 at (1.5, 5) and 14 at (3.5, 1) give (2.375, 3.25). */
  { "es/l-shape", "0 0, 7 0, 7 2, 3 2, 3 8, 0 8", 32, 2.375, 3.25, 1e-12 },
  { "jts/one-hole", "0 200, 200 200, 200 0, 0 0; 20 180, 80 180, 80 20, 20 20", 30400,
    115.78947368421052, 100, 1e-9 },
  { "jts/corner-hole", "0 0, 200 0, 200 200, 0 200; 20 140, 60 140, 60 180, 20 180", 38400,
    102.5, 97.5, 1e-9 },
  { "jts/two-holes",
    "0 0, 200 0, 200 200, 0 200; 20 20, 60 20, 60 60, 20 60; 140 140, 180 140, 180 180, 140 180",
    36800, 100, 100, 1e-9 },
  /* A ring without area: the middle of its box, no NaN. */
  { "jts/degenerate", "0 0, 200 0, 200 0, 0 0", 0, 100, 0, 1e-12 },
  { "ogc/goose-island", "67 13, 67 18, 59 18, 59 13", 40, 63, 15.5, 1e-12 },
  { "far-away", "1e6 1e6, 1000004 1e6, 1000004 1000003, 1e6 1000003", 12, 1000002, 1000001.5,
    1e-6 },
};

static void
test_centroid (gconstpointer data)
{
  const Centroid *row = data;
  g_autoptr (PpOutline) outline = test_outline (row->outline);
  PpPoint centroid = pp_outline_centroid (outline);

  g_assert_cmpfloat_with_epsilon (pp_outline_area (outline), row->area, row->tolerance);
  g_assert_cmpfloat_with_epsilon (centroid.x, row->x, row->tolerance);
  g_assert_cmpfloat_with_epsilon (centroid.y, row->y, row->tolerance);
}

/* Regular polygons of circumradius 1: area n/2·sin(2π/n) (a handbook's formula). */
static void
test_regular (void)
{
  const struct { guint n; double area; } rows[]
      = { { 5, 2.37764 }, { 6, 2.59808 }, { 8, 2.82843 }, { 12, 3.0 } };

  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      PpPoint points[12];
      g_autoptr (PpOutline) outline = NULL;

      for (guint i = 0; i < rows[k].n; i++)
        points[i] = (PpPoint) { cos (2 * G_PI * i / rows[k].n), sin (2 * G_PI * i / rows[k].n) };
      outline = pp_outline_new_ring (points, rows[k].n);
      g_assert_cmpfloat_with_epsilon (pp_outline_area (outline), rows[k].area, 1e-5);
    }
}

typedef struct
{
  const char *name;
  const char *outline;
  double      width;
  double      length;
} Width;

/* Elementary geometry: the width of a triangle is its least height. */
static const Width widths[] = {
  { "rectangle", "0 0, 6 0, 6 4, 0 4", 4, 6 },
  { "turned-square", "0 -5, 5 0, 0 5, -5 0", 7.0710678118654755, 10 },
  { "right-triangle", "0 0, 4 0, 0 3", 2.4, 4 },
  { "needle", "0 0, 100 0, 50 0.001", 0.001, 100 },
  { "dent-does-not-count", "0 0, 6 0, 3 2, 6 4, 0 4", 4, 6 },
};

static void
test_width (gconstpointer data)
{
  const Width *row = data;
  g_autoptr (PpOutline) outline = test_outline (row->outline);

  g_assert_cmpfloat_with_epsilon (pp_outline_length (outline), row->length, 1e-12);
  g_assert_cmpfloat_with_epsilon (pp_outline_width (outline), row->width, 1e-12);
}

/* The width by its definition, in steps of a hundredth of a degree. */
static double
brute_width (const PpOutline *outline)
{
  guint n;
  const PpPoint *p = pp_outline_get_ring (outline, 0, &n);
  double least = INFINITY;

  for (guint k = 0; k < 18000; k++)
    {
      double t = k * G_PI / 18000, low = INFINITY, high = -INFINITY;

      for (guint i = 0; i < n; i++)
        {
          double at = p[i].x * cos (t) + p[i].y * sin (t);

          low = fmin (low, at);
          high = fmax (high, at);
        }
      least = fmin (least, high - low);
    }
  return least;
}

static PpOutline *
random_star (GRand *rand,
             guint  n)
{
  g_autofree PpPoint *points = g_new (PpPoint, n);

  for (guint i = 0; i < n; i++)
    {
      double r = g_rand_double_range (rand, 5, 40), t = 2 * G_PI * i / n;

      points[i] = (PpPoint) { r * cos (t), 1.7 * r * sin (t) };
    }
  return pp_outline_new_ring (points, n);
}

static void
test_width_brute (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);

  for (guint k = 0; k < 40; k++)
    {
      g_autoptr (PpOutline) outline = random_star (rand, 3 + k);

      g_assert_cmpfloat_with_epsilon (pp_outline_width (outline), brute_width (outline), 0.02);
      g_assert_cmpfloat (pp_outline_width (outline), <=, brute_width (outline) + 1e-9);
    }
}

static void
test_hull (void)
{
  PpPoint grid[25], hull[25];
  PpPoint same[] = { { 1, 1 }, { 1, 1 }, { 1, 1 } };
  PpPoint line[] = { { 0, 0 }, { 2, 2 }, { 1, 1 }, { 0, 0 } };

  for (int i = 0; i < 25; i++)
    grid[i] = (PpPoint) { i % 5, i / 5 };
  g_assert_cmpuint (pp_convex_hull (grid, 25, hull), ==, 4);
  g_assert_cmpfloat (pp_hull_margin (hull, 4, (PpPoint) { 1, 2 }), ==, 1);
  g_assert_cmpfloat (pp_hull_margin (hull, 4, (PpPoint) { 4, 2 }), ==, 0);
  g_assert_cmpfloat (pp_hull_margin (hull, 4, (PpPoint) { 7, 8 }), ==, -5);
  g_assert_cmpuint (pp_convex_hull (same, 3, hull), ==, 1);
  g_assert_cmpfloat (pp_hull_margin (hull, 1, (PpPoint) { 4, 5 }), ==, -5);
  g_assert_cmpuint (pp_convex_hull (line, 4, hull), ==, 2);
  g_assert_cmpfloat (pp_hull_margin (hull, 2, (PpPoint) { 1, 1 }), ==, 0);
  g_assert_cmpfloat_with_epsilon (pp_hull_margin (hull, 2, (PpPoint) { 2, 0 }), -sqrt (2), 1e-12);
}

typedef struct
{
  const char *name;
  const char *outline;
  gboolean    simple;
} Simple;

static const Simple simples[] = {
  { "square", "0 0, 4 0, 4 4, 0 4", TRUE },
  { "with-hole", "0 0, 9 0, 9 9, 0 9; 2 2, 3 2, 3 3, 2 3", TRUE },
  { "repeated-position", "0 0, 4 0, 4 0, 4 4, 0 4", TRUE },
  { "bow-tie", "0 0, 4 4, 4 0, 0 4", FALSE },
  { "hole-outside", "0 0, 4 0, 4 4, 0 4; 6 6, 7 6, 7 7, 6 7", FALSE },
  { "hole-crosses", "0 0, 4 0, 4 4, 0 4; 2 2, 6 2, 6 3, 2 3", FALSE },
  { "spike", "0 0, 4 0, 8 0, 4 0, 4 4, 0 4", FALSE },
  { "all-one-line", "0 0, 4 0, 8 0", FALSE },
};

static void
test_simple (gconstpointer data)
{
  const Simple *row = data;
  g_autoptr (PpOutline) outline = test_outline (row->outline);
  g_autofree char *reason = NULL;
  PpPoint at = { NAN, NAN };

  g_assert_cmpint (pp_outline_is_simple (outline, &reason, &at), ==, row->simple);
  g_assert_cmpint (reason == NULL, ==, row->simple);
  g_assert_cmpint (isnan (at.x), ==, row->simple);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (centroids); i++)
    {
      g_autofree char *path = g_strconcat ("/polygon/centroid/", centroids[i].name, NULL);

      g_test_add_data_func (path, &centroids[i], test_centroid);
    }
  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      g_autofree char *path = g_strconcat ("/polygon/width/", widths[i].name, NULL);

      g_test_add_data_func (path, &widths[i], test_width);
    }
  for (guint i = 0; i < G_N_ELEMENTS (simples); i++)
    {
      g_autofree char *path = g_strconcat ("/polygon/simple/", simples[i].name, NULL);

      g_test_add_data_func (path, &simples[i], test_simple);
    }
  g_test_add_func ("/polygon/regular", test_regular);
  g_test_add_func ("/polygon/width/brute", test_width_brute);
  g_test_add_func ("/polygon/hull", test_hull);
  return g_test_run ();
}
