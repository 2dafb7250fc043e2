/* test-bench.c: the clock at the bench, derived by hand beside each step.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mixing 1, life 5, grab 10, a knot 0.5, a piece 1, as in test-plan.c.
 */
#include "stack.h"

#include "glue/bench.h"
#include "glue/progress.h"
#include "panel/panel-error.h"

#include <math.h>

#define CLOSE 1e-6

typedef struct
{
  PpPanel *panel;
  PpPlan  *plan;
} Bench;

static GDateTime *
minute (double minutes)
{
  g_autoptr (GDateTime) start = g_date_time_new_from_iso8601 ("2026-05-02T18:00:00+02:00", NULL);

  return g_date_time_add_seconds (start, 60 * minutes);
}

static void
plan (Bench *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpCheck) check = pp_check_new (self->panel, NULL, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  g_clear_pointer (&self->plan, pp_plan_unref);
  self->plan = pp_plan_new (check, 0, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
}

/* A block, a tile over its edge that must be held, and a tile on that; a wire. In that order, as
 * the mixes have it: knots, p1, p2 to 5, then p3 from a mix of its own. */
static void
bench_init (Bench *self)
{
  TestDraft draft;

  test_draft_init (&draft, 200, 300, 6);
  test_draft_add_piece (&draft, "tile", "-20 -20, 20 -20, 20 20, -20 20", 4, NAN, NULL);
  test_draft_add_piece (&draft, "block", "-10 -10, 10 -10, 10 10, -10 10", 10, NAN, NULL);
  test_draft_add_hole (&draft, "a", 60, 25, 6);
  test_draft_add_hole (&draft, "b", 140, 30, 6);
  test_draft_add_wire (&draft, 90);
  test_draft_place (&draft, "p1", "block", 100, 100);
  test_draft_place (&draft, "p2", "tile", 100, 112);
  test_draft_place (&draft, "p3", "tile", 100, 112);

  g_autoptr (TestStack) stack = test_stack_new (&draft);

  *self = (Bench) { .panel = pp_panel_ref (stack->panel) };
  plan (self);
}

static void
bench_clear (Bench *self)
{
  pp_panel_unref (self->panel);
  pp_plan_unref (self->plan);
}

static void
take (Bench *self, PpPanel *next, GError *error)
{
  g_assert_no_error (error);
  pp_panel_unref (self->panel);
  self->panel = next;
}

static void
mix (Bench *self, double minutes)
{
  g_autoptr (GDateTime) at = minute (minutes);
  g_autoptr (GError) error = NULL;

  take (self, pp_progress_mixed (self->panel, at, &error), error);
}

static void
place (Bench *self, const char *job, double minutes)
{
  g_autoptr (GDateTime) at = minute (minutes);
  g_autoptr (GError) error = NULL;

  take (self, pp_progress_placed (self->panel, self->plan->order, job, at, &error), error);
}

static void
assert_next (const Bench *self, double minutes, PpNext next, const char *job, double wait)
{
  g_autoptr (GDateTime) now = minute (minutes);
  PpBench bench;

  pp_bench_read (&bench, self->plan, self->panel, now);
  g_assert_cmpint (bench.next, ==, next);
  g_assert_cmpfloat_with_epsilon (bench.wait, wait, CLOSE);
  g_assert_cmpint (bench.step != NULL, ==, job != NULL);
  if (job != NULL)
    {
      g_autofree char *id = pp_job_dup_id (self->panel, 2, bench.step->job);

      g_assert_cmpstr (id, ==, job);
    }
}

static void
test_evening (void)
{
  Bench bench;

  bench_init (&bench);
  assert_next (&bench, 0, PP_NEXT_MIX, "knot:a", 0);
  mix (&bench, 0);
  assert_next (&bench, 0.25, PP_NEXT_PLACE, "knot:a", 0.75);
  place (&bench, "knot:a", 1.5);
  g_assert_null (bench.panel->wire->knotted_at);
  assert_next (&bench, 1.5, PP_NEXT_PLACE, "knot:b", 0);
  place (&bench, "knot:b", 2);
  g_assert_cmpstr (bench.panel->wire->knotted_at, ==, "2026-05-02T18:02:00+02:00");
  place (&bench, "p1", 3);
  assert_next (&bench, 3, PP_NEXT_PLACE, "p2", 0);
  /* At 4.5 a minute's work is not done by 5. */
  assert_next (&bench, 4.5, PP_NEXT_MIX, "p2", 0);
  place (&bench, "p2", 4);
  /* Held until 14, so mixing begins at 13. */
  assert_next (&bench, 4, PP_NEXT_MIX, "p3", 9);
  mix (&bench, 13);
  assert_next (&bench, 13.5, PP_NEXT_PLACE, "p3", 0.5);
  place (&bench, "p3", 15);
  assert_next (&bench, 16, PP_NEXT_NONE, NULL, 59);
  bench_clear (&bench);
}

/* The clock of the mix, and what to pour: four jobs of 0.15, 0.15, 0.05 and 0.05 ml are in the
 * first; 2 ml is the least. */
static void
test_clock (void)
{
  Bench bench;
  g_autoptr (GDateTime) early = minute (0), late = minute (4);
  PpBench read;

  bench_init (&bench);
  pp_bench_read (&read, bench.plan, bench.panel, early);
  g_assert_false (read.is_open);
  g_assert_true (isnan (read.age) && isnan (read.left));
  g_assert_cmpfloat_with_epsilon (read.mix.need, bench.plan->mixes[0].need, CLOSE);
  g_assert_cmpfloat_with_epsilon (read.mix.a, 1, CLOSE);
  g_assert_cmpfloat_with_epsilon (read.mix.b, 1, CLOSE);

  mix (&bench, 0.5);
  pp_bench_read (&read, bench.plan, bench.panel, late);
  g_assert_true (read.is_open);
  g_assert_cmpfloat_with_epsilon (read.age, 3.5, CLOSE);
  g_assert_cmpfloat_with_epsilon (read.left, 1.5, CLOSE);
  bench_clear (&bench);
}

/* Who finds that the held p2 holds, mixes at 6 and not at 13: then p3 is at hand, or the mix would be
 * past before 14 and a third one asked for. With some of it used that is asked for. */
static void
test_not_waited (void)
{
  Bench bench;

  bench_init (&bench);
  mix (&bench, 0);
  place (&bench, "knot:a", 1.5);
  place (&bench, "knot:b", 2);
  place (&bench, "p1", 3);
  place (&bench, "p2", 4);
  assert_next (&bench, 6, PP_NEXT_MIX, "p3", 7);
  mix (&bench, 6);
  assert_next (&bench, 6.5, PP_NEXT_PLACE, "p3", 7.5);
  /* the file opened again: a plan of its own */
  plan (&bench);
  assert_next (&bench, 9, PP_NEXT_PLACE, "p3", 5);
  /* not done by 11 */
  assert_next (&bench, 10.5, PP_NEXT_MIX, "p3", 2.5);
  place (&bench, "p3", 9);
  assert_next (&bench, 9, PP_NEXT_NONE, NULL, 60);
  bench_clear (&bench);
}

/* p3 needs a mix of its own, unless who finds that p2 holds places it from this one while it lives. */
static void
test_can_hurry (void)
{
  static const struct { double at; gboolean can; } rows[] = { { 3.6, TRUE }, { 4.5, FALSE } };
  Bench bench;

  bench_init (&bench);
  mix (&bench, 0);
  place (&bench, "knot:a", 1.5);
  place (&bench, "knot:b", 2);
  place (&bench, "p1", 3);
  place (&bench, "p2", 3.5);
  plan (&bench);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GDateTime) now = minute (rows[i].at);
      PpBench read;

      assert_next (&bench, rows[i].at, PP_NEXT_MIX, "p3", 13.5 - 1 - rows[i].at);
      pp_bench_read (&read, bench.plan, bench.panel, now);
      g_assert_cmpint (read.can_hurry, ==, rows[i].can);
    }
  bench_clear (&bench);
}

/* A mix from which a knot was tied is stirred; taken back, that was a stray press. */
static void
test_stirred (void)
{
  Bench bench;
  g_autoptr (GDateTime) at = minute (0.4);
  g_autoptr (GError) error = NULL;

  bench_init (&bench);
  mix (&bench, 0);
  place (&bench, "knot:a", 0.25);
  assert_next (&bench, 0.5, PP_NEXT_PLACE, "knot:b", 0);
  take (&bench, pp_progress_taken_back (bench.panel, bench.plan->order, "knot:a", at, &error),
        error);
  assert_next (&bench, 0.5, PP_NEXT_PLACE, "knot:a", 0.5);
  bench_clear (&bench);
}

/* After a pause the mix is past; after a stray press the one before it goes on. */
static void
test_pause_and_stray_mix (void)
{
  Bench bench;
  g_autoptr (GDateTime) at = minute (2);
  g_autoptr (GError) error = NULL;

  bench_init (&bench);
  mix (&bench, 0);
  mix (&bench, 2);
  assert_next (&bench, 2.5, PP_NEXT_PLACE, "knot:a", 0.5);
  take (&bench, pp_progress_unmixed (bench.panel, at, &error), error);
  assert_next (&bench, 2.5, PP_NEXT_PLACE, "knot:a", 0);
  take (&bench, pp_progress_paused (bench.panel, at, &error), error);
  assert_next (&bench, 2.5, PP_NEXT_MIX, "knot:a", 0);
  bench_clear (&bench);
}

static void
assert_refused (PpPanel *panel, GError **error, int code)
{
  g_assert_null (panel);
  g_assert_error (*error, PP_PANEL_ERROR, code);
  g_clear_error (error);
}

static void
test_refused (void)
{
  Bench bench;
  g_autoptr (GDateTime) at = minute (1);
  g_autoptr (GError) error = NULL;
  static const char * const p1[] = { "p1", NULL };

  bench_init (&bench);
  const PpOrder *order = bench.plan->order;

  assert_refused (pp_progress_placed (bench.panel, order, "p9", at, &error), &error,
                  PP_PANEL_ERROR_REFERENCE);
  assert_refused (pp_progress_placed (bench.panel, order, "p2", at, &error), &error,
                  PP_PANEL_ERROR_VALUE);
  assert_refused (pp_progress_fell (bench.panel, order, p1, at, &error), &error,
                  PP_PANEL_ERROR_VALUE);
  assert_refused (pp_progress_moved (bench.panel, "p1", (PpPose) { 0 }, at, &error), &error,
                  PP_PANEL_ERROR_VALUE);
  place (&bench, "p1", 2);
  assert_refused (pp_progress_placed (bench.panel, order, "p1", at, &error), &error,
                  PP_PANEL_ERROR_VALUE);
  place (&bench, "p2", 3);
  assert_refused (pp_progress_taken_back (bench.panel, order, "p1", at, &error), &error,
                  PP_PANEL_ERROR_VALUE);
  bench_clear (&bench);
}

/* One fewer on the tray, none of what fell; broken before it was glued counts too. */
static void
test_broke (void)
{
  Bench bench;
  g_autoptr (GDateTime) at = minute (4);
  g_autoptr (GError) error = NULL;
  static const char * const both[] = { "p1", "p2", NULL };
  static const char * const p3[] = { "p3", NULL };

  bench_init (&bench);
  const PpOrder *order = bench.plan->order;
  const guint n_tiles = pp_panel_find_piece (bench.panel, "tile", NULL)->count;

  place (&bench, "p1", 2);
  place (&bench, "p2", 3);
  g_auto (GStrv) above = pp_progress_find_above (bench.panel, order, "p1");

  g_assert_cmpuint (g_strv_length (above), ==, 1);
  g_assert_cmpstr (above[0], ==, "p2");
  take (&bench, pp_progress_fell (bench.panel, order, both, at, &error), error);
  g_assert_cmpuint (pp_panel_find_piece (bench.panel, "tile", NULL)->count, ==, n_tiles);
  take (&bench, pp_progress_broke (bench.panel, order, p3, at, &error), error);
  g_assert_cmpuint (pp_panel_find_piece (bench.panel, "tile", NULL)->count, ==,
                    n_tiles > 0 ? n_tiles - 1 : 0);
  assert_next (&bench, 5, PP_NEXT_MIX, "knot:a", 0);
  bench_clear (&bench);
}

/* A plan made without it has no step for what came off since. */
static void
test_plan_anew (void)
{
  Bench bench;
  g_autoptr (GDateTime) at = minute (4);
  g_autoptr (GError) error = NULL;
  static const char * const p1[] = { "p1", NULL };

  bench_init (&bench);
  place (&bench, "p1", 2);
  plan (&bench);
  take (&bench, pp_progress_fell (bench.panel, bench.plan->order, p1, at, &error), error);
  assert_next (&bench, 4, PP_NEXT_PLAN, NULL, 0);
  plan (&bench);
  assert_next (&bench, 4, PP_NEXT_MIX, "knot:a", 0);
  bench_clear (&bench);
}

/* A file that says the wire is knotted and nothing more: one knot comes off, the other stays. */
static void
test_one_knot_falls (void)
{
  Bench bench;
  g_autoptr (GDateTime) at = minute (4);
  g_autoptr (GError) error = NULL;
  static const char * const knot[] = { "knot:b", NULL };
  PpWire wire;

  bench_init (&bench);
  wire = *bench.panel->wire;
  wire.knotted_at = "2026-05-01T10:00:00Z";
  g_autoptr (PpWire) knotted = pp_wire_new (&wire, NULL);

  take (&bench, pp_edit_set_wire (bench.panel, knotted, &error), error);
  take (&bench, pp_progress_fell (bench.panel, bench.plan->order, knot, at, &error), error);
  g_assert_null (bench.panel->wire->knotted_at);
  assert_next (&bench, 4, PP_NEXT_MIX, "knot:b", 0);
  mix (&bench, 5);
  place (&bench, "knot:b", 7);
  g_assert_nonnull (bench.panel->wire->knotted_at);
  bench_clear (&bench);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/bench/evening", test_evening);
  g_test_add_func ("/bench/clock", test_clock);
  g_test_add_func ("/bench/not-waited", test_not_waited);
  g_test_add_func ("/bench/can-hurry", test_can_hurry);
  g_test_add_func ("/bench/stirred", test_stirred);
  g_test_add_func ("/bench/pause-and-stray-mix", test_pause_and_stray_mix);
  g_test_add_func ("/bench/refused", test_refused);
  g_test_add_func ("/bench/broke", test_broke);
  g_test_add_func ("/bench/plan-anew", test_plan_anew);
  g_test_add_func ("/bench/one-knot-falls", test_one_knot_falls);

  return g_test_run ();
}
