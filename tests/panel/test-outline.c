/* test-outline.c: turns, boxes and outlines.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/outline.h"
#include "panel/panel-error.h"

#include "small-panel.h"

#include <string.h>

/* libm is right to a unit in the last place; 720 degrees are 13 radians. */
#define NEARLY 1e-14

typedef struct
{
  double degrees;
  double sine;
  double cosine;
} Right;

static const Right rights[] = {
  { 0, 0, 1 },     { -0.0, 0, 1 },   { 90, 1, 0 },     { 180, 0, -1 },  { 270, -1, 0 },
  { 360, 0, 1 },   { 450, 1, 0 },    { 540, 0, -1 },   { 630, -1, 0 },  { 720, 0, 1 },
  { -90, -1, 0 },  { -180, 0, -1 },  { -270, 1, 0 },   { -360, 0, 1 },  { -450, -1, 0 },
  { -540, 0, -1 }, { -630, 1, 0 },   { 36000090, 1, 0 }, { 3.6e15, 0, 1 },
};

static void
test_right (gconstpointer data)
{
  const Right *row = data;
  double sine, cosine;

  pp_sincos_degrees (row->degrees, &sine, &cosine);
  g_assert_cmpfloat (sine, ==, row->sine);
  g_assert_cmpfloat (cosine, ==, row->cosine);
}

static void
test_other_turns (void)
{
  for (int degrees = -715; degrees < 720; degrees++)
    {
      double sine, cosine;

      pp_sincos_degrees (degrees, &sine, &cosine);
      g_assert_cmpfloat_with_epsilon (sine, sin (degrees * G_PI / 180), NEARLY);
      g_assert_cmpfloat_with_epsilon (cosine, cos (degrees * G_PI / 180), NEARLY);
    }
}

static void
assert_box (PpBox  box,
            double x0,
            double y0,
            double x1,
            double y1)
{
  g_assert_cmpfloat (box.x0, ==, x0);
  g_assert_cmpfloat (box.y0, ==, y0);
  g_assert_cmpfloat (box.x1, ==, x1);
  g_assert_cmpfloat (box.y1, ==, y1);
}

static void
test_empty_box (void)
{
  PpBox empty = pp_box_empty ();
  PpBox box = { 1, 2, 5, 8 };

  g_assert_true (pp_box_is_empty (empty));
  g_assert_cmpfloat (pp_box_width (empty), ==, 0);
  g_assert_cmpfloat (pp_box_height (empty), ==, 0);
  g_assert_false (pp_box_meets (empty, box));
  assert_box (pp_box_union (empty, box), 1, 2, 5, 8);
  assert_box (pp_box_add_point (empty, (PpPoint) { 3, 4 }), 3, 4, 3, 4);
  g_assert_true (pp_box_is_empty (pp_box_grow (box, -2.5)));
}

static void
test_box (void)
{
  PpBox box = { 1, 2, 5, 8 };

  g_assert_false (pp_box_is_empty (box));
  g_assert_cmpfloat (pp_box_width (box), ==, 4);
  g_assert_cmpfloat (pp_box_height (box), ==, 6);
  g_assert_cmpfloat (pp_box_middle (box).x, ==, 3);
  g_assert_cmpfloat (pp_box_middle (box).y, ==, 5);
  assert_box (pp_box_grow (box, 1), 0, 1, 6, 9);
  assert_box (pp_box_union (box, (PpBox) { 0, 4, 2, 9 }), 0, 2, 5, 9);
  assert_box (pp_box_add_point (box, (PpPoint) { 7, 0 }), 1, 0, 7, 8);
  g_assert_true (pp_box_meets (box, (PpBox) { 5, 8, 6, 9 }));
  g_assert_true (pp_box_meets ((PpBox) { 5, 8, 6, 9 }, box));
  g_assert_true (pp_box_contains (box, (PpPoint) { 5, 2 }));
  g_assert_false (pp_box_contains (box, (PpPoint) { 5.1, 3 }));
  g_assert_false (pp_box_contains (box, (PpPoint) { 3, 1.9 }));
  g_assert_false (pp_box_contains (pp_box_empty (), (PpPoint) { 0, 0 }));
  g_assert_true (pp_box_holds (box, box));
  g_assert_true (pp_box_holds (box, (PpBox) { 2, 3, 4, 8 }));
  g_assert_false (pp_box_holds (box, (PpBox) { 2, 3, 5.1, 4 }));
  g_assert_false (pp_box_holds (box, (PpBox) { 2, 1.9, 4, 8 }));
  g_assert_false (pp_box_meets (box, (PpBox) { 5.001, 2, 6, 8 }));
  g_assert_false (pp_box_meets (box, (PpBox) { 1, -3, 5, 1.999 }));
  g_assert_cmpfloat (pp_point_distance ((PpPoint) { 1, 1 }, (PpPoint) { 4, 5 }), ==, 5);
}

typedef struct
{
  const char *name;
  guint       n_rings;
  guint       lengths[2];
  PpPoint     points[10];
  int         code;
  const char *begins; /* NULL: allowed */
} Made;

#define SQUARE { 0, 0 }, { 9, 0 }, { 9, 9 }, { 0, 9 }, { 0, 0 }
#define TRIANGLE { 1, 1 }, { 3, 1 }, { 1, 3 }, { 1, 1 }

static const Made mades[] = {
  { "square", 1, { 5 }, { SQUARE }, 0, NULL },
  { "triangle", 1, { 4 }, { TRIANGLE }, 0, NULL },
  { "with-hole", 2, { 5, 4 }, { SQUARE, TRIANGLE }, 0, NULL },
  { "no-ring", 0, { 0 }, { SQUARE }, PP_PANEL_ERROR_VALUE, "coordinates: " },
  { "empty-ring", 1, { 0 }, { SQUARE }, PP_PANEL_ERROR_VALUE, "coordinates[0]: " },
  { "three-positions", 1, { 3 }, { { 1, 1 }, { 3, 1 }, { 1, 1 } }, PP_PANEL_ERROR_VALUE,
    "coordinates[0]: " },
  { "short-hole", 2, { 5, 3 }, { SQUARE, { 1, 1 }, { 3, 1 }, { 1, 1 } }, PP_PANEL_ERROR_VALUE,
    "coordinates[1]: " },
  { "open", 1, { 4 }, { SQUARE }, PP_PANEL_ERROR_VALUE, "coordinates[0]: " },
  { "open-hole", 2, { 5, 4 }, { SQUARE, { 1, 1 }, { 3, 1 }, { 1, 3 }, { 1, 1.5 } },
    PP_PANEL_ERROR_VALUE, "coordinates[1]: " },
  { "nan", 1, { 4 }, { { 1, 1 }, { NAN, 1 }, { 1, 3 }, { 1, 1 } }, PP_PANEL_ERROR_VALUE,
    "coordinates[0]: " },
  { "infinite", 1, { 4 }, { { 1, 1 }, { 3, 1 }, { 1, -INFINITY }, { 1, 1 } },
    PP_PANEL_ERROR_VALUE, "coordinates[0]: " },
};

static void
test_made (gconstpointer data)
{
  const Made *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpOutline) outline
      = pp_outline_new (row->lengths, row->n_rings, row->points, "\"bbox\": 1", &error);

  if (row->begins != NULL)
    {
      g_assert_null (outline);
      small_assert_error (error, row->code, row->begins);
      return;
    }
  g_assert_no_error (error);
  g_assert_cmpuint (pp_outline_get_n_rings (outline), ==, row->n_rings);
  g_assert_cmpstr (pp_outline_get_extra (outline), ==, "\"bbox\": 1");
  for (guint i = 0, start = 0; i < row->n_rings; start += row->lengths[i++])
    {
      guint n;
      const PpPoint *ring = pp_outline_get_ring (outline, i, &n);

      g_assert_cmpmem (ring, n * sizeof (PpPoint), row->points + start,
                       row->lengths[i] * sizeof (PpPoint));
    }
}

static PpOutline *
make_long (guint    n,
           GError **error)
{
  g_autofree PpPoint *points = g_new0 (PpPoint, n);

  for (guint i = 0; i + 1 < n; i++)
    points[i] = (PpPoint) { cos (i * 2 * G_PI / (n - 1)), sin (i * 2 * G_PI / (n - 1)) };
  points[n - 1] = points[0];
  return pp_outline_new (&n, 1, points, NULL, error);
}

static void
test_longest (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpOutline) longest = make_long (PP_OUTLINE_MAX_POSITIONS, &error);
  g_autoptr (PpOutline) longer = NULL;

  g_assert_no_error (error);
  g_assert_nonnull (longest);
  longer = make_long (PP_OUTLINE_MAX_POSITIONS + 1, &error);
  g_assert_null (longer);
  small_assert_error (error, PP_PANEL_ERROR_LIMIT, "coordinates[0]: ");
}

static void
test_ring (void)
{
  static const PpPoint points[] = { { 2, 3 }, { 8, 4 }, { 5, 9 }, { 2, 3 } };
  g_autoptr (PpOutline) open = pp_outline_new_ring (points, 3);
  g_autoptr (PpOutline) closed = pp_outline_new_ring (points, 4);
  guint n;
  const PpPoint *ring = pp_outline_get_ring (open, 0, &n);

  g_assert_cmpmem (ring, n * sizeof (PpPoint), points, sizeof points);
  g_assert_true (pp_outline_equal (open, closed));
  g_assert_null (pp_outline_get_extra (open));
  assert_box (pp_outline_get_box (open), 2, 3, 8, 9);
}

typedef struct
{
  const char *name;
  Made        other;
  const char *extra;
  gboolean    equal;
} Equal;

/* Against the square with the triangle in it. */
static const Equal equals[] = {
  { "same", { NULL, 2, { 5, 4 }, { SQUARE, TRIANGLE } }, NULL, TRUE },
  { "no-hole", { NULL, 1, { 5 }, { SQUARE } }, NULL, FALSE },
  { "other-lengths", { NULL, 2, { 4, 5 }, { TRIANGLE, SQUARE } }, NULL, FALSE },
  { "moved", { NULL, 2, { 5, 4 }, { SQUARE, { 1, 1 }, { 3, 1 }, { 1, 3.5 }, { 1, 1 } } }, NULL,
    FALSE },
  { "minus-zero", { NULL, 2, { 5, 4 }, { { -0.0, 0 }, { 9, 0 }, { 9, 9 }, { 0, 9 }, { 0, 0 },
    TRIANGLE } }, NULL, TRUE },
  { "extra", { NULL, 2, { 5, 4 }, { SQUARE, TRIANGLE } }, "\"a\": 1", FALSE },
};

static void
test_equal (gconstpointer data)
{
  static const Made made = { NULL, 2, { 5, 4 }, { SQUARE, TRIANGLE } };
  const Equal *row = data;
  g_autoptr (PpOutline) a = pp_outline_new (made.lengths, 2, made.points, NULL, NULL);
  g_autoptr (PpOutline) b = pp_outline_new (row->other.lengths, row->other.n_rings,
                                            row->other.points, row->extra, NULL);

  g_assert_cmpint (pp_outline_equal (a, b), ==, row->equal);
  g_assert_cmpint (pp_outline_equal (b, a), ==, row->equal);
  g_assert_true (pp_outline_equal (a, a));
}

static PpPoint
swap_and_add (PpPoint       p,
              gconstpointer data)
{
  return (PpPoint) { p.y + *(const double *) data, p.x };
}

static void
test_map (void)
{
  static const guint lengths[] = { 5, 4 };
  static const PpPoint points[] = { SQUARE, TRIANGLE };
  const double by = 100;
  g_autoptr (PpOutline) outline = pp_outline_new (lengths, 2, points, "\"a\": 1", NULL);
  g_autoptr (PpOutline) mapped = pp_outline_map (outline, swap_and_add, &by);
  guint n;
  const PpPoint *hole = pp_outline_get_ring (mapped, 1, &n);

  g_assert_cmpuint (n, ==, 4);
  g_assert_cmpfloat (hole[1].x, ==, 101);
  g_assert_cmpfloat (hole[1].y, ==, 3);
  g_assert_cmpstr (pp_outline_get_extra (mapped), ==, "\"a\": 1");
  assert_box (pp_outline_get_box (mapped), 100, 0, 109, 9);
  assert_box (pp_outline_get_box (outline), 0, 0, 9, 9);
}

static void
test_move (void)
{
  static const guint lengths[] = { 5, 4 };
  static const PpPoint points[] = { SQUARE, TRIANGLE };
  g_autoptr (PpOutline) outline = pp_outline_new (lengths, 2, points, NULL, NULL);
  g_autoptr (PpOutline) moved = pp_outline_move (outline, (PpPoint) { 100, -2 });
  g_autoptr (PpOutline) back = pp_outline_move (moved, (PpPoint) { -100, 2 });

  assert_box (pp_outline_get_box (moved), 100, -2, 109, 7);
  g_assert_false (pp_outline_near (outline, moved));
  g_assert_true (pp_outline_equal (outline, back));
}

/* Only the border has a say. */
static void
test_box_of_border (void)
{
  static const guint lengths[] = { 5, 4 };
  static const PpPoint points[] = { SQUARE, { 1, 1 }, { 30, 1 }, { 1, 30 }, { 1, 1 } };
  g_autoptr (PpOutline) outline = pp_outline_new (lengths, 2, points, NULL, NULL);

  assert_box (pp_outline_get_box (outline), 0, 0, 9, 9);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rights); i++)
    {
      g_autofree char *path = g_strdup_printf ("/outline/right-angle/%u/%.0f", i,
                                               rights[i].degrees);

      g_test_add_data_func (path, &rights[i], test_right);
    }
  g_test_add_func ("/outline/other-turns", test_other_turns);
  g_test_add_func ("/outline/empty-box", test_empty_box);
  g_test_add_func ("/outline/box", test_box);
  for (guint i = 0; i < G_N_ELEMENTS (mades); i++)
    {
      g_autofree char *path = g_strdup_printf ("/outline/new/%s", mades[i].name);

      g_test_add_data_func (path, &mades[i], test_made);
    }
  for (guint i = 0; i < G_N_ELEMENTS (equals); i++)
    {
      g_autofree char *path = g_strdup_printf ("/outline/equal/%s", equals[i].name);

      g_test_add_data_func (path, &equals[i], test_equal);
    }
  g_test_add_func ("/outline/longest", test_longest);
  g_test_add_func ("/outline/ring", test_ring);
  g_test_add_func ("/outline/map", test_map);
  g_test_add_func ("/outline/move", test_move);
  g_test_add_func ("/outline/box-of-border", test_box_of_border);
  return g_test_run ();
}
