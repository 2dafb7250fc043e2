/* test-plan.c: whole glue-ups, from a panel to steps and mixes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Times are derived by hand beside each test: mixing 1, a knot 0.5, a stem 0.5, a piece 1, 0.25
 * more for each dab after the second; a tile of 40 mm has one dab, of 0.05 ml. Every plan is held
 * against the rules by verify.c.
 */
#include "stack.h"

#include "glue/plan.h"
#include "jug.h"
#include "verify.h"

#define TILE "-20 -20, 20 -20, 20 20, -20 20"
#define BLOCK "-10 -10, 10 -10, 10 10, -10 10"
#define CLOSE 1e-6
#define DONE_AT "2026-05-02T10:00:00+02:00"

static PpPlan *
plan_of (TestDraft *draft)
{
  g_autoptr (TestStack) stack = test_stack_new (draft);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpCheck) check = pp_check_new (stack->panel, NULL, NULL, NULL, NULL, &error);
  PpPlan *plan;

  g_assert_no_error (error);
  plan = pp_plan_new (check, 0, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  if (plan->exists)
    g_assert_cmpstr (verify_plan (plan), ==, NULL);

  return plan;
}

/* "knot:a 1 m1, p1 2 m1": job, start and mix of each step. */
static void
assert_steps (const PpPlan *plan,
              const char   *expected)
{
  g_autoptr (GString) steps = g_string_new (NULL);

  for (guint i = 0; i < plan->n_steps; i++)
    {
      const PpStep *step = &plan->steps[i];
      g_autofree char *id = pp_job_dup_id (plan->check->panel, plan->order->n_knots, step->job);

      g_string_append_printf (steps, "%s%s %g m%u", i > 0 ? ", " : "", id, step->start, step->mix);
    }
  g_assert_cmpstr (steps->str, ==, expected);
}

static void
init_tiles (TestDraft *draft)
{
  test_draft_init (draft, 200, 300, 6);
  test_draft_add_piece (draft, "tile", TILE, 4, NAN, NULL);
  test_draft_add_piece (draft, "block", BLOCK, 10, NAN, NULL);
}

static void
add_wire (TestDraft *draft)
{
  test_draft_add_hole (draft, "a", 60, 25, 6);
  test_draft_add_hole (draft, "b", 140, 30, 6);
  test_draft_add_wire (draft, 90);
}

/* In place of the placement of that index: the same, glued. */
static void
glue (TestDraft *draft,
      guint      index)
{
  PpPlacement placement = *(PpPlacement *) g_ptr_array_index (draft->panel.placements, index);
  g_autoptr (GError) error = NULL;
  PpPlacement *glued;

  placement.glued_at = DONE_AT;
  glued = pp_placement_new (&placement, &error);
  g_assert_no_error (error);
  g_ptr_array_remove_index (draft->panel.placements, index);
  g_ptr_array_insert (draft->panel.placements, (int) index, glued);
}

static void
test_nothing (void)
{
  TestDraft draft;

  test_draft_init (&draft, 200, 300, 6);
  g_autoptr (PpPlan) plan = plan_of (&draft);

  g_assert_true (plan->exists);
  g_assert_true (plan->optimal);
  g_assert_cmpuint (plan->n_steps + plan->n_mixes + plan->findings->len, ==, 0);
  g_assert_cmpfloat (plan->placed_by, ==, 0);
  g_assert_cmpfloat (plan->lower_bound, ==, 0);
}

/* Knots first, then from far to near, whatever the file's order. */
static void
test_order_of_the_file (void)
{
  for (guint turn = 0; turn < 2; turn++)
    {
      TestDraft draft;

      init_tiles (&draft);
      add_wire (&draft);
      test_draft_place (&draft, turn == 0 ? "p1" : "p2", "tile", 60, turn == 0 ? 100 : 200);
      test_draft_place (&draft, turn == 0 ? "p2" : "p1", "tile", 60, turn == 0 ? 200 : 100);
      g_autoptr (PpPlan) plan = plan_of (&draft);

      assert_steps (plan, "knot:a 1 m1, knot:b 1.5 m1, p1 2 m1, p2 3 m1");
      g_assert_cmpfloat_with_epsilon (plan->placed_by, 4, CLOSE);
      g_assert_true (plan->optimal);
    }
}

/* 2 · 0.15 + 2 · 0.05 ml are used; no less than 2 ml is mixed, here two to one. */
static void
test_mix (void)
{
  TestDraft draft;

  init_tiles (&draft);
  add_wire (&draft);
  draft.adhesive.ratio[0] = 2;
  test_draft_place (&draft, "p1", "tile", 60, 100);
  test_draft_place (&draft, "p2", "tile", 60, 200);
  g_autoptr (PpPlan) plan = plan_of (&draft);

  g_assert_cmpuint (plan->n_mixes, ==, 1);
  g_assert_cmpfloat_with_epsilon (plan->mixes[0].need, 0.4, CLOSE);
  g_assert_cmpfloat_with_epsilon (plan->mixes[0].a, 4.0 / 3, CLOSE);
  g_assert_cmpfloat_with_epsilon (plan->mixes[0].b, 2.0 / 3, CLOSE);

  init_tiles (&draft);
  add_wire (&draft);
  draft.adhesive.smallest_mix = 0.1;
  g_autoptr (PpPlan) small = plan_of (&draft);

  g_assert_cmpfloat_with_epsilon (small->mixes[0].a, 0.15, CLOSE);
  g_assert_cmpfloat_with_epsilon (small->mixes[0].b, 0.15, CLOSE);
}

/* 200 mm long: a dab for each 60 begun, so four: 1 + 2 · 0.25. */
static void
test_dabs (void)
{
  TestDraft draft;

  init_tiles (&draft);
  test_draft_add_piece (&draft, "blade", "-10 -100, 10 -100, 10 100, -10 100", 4, NAN, NULL);
  test_draft_place (&draft, "p1", "blade", 100, 150);
  g_autoptr (PpPlan) plan = plan_of (&draft);

  g_assert_cmpuint (plan->check->joints[0]->n_dabs, ==, 4);
  g_assert_cmpfloat_with_epsilon (plan->steps[0].minutes, 1.5, CLOSE);
  g_assert_cmpfloat_with_epsilon (plan->steps[0].volume, plan->check->joints[0]->volume, CLOSE);
}

/* A stem of 80 mm has two dabs. */
static void
test_stem (void)
{
  TestDraft draft;

  init_tiles (&draft);
  jug_add (&draft);
  test_draft_add_piece (&draft, "stem", "-3 -40, 3 -40, 3 40, -3 40", 5, NAN, NULL);
  jug_place_stem (&draft, "s1", 100, 135);
  g_autoptr (PpPlan) plan = plan_of (&draft);

  g_assert_cmpuint (plan->check->joints[0]->n_dabs, ==, 2);
  assert_steps (plan, "s1 1 m1");
  g_assert_cmpfloat_with_epsilon (plan->placed_by, 1.5, CLOSE);
}

/* A tile over the edge of a block hangs and must be held; what lies on it waits for the grab. Laid
 * on the block's middle it does not. */
static void
test_grab (void)
{
  static const struct { double y; gboolean hold; const char *steps; double placed_by; } rows[] = {
    { 100, FALSE, "p1 1 m1, p2 2 m1, p3 3 m1", 4 },
    { 112, TRUE, "p1 1 m1, p2 2 m1, p3 13 m2", 14 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;

      init_tiles (&draft);
      test_draft_place (&draft, "p1", "block", 100, 100);
      test_draft_place (&draft, "p2", "tile", 100, rows[i].y);
      test_draft_place (&draft, "p3", "tile", 100, rows[i].y);
      g_autoptr (PpPlan) plan = plan_of (&draft);

      g_assert_cmpint (plan->check->rests[1]->hold, ==, rows[i].hold);
      g_assert_cmpint (plan->steps[1].hold, ==, rows[i].hold);
      assert_steps (plan, rows[i].steps);
      g_assert_cmpfloat_with_epsilon (plan->placed_by, rows[i].placed_by, CLOSE);
      g_assert_cmpfloat_with_epsilon (plan->lower_bound, rows[i].placed_by, CLOSE);
      g_assert_true (plan->optimal);
    }
}

/* The held tile is glued already: left out, and binds nobody. */
static void
test_done (void)
{
  TestDraft draft;

  init_tiles (&draft);
  add_wire (&draft);
  draft.wire.knotted_at = DONE_AT;
  test_draft_place (&draft, "p1", "block", 100, 100);
  test_draft_place (&draft, "p2", "tile", 100, 112);
  test_draft_place (&draft, "p3", "tile", 100, 112);
  glue (&draft, 0);
  glue (&draft, 1);
  g_autoptr (PpPlan) plan = plan_of (&draft);

  assert_steps (plan, "p3 1 m1");
  g_assert_cmpfloat_with_epsilon (plan->placed_by, 2, CLOSE);
}

/* What is not in the accepted order follows in its stage; knots stay before pieces. */
static void
test_accepted (void)
{
  static const char * const accepted[] = { "p3", "knot:b", "p1", "knot:a", NULL };
  TestDraft draft;

  init_tiles (&draft);
  add_wire (&draft);
  test_draft_place (&draft, "p1", "tile", 60, 100);
  test_draft_place (&draft, "p2", "tile", 60, 150);
  test_draft_place (&draft, "p3", "tile", 60, 200);
  draft.panel.plan = accepted;
  g_autoptr (PpPlan) plan = plan_of (&draft);

  assert_steps (plan, "knot:b 1 m1, knot:a 1.5 m1, p3 2 m1, p1 3 m1, p2 4 m1");
}

/* Mixes of at most 0.12 ml hold two tiles: 0-1, 1-3; 3-4, 4-6; 6-7, 7-9. Of sittings of 6 minutes
 * the first ends with the second mix. */
static void
test_sittings (void)
{
  TestDraft draft;

  init_tiles (&draft);
  for (guint i = 0; i < 6; i++)
    {
      g_autofree char *id = g_strdup_printf ("p%u", i);

      test_draft_place (&draft, id, "tile", 60, 40 + 44 * i);
    }
  draft.adhesive.largest_mix = 0.12;
  draft.adhesive.smallest_mix = 0.1;
  draft.adhesive.sitting = 6;
  g_autoptr (PpPlan) plan = plan_of (&draft);

  assert_steps (plan, "p0 1 m1, p1 2 m1, p2 4 m2, p3 5 m2, p4 7 m3, p5 8 m3");
  g_assert_cmpuint (plan->steps[0].sitting, ==, 1);
  g_assert_cmpuint (plan->steps[3].sitting, ==, 1);
  g_assert_cmpuint (plan->steps[4].sitting, ==, 2);
}

static void
test_mix_small (void)
{
  static const struct { double knot_glue, life; const char *says; } rows[] = {
    { 7, 5, "7" },
    { 0.15, 1.25, "30" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;

      init_tiles (&draft);
      add_wire (&draft);
      draft.panel.limits.value[PP_LIMIT_KNOT_GLUE] = rows[i].knot_glue;
      draft.adhesive.working_life = rows[i].life;
      g_autoptr (PpPlan) plan = plan_of (&draft);

      g_assert_false (plan->exists);
      g_assert_false (plan->optimal);
      g_assert_cmpuint (plan->n_steps + plan->n_mixes, ==, 0);
      g_assert_true (isnan (plan->placed_by) && isnan (plan->lower_bound));
      g_assert_cmpuint (plan->findings->len, ==, 1);

      const PpFinding *finding = g_ptr_array_index (plan->findings, 0);

      g_assert_cmpstr (finding->code, ==, "mix-small");
      g_assert_cmpint (finding->level, ==, PP_LEVEL_FAULT);
      g_assert_cmpstr (finding->about[0], ==, "adhesive");
      g_assert_null (finding->about[1]);
      g_assert_true (isnan (finding->value) && isnan (finding->limit));
      g_test_message ("%s", finding->text);
      g_assert_nonnull (strstr (finding->text, rows[i].says));
    }
}

static void
test_cancelled (void)
{
  TestDraft draft;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  init_tiles (&draft);
  test_draft_place (&draft, "p1", "tile", 60, 100);

  g_autoptr (TestStack) stack = test_stack_new (&draft);
  g_autoptr (PpCheck) check = pp_check_new (stack->panel, NULL, NULL, NULL, NULL, NULL);

  g_cancellable_cancel (cancellable);
  g_assert_null (pp_plan_new (check, 0, cancellable, NULL, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/plan/nothing", test_nothing);
  g_test_add_func ("/plan/order-of-the-file", test_order_of_the_file);
  g_test_add_func ("/plan/mix", test_mix);
  g_test_add_func ("/plan/dabs", test_dabs);
  g_test_add_func ("/plan/stem", test_stem);
  g_test_add_func ("/plan/grab", test_grab);
  g_test_add_func ("/plan/done", test_done);
  g_test_add_func ("/plan/accepted", test_accepted);
  g_test_add_func ("/plan/sittings", test_sittings);
  g_test_add_func ("/plan/mix-small", test_mix_small);
  g_test_add_func ("/plan/cancelled", test_cancelled);

  return g_test_run ();
}
