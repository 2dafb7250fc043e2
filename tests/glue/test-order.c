/* test-order.c: what must be glued before what, on small settled panels.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edges are given as text, "p1-p2 p2-p3": expected ones derived by hand beside the rows. On random
 * stacks every pair is asked anew, cell by cell and path by path.
 */
#include "stack.h"

#include "glue/clearance.h"
#include "glue/order.h"
#include "jug.h"

#define TILE "-20 -20, 20 -20, 20 20, -20 20"
#define BLOCK "-10 -10, 10 -10, 10 10, -10 10"
#define SPECK "-5 -5, 5 -5, 5 5, -5 5"
#define COMB "-25 -20, -15 -20, -15 10, -5 10, -5 -20, 5 -20, 5 10, 15 10, 15 -20, 25 -20, " \
             "25 20, -25 20"
#define DOME "-30 -30, 30 -30, 30 30, -30 30"

/* The parts of a check that an order asks. */
static PpCheck
check_of (const TestStack *stack)
{
  return (PpCheck) {
    .panel = stack->panel,
    .scene = stack->scene,
    .n = stack->scene->n_bodies,
    .rests = stack->rests,
    .joints = stack->joints,
  };
}

static PpOrder *
order_of (const TestStack *stack)
{
  const PpCheck check = check_of (stack);

  return pp_order_new (&check);
}

static int
compare_words (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char * const *) a, *(char * const *) b);
}

/* In the order of the alphabet, by the ids of the jobs. */
static char *
write_edges (const TestStack *stack,
             const PpOrder   *order,
             const PpEdge    *edges,
             guint            n)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *first = pp_job_dup_id (stack->panel, order->n_knots, edges[i].first);
      g_autofree char *second = pp_job_dup_id (stack->panel, order->n_knots, edges[i].second);

      g_ptr_array_add (words, g_strconcat (first, "-", second, NULL));
    }
  g_ptr_array_sort (words, compare_words);
  g_ptr_array_add (words, NULL);

  return g_strjoinv (" ", (char **) words->pdata);
}

static void
assert_edges (const TestStack *stack,
              const char      *hard,
              const char      *drawn,
              const char      *tucks)
{
  g_autoptr (PpOrder) order = order_of (stack);
  g_autofree char *got_hard = write_edges (stack, order, order->hard, order->n_hard);
  g_autofree char *got_drawn = write_edges (stack, order, order->drawn, order->n_drawn);
  g_autofree char *got_tucks = write_edges (stack, order, order->tucks, order->n_tucks);

  g_assert_cmpstr (got_hard, ==, hard);
  g_assert_cmpstr (got_drawn, ==, drawn);
  g_assert_cmpstr (got_tucks, ==, tucks);
}

/* Three tiles in a pile. The third is over the first by the second's thickness: within the 2 mm of
 * a tuck it must come after, and that edge goes without saying; beyond it the first could still be
 * slid in. 2 mm itself is no less than the limit. */
static void
test_pile (void)
{
  static const struct { double thickness; const char *hard, *tucks; } rows[] = {
    { 1, "p1-p2 p1-p3 p2-p3", "" },
    { 2, "p1-p2 p2-p3", "p1-p3" },
    { 4, "p1-p2 p2-p3", "p1-p3" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;

      test_draft_init (&draft, 200, 200, 6);
      test_draft_add_piece (&draft, "tile", TILE, 4, NAN, NULL);
      test_draft_add_piece (&draft, "thin", TILE, rows[i].thickness, NAN, NULL);
      test_draft_place (&draft, "p1", "tile", 100, 100);
      test_draft_place (&draft, "p2", "thin", 100, 100);
      test_draft_place (&draft, "p3", "tile", 100, 100);

      g_autoptr (TestStack) stack = test_stack_new (&draft);
      g_autoptr (PpOrder) order = order_of (stack);

      assert_edges (stack, rows[i].hard, "p1-p2 p2-p3", rows[i].tucks);
      g_assert_cmpuint (order->n_below[0], ==, 0);
      g_assert_cmpuint (order->n_below[2], ==, 2);
      g_assert_cmpuint (order->below[2][0], ==, 0);
      g_assert_cmpuint (order->below[2][1], ==, 1);
    }
}

/* A dome of rise 12 over a speck. It stands on its corner cells, (29.75, 29.75) from the middle,
 * and is lowest over the speck's corner cells, (4.75, 4.75) from it: higher there than at its feet by
 * 12·(2·29.75² - 2·4.75²)/1800 = 11.5. So a speck of 9.5 mm leaves just the 2 mm of a tuck. */
static void
test_tuck (void)
{
  static const struct { double thickness; const char *hard, *tucks; } rows[] = {
    { 3, "", "p1-p2" },
    { 9.5, "", "p1-p2" },
    { 9.501, "p1-p2", "" },
  };
  PpPiece dome = pp_piece_draft ();

  dome.form.kind = PP_FORM_DOMED;
  dome.form.rise = 12;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;

      test_draft_init (&draft, 200, 200, 6);
      test_draft_add_piece (&draft, "speck", SPECK, rows[i].thickness, NAN, NULL);
      test_draft_add_piece (&draft, "dome", DOME, 4, NAN, &dome);
      test_draft_place (&draft, "p1", "speck", 100, 100);
      test_draft_place (&draft, "p2", "dome", 100, 100);

      g_autoptr (TestStack) stack = test_stack_new (&draft);

      assert_edges (stack, rows[i].hard, rows[i].hard, rows[i].tucks);
    }
}

/* A strip of 0.1 x 40 mm between the rows of cell centres: 4 mm² in common but no cell. One that
 * holds cells but no more than 1 mm² counts where one rests on the other. */
static void
test_slivers (void)
{
  static const struct { double x, y; const char *hard, *tucks; guint below; } rows[] = {
    { 139.9, 100, "", "p1-p2", 1 },
    { 140.1, 100, "", "", 0 },
    { 139, 139.5, "p1-p2", "", 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;

      test_draft_init (&draft, 300, 300, 6);
      test_draft_add_piece (&draft, "tile", TILE, 1, NAN, NULL);
      test_draft_place (&draft, "p1", "tile", 100, 100);
      test_draft_place (&draft, "p2", "tile", rows[i].x, rows[i].y);

      g_autoptr (TestStack) stack = test_stack_new (&draft);
      g_autoptr (PpOrder) order = order_of (stack);

      assert_edges (stack, rows[i].hard, rows[i].hard, rows[i].tucks);
      g_assert_cmpuint (order->n_below[1], ==, rows[i].below);
    }
}

/* A bridge on a block of 10 mm reaches h over both knots of 8 mm, 7 mm above them. The segment's
 * area is 16·acos(1 - h/4) - (4 - h)·sqrt(8h - h²): 0.940 mm² for 0.4, 1.713 for 0.6. */
static void
test_knots (void)
{
  static const struct { const char *bridge, *edges; } rows[] = {
    { "-36.4 -8, 36.4 -8, 36.4 8, -36.4 8", "p1-p2" },
    { "-36.6 -8, 36.6 -8, 36.6 8, -36.6 8", "knot:a-p2 knot:b-p2 p1-p2" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;

      test_draft_init (&draft, 200, 200, 6);
      test_draft_add_hole (&draft, "a", 60, 50, 6);
      test_draft_add_hole (&draft, "b", 140, 50, 6);
      test_draft_add_wire (&draft, 90);
      test_draft_add_piece (&draft, "block", BLOCK, 10, NAN, NULL);
      test_draft_add_piece (&draft, "bridge", rows[i].bridge, 4, NAN, NULL);
      test_draft_place (&draft, "p1", "block", 100, 50);
      test_draft_place (&draft, "p2", "bridge", 100, 50);

      g_autoptr (TestStack) stack = test_stack_new (&draft);

      assert_edges (stack, rows[i].edges, rows[i].edges, "");
    }
}

/* Beside the knot's disc by area (0.940 mm²), but resting on the knot itself. */
static void
test_on_knot (void)
{
  TestDraft draft;

  test_draft_init (&draft, 200, 200, 6);
  test_draft_add_hole (&draft, "a", 60, 50, 6);
  test_draft_add_hole (&draft, "b", 180, 50, 6);
  test_draft_add_wire (&draft, 130);
  test_draft_add_piece (&draft, "tile", TILE, 4, NAN, NULL);
  test_draft_place (&draft, "p1", "tile", 83.6, 50);

  g_autoptr (TestStack) stack = test_stack_new (&draft);

  g_assert_true (pp_rest_rests_on (stack->rests[0], PP_OWNER (PP_OWNER_KNOT, 0)));
  assert_edges (stack, "knot:a-p1", "knot:a-p1", "");
}

static void
assert_stages (const PpOrder *order,
               const PpStage *expected)
{
  for (guint job = 0; job < order->n_jobs; job++)
    g_assert_cmpint (order->stages[job], ==, expected[job]);
}

/* Two knots, a stem, a tile on the pocket (1 mm over the stem, but only where that is inside, so
 * that no cell is common), a cup, a tile on that cup, a tile on that tile, one alone. */
static void
test_stages (void)
{
  static const PpStage expected[] = {
    PP_STAGE_KNOTS, PP_STAGE_KNOTS, PP_STAGE_STEMS, PP_STAGE_FLAT, PP_STAGE_SHAPED,
    PP_STAGE_SHAPED, PP_STAGE_SHAPED, PP_STAGE_FLAT,
  };
  PpPiece cup = pp_piece_draft ();
  TestDraft draft;

  test_draft_init (&draft, 300, 300, 6);
  jug_add (&draft);
  test_draft_add_hole (&draft, "a", 60, 20, 6);
  test_draft_add_hole (&draft, "b", 140, 25, 6);
  test_draft_add_wire (&draft, 90);
  test_draft_add_piece (&draft, "stem", "-3 -40, 3 -40, 3 40, -3 40", 8, NAN, NULL);
  test_draft_add_piece (&draft, "tile", TILE, 4, NAN, NULL);
  cup.form.kind = PP_FORM_CUPPED;
  cup.form.rise = 5;
  test_draft_add_piece (&draft, "cup", DOME, 4, NAN, &cup);
  jug_place_stem (&draft, "s1", 100, 135);
  test_draft_place (&draft, "p2", "tile", 100, 160);
  test_draft_place (&draft, "p3", "cup", 230, 60);
  test_draft_place (&draft, "p4", "tile", 230, 60);
  test_draft_place (&draft, "p5", "tile", 230, 60);
  test_draft_place (&draft, "p6", "tile", 230, 200);

  g_autoptr (TestStack) stack = test_stack_new (&draft);
  g_autoptr (PpOrder) order = order_of (stack);

  assert_stages (order, expected);
  assert_edges (stack, "p3-p4 p4-p5", "p3-p4 p4-p5", "p3-p5 s1-p2");
  g_assert_cmpfloat (order->depth[1], ==, 25);
  g_assert_cmpfloat_with_epsilon (order->depth[2], 135, 1e-9);
}

/* Nothing beneath either: no matter how they overlap, the lower may be slid in. */
static void
test_floating (void)
{
  TestDraft draft;

  test_draft_init (&draft, 200, 200, 6);
  test_draft_add_piece (&draft, "tile", TILE, 4, NAN, NULL);
  test_draft_place (&draft, "p1", "tile", 300, 100);
  test_draft_place (&draft, "p2", "tile", 310, 100);

  g_autoptr (TestStack) stack = test_stack_new (&draft);

  assert_edges (stack, "", "", "p1-p2");
}

static double
least_over_common_cells (const TestStack *stack,
                         guint            lower,
                         guint            upper)
{
  const PpBody *a = stack->scene->bodies[lower];
  const PpBody *b = stack->scene->bodies[upper];
  double least = INFINITY;

  for (int j = a->cells->box.j0; j < a->cells->box.j1; j++)
    for (int i = a->cells->box.i0; i < a->cells->box.i1; i++)
      {
        const PpPoint p = { (i + 0.5) / 2, (j + 0.5) / 2 };

        if (pp_cells_contain (a->cells, i, j) && pp_cells_contain (b->cells, i, j))
          least = fmin (least, pp_rest_underside_at (stack->rests[upper], b, p)
                               - pp_rest_top_at (stack->rests[lower], a, p));
      }

  return least;
}

static gboolean
is_in (const PpEdge *edges, guint n, guint first, guint second)
{
  for (guint i = 0; i < n; i++)
    if (edges[i].first == first && edges[i].second == second)
      return TRUE;

  return FALSE;
}

/* Whether hard edges lead from one to the other in at least two steps. */
static gboolean
leads_round (const PpOrder *order, guint first, guint second)
{
  for (guint i = 0; i < order->n_hard; i++)
    {
      const PpEdge *edge = &order->hard[i];

      if (edge->first == first && edge->second < second
          && (is_in (order->hard, order->n_hard, edge->second, second)
              || leads_round (order, edge->second, second)))
        return TRUE;
    }

  return FALSE;
}

static void
assert_pair (const TestStack *stack,
             const PpOrder   *order,
             guint            lower,
             guint            upper)
{
  const double overlap = pp_region_overlap (stack->scene->bodies[lower]->region,
                                            stack->scene->bodies[upper]->region);
  const gboolean rests = pp_rest_rests_on (stack->rests[upper],
                                           PP_OWNER (PP_OWNER_PLACEMENT, lower));
  const double clearance = least_over_common_cells (stack, lower, upper);
  const gboolean hard = rests || (overlap > 1 && clearance < 2);
  const PpCheck check = check_of (stack);
  gboolean below = FALSE;

  g_assert_cmpfloat (pp_clearance_between (&check, lower, upper, -HUGE_VAL), ==, clearance);

  for (guint i = 0; i < order->n_below[upper]; i++)
    below = below || order->below[upper][i] == lower;
  g_assert_cmpint (below, ==, overlap > 1);
  g_assert_cmpint (is_in (order->hard, order->n_hard, lower, upper), ==, hard);
  g_assert_cmpint (is_in (order->tucks, order->n_tucks, lower, upper), ==, overlap > 1 && !hard);
  g_assert_cmpint (is_in (order->drawn, order->n_drawn, lower, upper), ==,
                   hard && !leads_round (order, lower, upper));
}

static void
add_random_pieces (TestDraft *draft,
                   GRand     *rand,
                   guint      n,
                   double     side)
{
  static const char * const names[] = { "tile", "block", "dome", "wave", "comb" };
  PpPiece dome = pp_piece_draft ();
  PpPiece wave = pp_piece_draft ();

  dome.form.kind = PP_FORM_DOMED;
  dome.form.rise = 9;
  wave.form.kind = PP_FORM_ARCHED;
  wave.form.rise = 7;
  test_draft_add_piece (draft, "tile", TILE, 1.5, NAN, NULL);
  test_draft_add_piece (draft, "block", BLOCK, 3, NAN, NULL);
  test_draft_add_piece (draft, "dome", DOME, 2, NAN, &dome);
  test_draft_add_piece (draft, "wave", "0 -40, 9 0, 0 40, -9 0", 2, NAN, &wave);
  test_draft_add_piece (draft, "comb", COMB, 2, NAN, &dome);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("p%u", i);

      test_draft_place (draft, id, names[g_rand_int_range (rand, 0, G_N_ELEMENTS (names))],
                        g_rand_double_range (rand, 40, side - 40),
                        g_rand_double_range (rand, 40, side - 40));
    }
}

static void
test_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  guint n_hard = 0;
  guint n_tucks = 0;

  for (guint round = 0; round < 6; round++)
    {
      TestDraft draft;

      test_draft_init (&draft, 200, 200, 6);
      add_random_pieces (&draft, rand, 14, 200);

      g_autoptr (TestStack) stack = test_stack_new (&draft);
      g_autoptr (PpOrder) order = order_of (stack);

      for (guint upper = 1; upper < stack->scene->n_bodies; upper++)
        for (guint lower = 0; lower < upper; lower++)
          assert_pair (stack, order, lower, upper);
      n_hard += order->n_hard;
      n_tucks += order->n_tucks;
    }
  g_assert_cmpuint (n_hard, >, 50);
  g_assert_cmpuint (n_tucks, >, 50);
}

/* How long two hundred pieces take; said, not judged. */
static void
test_two_hundred (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (12);
  TestDraft draft;

  test_draft_init (&draft, 400, 400, 6);
  add_random_pieces (&draft, rand, 200, 400);

  g_autoptr (TestStack) stack = test_stack_new (&draft);
  const gint64 begin = g_get_monotonic_time ();
  g_autoptr (PpOrder) order = order_of (stack);

  g_test_message ("200 pieces: %.1f ms, %u hard edges, %u drawn, %u tucks",
                  (double) (g_get_monotonic_time () - begin) / 1000, order->n_hard, order->n_drawn,
                  order->n_tucks);
  g_assert_cmpuint (order->n_drawn, <, order->n_hard);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/order/pile", test_pile);
  g_test_add_func ("/order/tuck", test_tuck);
  g_test_add_func ("/order/slivers", test_slivers);
  g_test_add_func ("/order/knots", test_knots);
  g_test_add_func ("/order/on-knot", test_on_knot);
  g_test_add_func ("/order/stages", test_stages);
  g_test_add_func ("/order/floating", test_floating);
  g_test_add_func ("/order/random", test_random);
  g_test_add_func ("/order/two-hundred", test_two_hundred);

  return g_test_run ();
}
