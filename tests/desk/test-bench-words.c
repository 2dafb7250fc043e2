/* test-bench-words.c: what the bench says as its clock goes on, worked out by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mixing takes 1 minute and a mix lives for 5. The time is what a clock of ours says.
 */
#include "desk/bench-words.h"

#include "desk/clock.h"
#include "glue/progress.h"

#include "small-panel.h"

#include <string.h>

static const SmallPanel start = { .tray = "oxeye", .placements = "p1 p2" };

static GDateTime *
clock_cb (gpointer seconds)
{
  g_autoptr (GDateTime) zero = g_date_time_new_from_iso8601 ("2026-05-02T18:00:00+02:00", NULL);

  return g_date_time_add_seconds (zero, *(double *) seconds);
}

typedef struct
{
  double   seconds;
  PpClock  clock;
  PpPanel *panel;
  PpPlan  *plan;
} Evening;

static void
evening_init (Evening *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpCheck) check = NULL;

  *self = (Evening) { .panel = small_panel_good (&start) };
  self->clock = (PpClock) { clock_cb, &self->seconds };
  check = pp_check_new (self->panel, NULL, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  self->plan = pp_plan_new (check, 0, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (self->plan->exists);
}

static void
evening_clear (Evening *self)
{
  pp_panel_unref (self->panel);
  pp_plan_unref (self->plan);
}

static PpBenchWords *
say_at (Evening *self,
        double   seconds)
{
  g_autoptr (GDateTime) now = NULL;
  PpBench bench;

  self->seconds = seconds;
  now = pp_clock_now (&self->clock);
  pp_bench_read (&bench, self->plan, self->panel, now);
  return pp_bench_words_new (&bench, self->plan, self->panel, now);
}

static void
mix_at (Evening *self,
        double   seconds)
{
  g_autoptr (GDateTime) now = NULL;
  g_autoptr (GError) error = NULL;
  PpPanel *next;

  self->seconds = seconds;
  now = pp_clock_now (&self->clock);
  next = pp_progress_mixed (self->panel, now, &error);
  g_assert_no_error (error);
  pp_panel_unref (self->panel);
  self->panel = next;
}

static void
test_clock (void)
{
  static const struct
  {
    double      seconds;
    PpNext      next;
    const char *age;
    const char *life;
    const char *wait;
    gboolean    waits;
    gboolean    is_late;
  } rows[] = {
    { 10, PP_NEXT_PLACE, "0:10", "of 5:00", "Stir 0:50", TRUE, FALSE },
    { 59.5, PP_NEXT_PLACE, "0:59", "of 5:00", "Stir 0:01", TRUE, FALSE },
    { 60, PP_NEXT_PLACE, "1:00", "of 5:00", NULL, FALSE, FALSE },
    { 200, PP_NEXT_PLACE, "3:20", "of 5:00", NULL, FALSE, FALSE },
    { 239, PP_NEXT_PLACE, "3:59", "of 5:00", NULL, FALSE, FALSE },
    { 240, PP_NEXT_PLACE, "4:00", "only 1:00 left", NULL, FALSE, TRUE },
    /* a step of a minute would end when the mix is past: a new one */
    { 241, PP_NEXT_MIX, "4:01", "only 0:59 left", NULL, FALSE, TRUE },
    { 300, PP_NEXT_MIX, "", "no glue is mixed", NULL, FALSE, FALSE },
  };
  Evening evening;

  evening_init (&evening);
  g_assert_cmpfloat (evening.plan->steps[0].minutes, ==, 1);
  mix_at (&evening, 0);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (PpBenchWords) words = say_at (&evening, rows[i].seconds);

      g_assert_cmpint (words->next, ==, rows[i].next);
      g_assert_cmpstr (words->age, ==, rows[i].age);
      g_assert_cmpstr (words->life, ==, rows[i].life);
      g_assert_cmpint (words->waits, ==, rows[i].waits);
      g_assert_cmpint (words->is_late, ==, rows[i].is_late);
      if (rows[i].wait != NULL)
        g_assert_cmpstr (words->wait, ==, rows[i].wait);
      g_assert_cmpstr (words->count, ==, "Step 1 of 2");
    }
  evening_clear (&evening);
}

/* What is held longer than the mix is stirred is waited for, and not stirred for. */
static void
test_wait (void)
{
  Evening evening;
  PpBench bench;

  evening_init (&evening);
  mix_at (&evening, 0);
  evening.seconds = 10;

  g_autoptr (GDateTime) now = pp_clock_now (&evening.clock);

  pp_bench_read (&bench, evening.plan, evening.panel, now);
  bench.wait += 2;

  g_autoptr (PpBenchWords) words = pp_bench_words_new (&bench, evening.plan, evening.panel, now);

  g_assert_cmpstr (words->wait, ==, "Wait 2:50");
  g_assert_true (words->waits);
  evening_clear (&evening);
}

/* A piece grabs after 10 minutes and is hard after 60: between the two its rim can be trimmed. */
static void
test_trim (void)
{
  Evening evening;

  evening_init (&evening);
  mix_at (&evening, 0);

  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) at = NULL;
  g_autofree char *id = pp_job_dup_id (evening.panel, 0, evening.plan->steps[0].job);
  PpPanel *next;

  evening.seconds = 120;
  at = pp_clock_now (&evening.clock);
  next = pp_progress_placed (evening.panel, evening.plan->order, id, at, &error);
  g_assert_no_error (error);
  pp_panel_unref (evening.panel);
  evening.panel = next;

  g_autoptr (PpBenchWords) early = say_at (&evening, 120 + 599);
  g_autoptr (PpBenchWords) now = say_at (&evening, 120 + 601);
  g_autoptr (PpBenchWords) late = say_at (&evening, 120 + 3601);

  g_assert_null (strstr (early->meanwhile, "trimmed"));
  g_assert_nonnull (strstr (now->meanwhile, "trimmed"));
  g_assert_null (strstr (late->meanwhile, "trimmed"));
  evening_clear (&evening);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench-words/clock", test_clock);
  g_test_add_func ("/bench-words/wait", test_wait);
  g_test_add_func ("/bench-words/trim", test_trim);
  return g_test_run ();
}
