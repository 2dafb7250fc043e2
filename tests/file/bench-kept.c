/* bench-kept.c: a glue-up goes on where it was after the file was closed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A whole evening of the sample, with what goes wrong in one. After each act the panel is written
 * and read back, and both are planned and asked what comes next: the file must say as much as the
 * memory does.
 */
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "glue/bench.h"
#include "glue/progress.h"
#include "sample.h"

typedef struct
{
  PpPanel   *panel;
  PpPlan    *plan;
  GDateTime *now;
  guint      n_acts;
} Evening;

static PpPanel *
read_back (const PpPanel *panel)
{
  GString *text = pp_panel_write (panel);
  g_autoptr (GBytes) bytes = g_bytes_new_take (text->str, text->len);
  g_autoptr (GError) error = NULL;
  PpPanel *back;

  g_string_free (text, FALSE);
  back = pp_panel_read (bytes, &error);
  g_assert_no_error (error);
  return back;
}

static PpPlan *
plan_of (const PpPanel *panel)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpCheck) check = pp_check_new (panel, NULL, NULL, NULL, NULL, &error);
  PpPlan *plan;

  g_assert_no_error (error);
  plan = pp_plan_new (check, 20000, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return plan;
}

static void
assert_same_plan (const PpPlan *a,
                  const PpPlan *b)
{
  g_assert_cmpuint (a->n_steps, ==, b->n_steps);
  g_assert_cmpuint (a->n_mixes, ==, b->n_mixes);
  for (guint i = 0; i < a->n_steps; i++)
    {
      g_assert_cmpuint (a->steps[i].job, ==, b->steps[i].job);
      g_assert_cmpuint (a->steps[i].mix, ==, b->steps[i].mix);
      g_assert_cmpfloat (a->steps[i].start, ==, b->steps[i].start);
    }
}

static PpBench
ask (const PpPlan  *plan,
     const PpPanel *panel,
     GDateTime     *now)
{
  PpBench bench;

  pp_bench_read (&bench, plan, panel, now);
  return bench;
}

static void
assert_same_bench (const PpBench *a,
                   const PpBench *b)
{
  g_assert_cmpint (a->next, ==, b->next);
  g_assert_cmpfloat (a->wait, ==, b->wait);
  g_assert_cmpint (a->is_open, ==, b->is_open);
  g_assert_cmpint (a->step != NULL, ==, b->step != NULL);
  if (a->step != NULL)
    g_assert_cmpuint (a->step->job, ==, b->step->job);
  if (a->is_open)
    g_assert_cmpfloat (a->age, ==, b->age);
}

static void
assert_kept (const Evening *self)
{
  g_autoptr (PpPanel) back = read_back (self->panel);
  g_autoptr (PpPlan) here = plan_of (self->panel);
  g_autoptr (PpPlan) there = plan_of (back);
  PpBench a = ask (here, self->panel, self->now);
  PpBench b = ask (there, back, self->now);

  assert_same_plan (here, there);
  assert_same_bench (&a, &b);
}

static void
take (Evening *self,
      PpPanel *next,
      GError  *error)
{
  g_assert_no_error (error);
  pp_panel_unref (self->panel);
  self->panel = next;
  self->n_acts++;
  assert_kept (self);
}

static void
wait_for (Evening *self,
          double   minutes)
{
  GDateTime *then = g_date_time_add_seconds (self->now, ceil (60 * minutes));

  g_date_time_unref (self->now);
  self->now = then;
}

/* What comes next, when it may; FALSE: all is done. */
static gboolean
go_on (Evening *self)
{
  g_autoptr (GError) error = NULL;
  PpBench bench = ask (self->plan, self->panel, self->now);
  g_autofree char *id = NULL;

  if (bench.next == PP_NEXT_PLAN)
    {
      pp_plan_unref (self->plan);
      self->plan = plan_of (self->panel);
      bench = ask (self->plan, self->panel, self->now);
      g_assert_cmpint (bench.next, !=, PP_NEXT_PLAN);
    }
  if (bench.next == PP_NEXT_NONE)
    return FALSE;
  wait_for (self, bench.wait);
  if (bench.next == PP_NEXT_MIX)
    {
      take (self, pp_progress_mixed (self->panel, self->now, &error), error);
      return TRUE;
    }
  wait_for (self, bench.step->minutes);
  id = pp_job_dup_id (self->panel, self->plan->order->n_knots, bench.step->job);
  take (self, pp_progress_placed (self->panel, self->plan->order, id, self->now, &error), error);
  return TRUE;
}

/* The last that was placed. */
static const char *
get_last (const PpPanel *panel)
{
  for (guint i = panel->log->len; i-- > 0;)
    {
      const PpLogEntry *entry = g_ptr_array_index (panel->log, i);

      if (entry->what == PP_LOG_PLACED)
        return entry->about[0];
    }
  g_assert_not_reached ();
}

/* A stray press; later a piece comes off, and the rest is left for the night. */
static void
mishap (Evening *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *stray = g_strdup (get_last (self->panel));
  const char *jobs[] = { NULL, NULL };
  g_autofree char *fallen = NULL;

  take (self, pp_progress_taken_back (self->panel, self->plan->order, stray, self->now, &error),
        error);
  do
    g_assert_true (go_on (self));
  while (g_str_has_prefix (get_last (self->panel), "knot:")
         || g_str_equal (get_last (self->panel), "p0"));
  jobs[0] = fallen = g_strdup (get_last (self->panel));
  take (self, pp_progress_fell (self->panel, self->plan->order, jobs, self->now, &error), error);
  take (self, pp_progress_paused (self->panel, self->now, &error), error);
  wait_for (self, 600);
}

static void
test_evening (void)
{
  g_autofree char *text = sample_new ();
  g_autoptr (GBytes) bytes = sample_to_bytes (text);
  g_autoptr (GError) error = NULL;
  Evening evening = { .panel = pp_panel_read (bytes, &error) };

  g_assert_no_error (error);
  evening.now = g_date_time_new_from_iso8601 ("2026-05-02T18:00:00.25+02:00", NULL);
  evening.plan = plan_of (evening.panel);
  g_assert_true (evening.plan->exists);
  go_on (&evening);
  go_on (&evening);
  mishap (&evening);
  while (go_on (&evening))
    g_assert_cmpuint (evening.n_acts, <, 100);
  g_assert_cmpuint (evening.n_acts, >, 3);
  pp_panel_unref (evening.panel);
  pp_plan_unref (evening.plan);
  g_date_time_unref (evening.now);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench-kept/evening", test_evening);
  return g_test_run ();
}
