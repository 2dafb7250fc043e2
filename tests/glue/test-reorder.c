/* test-reorder.c: what may be moved in an order, held against the scheduler.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The scheduler keeps an accepted order as far as it may, by rules of its own (line.c, verify.c).
 * So each move of one step to another place is asked, and tried: where it may be, the plan made from
 * the new order has exactly that order; where not, it has another.
 */
#include "stack.h"

#include "glue/reorder.h"
#include "panel/edit.h"

static PpPlan *
plan_of (const PpPanel *panel)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpCheck) check = pp_check_new (panel, NULL, NULL, NULL, NULL, &error);
  PpPlan *plan;

  g_assert_no_error (error);
  plan = pp_plan_new (check, 0, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (plan->exists);
  return plan;
}

/* A wire, two tiles apart, a block half over one of them, a tile on the block, and a cup. */
static PpPanel *
make_panel (void)
{
  TestDraft draft;

  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_piece (&draft, "tile", "-20 -20, 20 -20, 20 20, -20 20", 4, NAN, NULL);
  test_draft_add_piece (&draft, "block", "-10 -10, 10 -10, 10 10, -10 10", 10, NAN, NULL);
  test_draft_add_hole (&draft, "a", 60, 25, 6);
  test_draft_add_hole (&draft, "b", 140, 30, 6);
  test_draft_add_wire (&draft, 90);
  test_draft_place (&draft, "p1", "tile", 60, 100);
  test_draft_place (&draft, "p2", "tile", 240, 100);
  test_draft_place (&draft, "p3", "block", 60, 110);
  test_draft_place (&draft, "p4", "tile", 60, 112);
  test_draft_place (&draft, "p5", "block", 150, 250);

  g_autoptr (TestStack) stack = test_stack_new (&draft);

  return pp_panel_ref (stack->panel);
}

static gboolean
has_order (const PpPlan *plan,
           char        **jobs)
{
  g_assert_cmpuint (g_strv_length (jobs), ==, plan->n_steps);
  for (guint i = 0; i < plan->n_steps; i++)
    {
      g_autofree char *id = pp_job_dup_id (plan->check->panel, plan->order->n_knots,
                                           plan->steps[i].job);

      if (!g_str_equal (id, jobs[i]))
        return FALSE;
    }
  return TRUE;
}

static void
test_every_move (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpPlan) plan = plan_of (panel);
  guint n_may = 0, n_rests = 0, n_stages = 0;

  g_assert_cmpuint (plan->n_steps, ==, 7);
  for (guint from = 0; from < plan->n_steps; from++)
    for (guint to = 0; to < plan->n_steps; to++)
      {
        g_autoptr (GError) error = NULL;
        g_auto (GStrv) jobs = pp_reorder_jobs (plan, panel, from, to);
        g_autoptr (PpPanel) next = pp_edit_set_order (panel, (const char * const *) jobs, &error);
        g_autoptr (PpPlan) then = NULL;
        PpBar bar = pp_reorder_ask (plan, from, to).bar;

        g_assert_no_error (error);
        then = plan_of (next);
        g_assert_cmpint (has_order (then, jobs), ==, bar == PP_BAR_NONE);
        n_may += bar == PP_BAR_NONE;
        n_rests += bar == PP_BAR_RESTS;
        n_stages += bar == PP_BAR_STAGES;
      }
  /* so that each answer is met */
  g_assert_cmpuint (n_may, >, 7);
  g_assert_cmpuint (n_rests, >, 0);
  g_assert_cmpuint (n_stages, >, 0);
}

/* What was accepted and is done stays in front, so that taking it back brings it to its place. */
static void
test_keeps_done (void)
{
  const char * const accepted[] = { "p2", "p1", NULL };
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpPanel) ordered = pp_edit_set_order (panel, accepted, &error);
  g_autoptr (GPtrArray) placements = NULL;
  PpPlacement glued = *pp_panel_placement (ordered, 1);
  PpPanel draft = *ordered;

  g_assert_no_error (error);
  glued.glued_at = "2026-05-02T10:00:00+02:00";
  placements = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  for (guint i = 0; i < ordered->placements->len; i++)
    g_ptr_array_add (placements, i == 1 ? pp_placement_new (&glued, &error)
                                        : pp_placement_ref (pp_panel_placement (ordered, i)));
  draft.placements = placements;

  g_autoptr (PpPanel) worked = pp_panel_new (&draft, &error);
  g_autoptr (PpPlan) plan = plan_of (worked);
  g_auto (GStrv) jobs = pp_reorder_jobs (plan, worked, 0, 0);

  g_assert_no_error (error);
  g_assert_cmpuint (g_strv_length (jobs), ==, plan->n_steps + 1);
  g_assert_cmpstr (jobs[0], ==, "p2");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reorder/every-move", test_every_move);
  g_test_add_func ("/reorder/keeps-done", test_keeps_done);
  return g_test_run ();
}
