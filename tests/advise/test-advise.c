/* test-advise.c: searches that answer alike whoever does them, what changes cost, what is held.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/advise.h"
#include "advise/crew.h"
#include "advise/dice.h"
#include "advise/guard.h"
#include "file/panel-write.h"
#include "panel/edit.h"

#include "load-sample.h"

#define STEPS 24

static PpPanel *
step (PpPanel *panel,
      PpPanel *next)
{
  g_assert_nonnull (next);
  pp_panel_unref (panel);
  return next;
}

/* SplitMix64 from 1234567, as its versions in other languages give them, and computed in one. */
static void
test_dice (void)
{
  const guint64 expected[] = { G_GUINT64_CONSTANT (6457827717110365317),
                               G_GUINT64_CONSTANT (3203168211198807973),
                               G_GUINT64_CONSTANT (9817491932198370423),
                               G_GUINT64_CONSTANT (4593380528125082431),
                               G_GUINT64_CONSTANT (16408922859458223821) };
  PpDice dice = { 1234567 };

  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    g_assert_cmpuint (pp_dice_roll (&dice), ==, expected[i]);
  for (guint i = 0; i < 1000; i++)
    {
      double share = pp_dice_share (&dice);

      g_assert_true (share >= 0 && share < 1);
      g_assert_cmpuint (pp_dice_pick (&dice, 3), <, 3);
    }
}

static void
count_number (guint    worker,
              guint    number,
              gpointer data)
{
  int *counts = data;

  g_atomic_int_inc (&counts[number]);
}

static void
test_crew (void)
{
  for (guint workers = 1; workers <= 3; workers++)
    {
      g_autoptr (PpCrew) crew = pp_crew_new (workers);
      int counts[50] = { 0 };

      for (guint round = 1; round <= 20; round++)
        {
          pp_crew_run (crew, G_N_ELEMENTS (counts), count_number, counts);
          for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
            g_assert_cmpint (counts[i], ==, (int) round);
        }
    }
}

/* By hand, from the table of costs. */
static void
test_cost (void)
{
  g_autoptr (PpPanel) given = load_sample ("towpath-in-june");
  const PpPlacement *first = pp_panel_placement (given, 0);
  PpPose pose = { first->x + 3, first->y - 4, first->rotation - 350, first->mirrored };
  PpPanel *panel = pp_edit_set_pose (given, first->id, pose, NULL);
  const char *last[] = { pp_panel_placement (given, given->placements->len - 1)->id, NULL };
  PpHole hole = *pp_panel_hole (given, 2);
  PpWire wire = *given->wire;
  g_autoptr (PpHole) moved = NULL;
  g_autoptr (PpWire) longer = NULL;

  g_assert_cmpfloat (pp_change_cost (given, given), ==, 0);
  g_assert_cmpfloat_with_epsilon (pp_change_cost (given, panel), 5 + 2, PP_TIE); /* 10° to go */
  panel = step (panel, pp_edit_restack (panel, pp_panel_placement (given, 3)->id, 9, NULL));
  g_assert_cmpfloat_with_epsilon (pp_change_cost (given, panel), 17, PP_TIE);
  panel = step (panel, pp_edit_restack (panel, pp_panel_placement (given, 5)->id, 0, NULL));
  g_assert_cmpfloat_with_epsilon (pp_change_cost (given, panel), 27, PP_TIE);
  panel = step (panel, pp_edit_group (panel, last, "elsewhere", NULL));
  g_assert_cmpfloat_with_epsilon (pp_change_cost (given, panel), 32, PP_TIE);
  hole.y -= 6;
  moved = pp_hole_new (&hole, NULL);
  panel = step (panel, pp_edit_set_hole (panel, moved, NULL));
  g_assert_cmpfloat_with_epsilon (pp_change_cost (given, panel), 44, PP_TIE);
  wire.length -= 8;
  longer = pp_wire_new (&wire, NULL);
  panel = step (panel, pp_edit_set_wire (panel, longer, NULL));
  g_assert_cmpfloat_with_epsilon (pp_change_cost (given, panel), 48, PP_TIE);
  panel = step (panel, pp_edit_remove (panel, last, NULL));
  g_assert_cmpfloat_with_epsilon (pp_change_cost (given, panel), 48 - 5 + 40, PP_TIE);
  pose.x = 60;
  panel = step (panel, pp_edit_place (panel, "campion", pose, NULL, NULL));
  g_assert_cmpfloat_with_epsilon (pp_change_cost (given, panel), 123, PP_TIE);
  pp_panel_unref (panel);
}

static void
test_turn (void)
{
  g_assert_cmpfloat (pp_turn_between (350, 10), ==, 20);
  g_assert_cmpfloat (pp_turn_between (10, 350), ==, -20);
  g_assert_cmpfloat (pp_turn_between (0, 180), ==, 180);
  g_assert_cmpfloat (pp_turn_between (-170, 170), ==, -20);
  g_assert_cmpfloat (pp_turn_between (725, 0), ==, -5);
}

/* One move of each kind is one change, in words. */
static void
test_words (void)
{
  g_autoptr (PpPanel) given = load_sample ("towpath-in-june");
  const PpPlacement *fern = NULL;
  g_autoptr (PpPanel) panel = NULL;
  g_autoptr (PpAdvice) advice = NULL;
  const PpChange *change;

  for (guint i = 0; i < given->placements->len; i++)
    if (g_str_equal (pp_panel_placement (given, i)->piece, "fern"))
      fern = pp_panel_placement (given, i);
  g_assert_nonnull (fern);
  panel = pp_edit_set_pose (given, fern->id, (PpPose) { fern->x - 9, fern->y, fern->rotation + 20,
                                                        fern->mirrored }, NULL);
  advice = pp_advice_new (given, panel);
  g_assert_cmpuint (advice->changes->len, ==, 1);
  change = g_ptr_array_index (advice->changes, 0);
  g_assert_cmpint (change->kind, ==, PP_CHANGE_MOVE);
  g_assert_cmpstr (change->about, ==, fern->id);
  g_assert_cmpstr (change->text, ==, "Fern frond: 9 mm to the left, turned by 20° clockwise");
  g_assert_cmpfloat_with_epsilon (advice->cost, 13, PP_TIE);
}

static char *
put_right (const PpPanel *panel,
           guint          threads,
           guint64        seed)
{
  const PpSearchLimits limits = { .seed = seed, .steps = STEPS, .threads = threads };
  g_autoptr (PpAdvice) advice = pp_advise_all (panel, &limits, NULL, NULL, NULL);

  g_assert_cmpuint (advice->steps, ==, STEPS);
  return g_string_free (pp_panel_write (advice->panel), FALSE);
}

static void
test_threads (void)
{
  g_autoptr (PpPanel) panel = load_sample ("towpath-in-june");

  for (guint64 seed = 0; seed < 2; seed++)
    {
      g_autofree char *alone = put_right (panel, 1, seed);
      g_autofree char *two = put_right (panel, 2, seed);
      g_autofree char *again = put_right (panel, 2, seed);
      g_autofree char *three = put_right (panel, 3, seed);

      g_assert_cmpstr (alone, ==, two);
      g_assert_cmpstr (two, ==, again);
      g_assert_cmpstr (alone, ==, three);
    }
}

static void
stop_at_once (const PpAdviceProgress *progress,
              gpointer                data)
{
  guint64 *steps = g_object_get_data (data, "steps");

  *steps = progress->steps;
  g_cancellable_cancel (data);
}

/* What was stopped gives what as many steps give. */
static void
test_stop (void)
{
  g_autoptr (PpPanel) panel = load_sample ("towpath-in-june");
  g_autoptr (GCancellable) stop = g_cancellable_new ();
  PpSearchLimits limits = { .steps = 1000 };
  guint64 steps = 0;
  g_autoptr (PpAdvice) stopped = NULL;
  g_autoptr (PpAdvice) counted = NULL;
  g_autoptr (GString) one = NULL;
  g_autoptr (GString) other = NULL;

  g_object_set_data (G_OBJECT (stop), "steps", &steps);
  stopped = pp_advise_all (panel, &limits, stop, stop_at_once, stop);
  g_assert_cmpuint (stopped->steps, ==, steps);
  g_assert_cmpuint (steps, <, 100);
  limits.steps = steps;
  counted = pp_advise_all (panel, &limits, NULL, NULL, NULL);
  one = pp_panel_write (stopped->panel);
  other = pp_panel_write (counted->panel);
  g_assert_cmpstr (one->str, ==, other->str);
  limits.steps = 1000;
  pp_advice_free (g_steal_pointer (&stopped));
  stopped = pp_advise_all (panel, &limits, stop, NULL, NULL);
  g_assert_true (stopped->panel == panel);
  g_assert_false (stopped->changed);
}

/* What nothing can cure, and what is not there, changes nothing. */
static void
test_none (void)
{
  g_autoptr (PpPanel) panel = load_sample ("walled-garden");
  const PpSearchLimits limits = { .steps = STEPS };
  const char *jug[] = { "jug", NULL };
  g_autoptr (PpAdvice) fired = pp_advise_one (panel, "fire-slower", jug, &limits, NULL, NULL, NULL);
  g_autoptr (PpAdvice) absent = pp_advise_one (panel, "seam", jug, &limits, NULL, NULL, NULL);

  g_assert_true (fired->panel == panel);
  g_assert_cmpuint (fired->changes->len, ==, 0);
  g_assert_true (absent->panel == panel);
  g_assert_cmpuint (absent->steps, ==, 0);
}

/* The last placement glued: it and what it rests on stay, and nothing may slip under it. */
static void
test_guard (void)
{
  PpPanel *panel = load_sample ("towpath-in-june");
  guint last = panel->placements->len - 1;
  PpPlacement draft = *pp_panel_placement (panel, last);
  g_autoptr (PpPlacement) glued = NULL;
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  PpPanel whole = *panel;
  g_autoptr (PpCheck) check = NULL;
  g_autoptr (PpGuard) guard = NULL;
  g_autoptr (PpPanel) under = NULL;
  g_autoptr (PpPanel) over = NULL;
  g_autoptr (PpPanel) apart = NULL;

  draft.glued_at = "2026-06-01T10:00:00+01:00";
  glued = pp_placement_new (&draft, NULL);
  for (guint i = 0; i < last; i++)
    g_ptr_array_add (list, pp_placement_ref (pp_panel_placement (panel, i)));
  g_ptr_array_add (list, pp_placement_ref (glued));
  whole.placements = list;
  panel = step (panel, pp_panel_new (&whole, NULL));
  check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  guard = pp_guard_new (check);
  g_assert_true (pp_guard_holds (guard, glued->id));
  for (guint i = 0; i < last; i++)
    if (pp_rest_rests_on (check->rests[last], PP_OWNER (PP_OWNER_PLACEMENT, i)))
      g_assert_true (pp_guard_holds (guard, pp_panel_placement (panel, i)->id));
  g_assert_true (pp_guard_allows (guard, panel));
  over = pp_edit_restack (panel, pp_panel_placement (panel, 0)->id, last, NULL);
  g_assert_true (pp_guard_allows (guard, over));
  under = pp_edit_restack (over, pp_panel_placement (panel, 0)->id, 0, NULL);
  g_assert_true (pp_guard_allows (guard, under));
  pp_guard_free (g_steal_pointer (&guard));
  pp_check_unref (g_steal_pointer (&check));
  check = pp_check_new (over, NULL, NULL, NULL, NULL, NULL);
  guard = pp_guard_new (check);
  g_assert_false (pp_guard_allows (guard, under));
  apart = pp_edit_restack (over, pp_panel_placement (panel, 2)->id, 0, NULL);
  g_assert_true (pp_guard_allows (guard, apart));
  pp_panel_unref (panel);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/advise/dice", test_dice);
  g_test_add_func ("/advise/crew", test_crew);
  g_test_add_func ("/advise/cost", test_cost);
  g_test_add_func ("/advise/turn", test_turn);
  g_test_add_func ("/advise/words", test_words);
  g_test_add_func ("/advise/threads", test_threads);
  g_test_add_func ("/advise/stop", test_stop);
  g_test_add_func ("/advise/none", test_none);
  g_test_add_func ("/advise/guard", test_guard);
  return g_test_run ();
}
