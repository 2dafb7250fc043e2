/* test-coverage.c: how much of the glass is covered, by hand and against the overlay of areas.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The glass is 300 x 200 mm. A cell is 0.25 mm², so along a border of some 100 mm cells and areas may
 * differ by some 25 mm², of 60 000.
 */
#include "check/coverage.h"

#include "rings.h"
#include "stack.h"

#define GLASS (300.0 * 200.0)
#define NEAR 0.002

/* "x y" of each 40 x 20 mm piece, its middle; and what they cover, mm². */
static const struct
{
  const char *name;
  double      places[3][2];
  guint       n;
  double      covered;
} rows[] = {
  { "bare", { { 0 } }, 0, 0 },
  { "one", { { 100, 100 } }, 1, 800 },
  { "apart", { { 50, 50 }, { 150, 150 } }, 2, 1600 },
  { "one-on-another", { { 100, 100 }, { 100, 100 } }, 2, 800 },
  { "half-over", { { 100, 100 }, { 120, 100 } }, 2, 1200 },
  { "side-by-side", { { 100, 100 }, { 140, 100 } }, 2, 1600 },
  { "over-the-edge", { { 0, 100 } }, 1, 400 },
  { "over-the-corner", { { 300, 200 } }, 1, 200 },
  { "off-the-glass", { { -100, 100 }, { 100, 100 } }, 2, 800 },
  { "three", { { 100, 100 }, { 120, 110 }, { 110, 95 } }, 3, 0 }, /* only against the overlay */
};

static TestStack *
make_stack (gconstpointer data)
{
  const guint i = GPOINTER_TO_UINT (data);
  TestDraft draft;

  test_draft_init (&draft, 300, 200, 6);
  test_draft_add_piece (&draft, "slip", "-20 -10, 20 -10, 20 10, -20 10", 3, NAN, NULL);
  for (guint k = 0; k < rows[i].n; k++)
    {
      g_autofree char *id = g_strdup_printf ("p%u", k);

      test_draft_place (&draft, id, "slip", rows[i].places[k][0], rows[i].places[k][1]);
    }
  return test_stack_new (&draft);
}

static double
overlay (const PpScene *scene)
{
  g_autoptr (GPtrArray) regions = g_ptr_array_new ();
  g_autoptr (PpRegion) all = NULL;

  for (guint i = 0; i < scene->n_bodies; i++)
    g_ptr_array_add (regions, scene->bodies[i]->region);
  all = pp_region_union ((PpRegion **) regions->pdata, regions->len);
  return pp_region_overlap (all, scene->background) / GLASS;
}

static void
test_row (gconstpointer data)
{
  const guint i = GPOINTER_TO_UINT (data);
  g_autoptr (TestStack) stack = make_stack (data);
  double share = pp_coverage_of_glass (stack->scene);

  if (i + 1 < G_N_ELEMENTS (rows))
    g_assert_cmpfloat_with_epsilon (share, rows[i].covered / GLASS, PP_TIE);
  g_assert_cmpfloat_with_epsilon (share, overlay (stack->scene), NEAR);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/coverage/", rows[i].name, NULL);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_row);
    }
  return g_test_run ();
}
