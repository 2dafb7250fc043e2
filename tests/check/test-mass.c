/* test-mass.c: weight and centre of mass of whole panels.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Published values stand with their sources; the others are plain arithmetic from density 2500 kg/m³
 * (EN 572-1).
 */
#include "stack.h"

#define NEARLY_NOTHING 1e-9 /* a density that leaves the pieces alone with their weight */
#define CLOSE 1e-6

typedef struct
{
  const char *name;
  double      width;
  double      height;
  double      thickness;
  double      hole; /* diameter of two holes; 0: none */
  double      density;
  double      kilograms;
  double      within;
} Plate;

static const Plate plates[] = {
  { "plain", 300, 400, 6, 0, 2500, 1.800, 0.0001 },
  { "holes", 300, 400, 6, 8, 2500, 1.7985, 0.0001 }, /* less two of 8 mm */
  { "small", 250, 350, 4, 0, 2500, 0.875, 0.0001 },
  { "large", 600, 600, 10, 0, 2500, 9.000, 0.0001 },
  { "square-metre", 1000, 1000, 1, 0, 2500, 2.5, 1e-9 }, /* a glass handbook */
  { "light", 300, 400, 6, 0, 2440, 1.757, 0.0005 },
  { "heavy", 300, 400, 6, 0, 2600, 1.872, 0.0005 },
};

static void
set_density (TestDraft *draft,
             double     density)
{
  PpBackground back = *draft->panel.background;

  back.glass.density = density;
  test_draft_set_back (draft, &back);
}

static void
test_plate (gconstpointer data)
{
  const Plate *plate = data;
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;

  test_draft_init (&draft, plate->width, plate->height, plate->thickness);
  set_density (&draft, plate->density);
  if (plate->hole > 0)
    {
      test_draft_add_hole (&draft, "a", 60, 50, plate->hole);
      test_draft_add_hole (&draft, "b", plate->width - 60, 50, plate->hole);
    }
  stack = test_stack_new (&draft);
  g_assert_cmpfloat_with_epsilon (stack->mass.total, 1000 * plate->kilograms,
                                  1000 * plate->within);
  g_assert_cmpfloat_with_epsilon (stack->mass.x, plate->width / 2, CLOSE);
  g_assert_cmpfloat_with_epsilon (stack->mass.z, -plate->thickness / 2, CLOSE);
}

/* 50, 10 and 30 at 0, 1.2 and 2.0 m balance at 0.8 m ("Engineering Statics: Open and Interactive",
 * chapter 7, "Simple Center of Gravity"). */
static void
test_three_weights (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;

  test_draft_init (&draft, 2400, 100, 1);
  set_density (&draft, NEARLY_NOTHING);
  draft.adhesive.density = NEARLY_NOTHING;
  test_draft_add_piece (&draft, "fifty", "-20 -20, 20 -20, 20 20, -20 20", 4, 50, NULL);
  test_draft_add_piece (&draft, "ten", "-20 -20, 20 -20, 20 20, -20 20", 4, 10, NULL);
  test_draft_add_piece (&draft, "thirty", "-20 -20, 20 -20, 20 20, -20 20", 4, 30, NULL);
  test_draft_place (&draft, "p1", "fifty", 100, 50);
  test_draft_place (&draft, "p2", "ten", 1300, 50);
  test_draft_place (&draft, "p3", "thirty", 2100, 50);
  stack = test_stack_new (&draft);
  g_assert_cmpfloat_with_epsilon (stack->mass.total, 90, CLOSE);
  g_assert_cmpfloat_with_epsilon (stack->mass.x, 900, 1e-4);
  g_assert_cmpfloat_with_epsilon (stack->mass.z, 2, 1e-4);
}

/* A fused part counts beyond the background too, with its own density; a hole through both takes
 * a whole disc out of each: moments written out by hand. */
static void
test_fused (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  const double disc = G_PI * 16;
  const double back = (100 * 100 - disc) * 6 * 2.5e-3;      /* g */
  const double part = (60 * 40 - disc) * 3 * 2.4e-3;
  const double total = back + part;

  test_draft_init (&draft, 100, 100, 6);
  test_draft_add_fused (&draft, "jug", "70 30, 130 30, 130 70, 70 70", 3, 2400);
  test_draft_add_hole (&draft, "a", 80, 40, 8);
  stack = test_stack_new (&draft);
  g_assert_cmpfloat_with_epsilon (stack->mass.total, total, CLOSE);
  g_assert_cmpfloat_with_epsilon (
    stack->mass.x,
    ((1e4 * 50 - disc * 80) * 6 * 2.5e-3 + (2400 * 100 - disc * 80) * 3 * 2.4e-3) / total, CLOSE);
  g_assert_cmpfloat_with_epsilon (
    stack->mass.y,
    ((1e4 * 50 - disc * 40) * 6 * 2.5e-3 + (2400 * 50 - disc * 40) * 3 * 2.4e-3) / total, CLOSE);
  g_assert_cmpfloat_with_epsilon (stack->mass.z, (back * -3 + part * 1.5) / total, CLOSE);
}

/* Wire and tails behind the glass, at the middle of the holes: 4 g a metre. */
static void
test_wire (void)
{
  const double lengths[] = { NAN, 90, 150 };
  const double metres[] = { 0.100 + 0.080, 0.090 + 0.080, 0.150 + 0.080 };

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      TestDraft draft;
      g_autoptr (TestStack) stack = NULL;

      test_draft_init (&draft, 300, 300, 6);
      set_density (&draft, NEARLY_NOTHING);
      test_draft_add_hole (&draft, "a", 100, 40, 6);
      test_draft_add_hole (&draft, "b", 200, 40, 6);
      test_draft_add_wire (&draft, lengths[i]);
      stack = test_stack_new (&draft);
      g_assert_cmpfloat_with_epsilon (stack->mass.total, 4 * metres[i], 1e-4);
      g_assert_cmpfloat_with_epsilon (stack->mass.x, 150, 1e-2);
      g_assert_cmpfloat_with_epsilon (stack->mass.y, 40, 1e-2);
      g_assert_cmpfloat_with_epsilon (stack->mass.z, -6.6, 1e-2);
    }
}

/* 0.1 ml of glue weigh 0.115 g at 1.15 g/ml; at the underside of its piece. A floating
 * piece weighs nothing. */
static void
test_glue (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;

  test_draft_init (&draft, 300, 300, 6);
  set_density (&draft, NEARLY_NOTHING);
  draft.panel.limits.value[PP_LIMIT_DAB_LEAST] = 0.1;
  test_draft_add_piece (&draft, "leaf", "-15 -15, 15 -15, 15 15, -15 15", 4, NEARLY_NOTHING, NULL);
  test_draft_place (&draft, "p1", "leaf", 100.25, 50.25);
  test_draft_add_piece (&draft, "stone", "-15 -15, 15 -15, 15 15, -15 15", 4, 50, NULL);
  test_draft_place (&draft, "p2", "stone", 400, 50);
  stack = test_stack_new (&draft);
  g_assert_cmpint (stack->rests[1]->state, ==, PP_STATE_FLOATS);
  g_assert_cmpfloat_with_epsilon (stack->mass.total, 0.115, CLOSE);
  g_assert_cmpfloat_with_epsilon (stack->mass.x, 100.25, 1e-3);
  g_assert_cmpfloat_with_epsilon (stack->mass.z, 0, 1e-3);
}

static void
test_extent (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  PpExtent extent;

  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_piece (&draft, "leaf", "-15 -15, 15 -15, 15 15, -15 15", 4, 10, NULL);
  test_draft_place (&draft, "p1", "leaf", -5, 50);
  test_draft_place (&draft, "p2", "leaf", 100, 400);
  stack = test_stack_new (&draft);
  extent = pp_extent_of (stack->scene, 12);
  g_assert_cmpfloat_with_epsilon (extent.width, 320, CLOSE);
  g_assert_cmpfloat_with_epsilon (extent.height, 415, CLOSE);
  g_assert_cmpfloat (extent.depth, ==, 12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (plates); i++)
    {
      g_autofree char *path = g_strconcat ("/mass/plate/", plates[i].name, NULL);

      g_test_add_data_func (path, &plates[i], test_plate);
    }
  g_test_add_func ("/mass/three-weights", test_three_weights);
  g_test_add_func ("/mass/fused", test_fused);
  g_test_add_func ("/mass/wire", test_wire);
  g_test_add_func ("/mass/glue", test_glue);
  g_test_add_func ("/mass/extent", test_extent);
  return g_test_run ();
}
