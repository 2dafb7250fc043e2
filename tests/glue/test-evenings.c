/* test-evenings.c: whole glue-ups played at the bench, with all that can go wrong.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The maker does what bench.h says, faster or slower than planned; pieces fall, break, sit
 * elsewhere; buttons are pressed astray; there are pauses. What was done is held against the rules
 * of the bench by what this test saw itself: the life of each mix, its glue, what grabs, what lies
 * on what. Times are whole seconds. Invented panels.
 */
#include "stack.h"

#include "glue/bench.h"
#include "glue/progress.h"
#include "verify.h"

#include <math.h>

#define EVENINGS 200
#define MISHAPS 25
#define MOST_ACTS 500
#define MOST_JOBS 16

/* A mix as the maker sees it. */
typedef struct
{
  gboolean is_open;
  gint64   began; /* s */
  double   poured; /* ml */
  double   used;
} Cup;

typedef struct
{
  GRand   *rand;
  PpPanel *panel;
  PpCheck *check;
  PpPlan  *plan;
  gint64   now; /* s */
  Cup      cup;
  Cup      before; /* the cup before the last mixing */
  gint64   placed[MOST_JOBS]; /* s, of each job, its last end */
  guint    mishaps;
  guint    acts;
} Evening;

static guint
pick (GRand *rand, guint n)
{
  return (guint) g_rand_int_range (rand, 0, (int) n);
}

static GDateTime *
time_of (gint64 seconds)
{
  g_autoptr (GDateTime) start = g_date_time_new_from_iso8601 ("2026-05-02T18:00:00+02:00", NULL);

  return g_date_time_add_seconds (start, (double) seconds);
}

static void
plan_anew (Evening *self)
{
  g_autoptr (GError) error = NULL;
  PpCheck *check = pp_check_new (self->panel, self->check, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  g_clear_pointer (&self->check, pp_check_unref);
  g_clear_pointer (&self->plan, pp_plan_unref);
  self->check = check;
  self->plan = pp_plan_new (check, 3000, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (self->plan->exists);
  g_assert_cmpstr (verify_plan (self->plan), ==, NULL);
}

static void
evening_init (Evening *self, guint32 seed)
{
  TestDraft draft;
  GRand *rand = g_rand_new_with_seed (seed);
  const guint n = 2 + pick (rand, 9);

  test_draft_init (&draft, 200, 300, 6);
  test_draft_add_piece (&draft, "tile", "-20 -20, 20 -20, 20 20, -20 20", 4, NAN, NULL);
  test_draft_add_piece (&draft, "block", "-10 -10, 10 -10, 10 10, -10 10", 10, NAN, NULL);
  if (g_rand_boolean (rand))
    {
      test_draft_add_hole (&draft, "a", 60, 25, 6);
      test_draft_add_hole (&draft, "b", 140, 30, 6);
      test_draft_add_wire (&draft, 90);
    }
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("p%u", i + 1);

      test_draft_place (&draft, id, pick (rand, 2) == 0 ? "block" : "tile",
                        g_rand_int_range (rand, 60, 140), g_rand_int_range (rand, 30, 130));
    }
  draft.display.sideways = draft.display.updown = 0; /* what is seen aslant is of no matter here */
  draft.adhesive.grab = g_rand_int_range (rand, 1, 12);
  draft.adhesive.largest_mix = g_rand_double_range (rand, 0.4, 3);
  draft.adhesive.smallest_mix = fmin (draft.adhesive.largest_mix, g_rand_double_range (rand, 0.1, 2));

  g_autoptr (TestStack) stack = test_stack_new (&draft);

  *self = (Evening) { .rand = rand, .panel = pp_panel_ref (stack->panel) };
  plan_anew (self);
}

static void
evening_clear (Evening *self)
{
  g_rand_free (self->rand);
  pp_panel_unref (self->panel);
  pp_check_unref (self->check);
  pp_plan_unref (self->plan);
}

static gboolean
is_done (const Evening *self, guint job)
{
  const guint n_knots = self->plan->order->n_knots;
  g_autofree char *id = pp_job_dup_id (self->panel, n_knots, job);
  gboolean done = FALSE;

  if (job >= n_knots)
    return pp_panel_placement (self->panel, job - n_knots)->glued_at != NULL;
  for (guint i = 0; i < self->panel->log->len; i++)
    {
      const PpLogEntry *entry = g_ptr_array_index (self->panel->log, i);

      if (g_strv_contains (entry->about, id))
        done = entry->what == PP_LOG_PLACED;
    }

  return done;
}

/* The log has one entry more, and nothing changed that it is not about. */
static void
assert_fits (const PpPanel *panel, const PpPanel *next, PpLogWhat what)
{
  const PpLogEntry *entry = g_ptr_array_index (next->log, next->log->len - 1);

  g_assert_cmpuint (next->log->len, ==, panel->log->len + 1);
  g_assert_cmpint (entry->what, ==, what);
  g_assert_cmpuint (next->placements->len, ==, panel->placements->len);
  for (guint i = 0; i < next->placements->len; i++)
    {
      const PpPlacement *a = pp_panel_placement (panel, i), *b = pp_panel_placement (next, i);

      if (!g_strv_contains (entry->about, a->id))
        g_assert_true (a == b);
      else if (what == PP_LOG_PLACED)
        g_assert_cmpstr (b->glued_at, ==, entry->at);
      else
        g_assert_cmpstr (b->glued_at, ==, what == PP_LOG_MOVED ? a->glued_at : NULL);
    }
}

/* Both knots done, or not both: what the panel says of the wire. */
static void
assert_wire_fits (const Evening *self)
{
  if (self->panel->wire != NULL)
    g_assert_cmpint (self->panel->wire->knotted_at != NULL, ==,
                     is_done (self, 0) && is_done (self, 1));
}

static void
take (Evening *self, PpPanel *next, PpLogWhat what, GError *error)
{
  g_assert_no_error (error);
  assert_fits (self->panel, next, what);
  pp_panel_unref (self->panel);
  self->panel = next;
  self->acts++;
  assert_wire_fits (self);
  if (what == PP_LOG_MOVED || g_rand_boolean (self->rand))
    plan_anew (self);
}

static void
mix (Evening *self, const PpBench *bench)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) at = NULL;

  g_assert_cmpfloat (bench->mix.need, <=, self->panel->adhesive->largest_mix + 1e-6);
  g_assert_cmpfloat (bench->mix.a + bench->mix.b, >=, bench->mix.need - 1e-6);
  self->now += (gint64) ceil (bench->wait * 60);
  self->before = self->cup;
  self->cup = (Cup) { TRUE, self->now, bench->mix.a + bench->mix.b, 0 };
  at = time_of (self->now);
  take (self, pp_progress_mixed (self->panel, at, &error), PP_LOG_MIXED, error);

  if (self->mishaps++ < MISHAPS && pick (self->rand, 12) == 0)
    {
      self->cup = self->before;
      g_autoptr (GError) second = NULL;
      take (self, pp_progress_unmixed (self->panel, at, &second), PP_LOG_TAKEN_BACK, second);
    }
}

/* What the job lies on is there, and has grabbed where it is held. */
static void
assert_may_start (const Evening *self, guint job, gint64 start)
{
  const PpOrder *order = self->plan->order;
  const guint n_knots = order->n_knots;

  for (guint i = 0; i < order->n_hard; i++)
    {
      const PpEdge *edge = &order->hard[i];

      if (edge->second != job)
        continue;
      g_assert_true (is_done (self, edge->first));
      if (edge->first >= n_knots && self->check->rests[edge->first - n_knots]->hold
          && pp_rest_rests_on (self->check->rests[job - n_knots],
                               PP_OWNER (PP_OWNER_PLACEMENT, edge->first - n_knots)))
        g_assert_cmpint (start, >=, self->placed[edge->first]
                                    + (gint64) (self->panel->adhesive->grab * 60));
    }
}

static void
take_back (Evening *self, guint job, double volume)
{
  g_autofree char *id = pp_job_dup_id (self->panel, self->plan->order->n_knots, job);
  g_autoptr (GDateTime) at = time_of (self->now);
  g_autoptr (GError) error = NULL;

  self->cup.used -= volume;
  take (self, pp_progress_taken_back (self->panel, self->plan->order, id, at, &error),
        PP_LOG_TAKEN_BACK, error);
}

static void
place (Evening *self, const PpBench *bench)
{
  const PpAdhesive *adhesive = self->panel->adhesive;
  const guint job = bench->step->job;
  const double volume = bench->step->volume;
  const gint64 start = self->now + (gint64) ceil (bench->wait * 60);
  const double pace = pick (self->rand, 8) == 0 ? 4 : g_rand_double_range (self->rand, 0.3, 1);
  const gint64 end = start + (gint64) (pace * bench->step->minutes * 60);
  g_autofree char *id = pp_job_dup_id (self->panel, self->plan->order->n_knots, job);
  g_autoptr (GDateTime) at = time_of (end);
  g_autoptr (GError) error = NULL;

  g_assert_true (self->cup.is_open && bench->is_open);
  g_assert_cmpfloat_with_epsilon (bench->age, (double) (self->now - self->cup.began) / 60, 1e-6);
  g_assert_cmpint (start, >=, self->cup.began + (gint64) (adhesive->mixing * 60));
  assert_may_start (self, job, start);
  self->now = end;
  if (end > self->cup.began + (gint64) (adhesive->working_life * 60))
    {
      /* too slow, or mixed too early: that glue is past, and the piece still in the hand */
      g_assert_true (pace > 1 || self->cup.used <= 1e-6);
      return;
    }

  self->cup.used += volume;
  g_assert_cmpfloat (self->cup.used, <=, self->cup.poured + 1e-6);
  self->placed[job] = end;
  take (self, pp_progress_placed (self->panel, self->plan->order, id, at, &error), PP_LOG_PLACED,
        error);
  if (self->mishaps++ < MISHAPS && pick (self->rand, 12) == 0)
    take_back (self, job, volume);
}

/* A job done, any of them; FALSE if none is. */
static gboolean
pick_done (const Evening *self, guint *job)
{
  const guint n = self->plan->order->n_jobs, first = pick (self->rand, n);

  for (guint i = 0; i < n; i++)
    if (is_done (self, *job = (first + i) % n))
      return TRUE;

  return FALSE;
}

/* It, and what is glued above it; without that it is refused. */
static void
come_off (Evening *self, gboolean broke)
{
  guint job;
  PpPanel *(* act) (const PpPanel *, const PpOrder *, const char * const *, GDateTime *, GError **)
    = broke ? pp_progress_broke : pp_progress_fell;

  if (!pick_done (self, &job))
    return;
  g_autofree char *id = pp_job_dup_id (self->panel, self->plan->order->n_knots, job);
  g_auto (GStrv) above = pp_progress_find_above (self->panel, self->plan->order, id);
  g_autoptr (GStrvBuilder) all = g_strv_builder_new ();
  g_autoptr (GDateTime) at = time_of (self->now);
  g_autoptr (GError) error = NULL;
  const char * const alone[] = { id, NULL };

  if (above[0] != NULL)
    {
      g_autoptr (GError) refused = NULL;

      g_assert_null (act (self->panel, self->plan->order, alone, at, &refused));
      g_assert_nonnull (refused);
    }
  g_strv_builder_add (all, id);
  g_strv_builder_addv (all, (const char **) above);
  g_auto (GStrv) ids = g_strv_builder_end (all);

  take (self, act (self->panel, self->plan->order, (const char * const *) ids, at, &error),
        broke ? PP_LOG_BROKE : PP_LOG_FELL, error);
}

static void
sit_elsewhere (Evening *self)
{
  guint job;
  g_autoptr (GDateTime) at = time_of (self->now);
  g_autoptr (GError) error = NULL;

  if (!pick_done (self, &job) || job < self->plan->order->n_knots)
    return;
  const PpPlacement *old = pp_panel_placement (self->panel, job - self->plan->order->n_knots);
  const PpPose pose = { old->x + g_rand_int_range (self->rand, -8, 9), old->y + 3, 0, FALSE };
  PpBench bench;

  g_autoptr (PpPanel) next = pp_progress_moved (self->panel, old->id, pose, at, &error);

  g_assert_no_error (error);
  pp_bench_read (&bench, self->plan, next, at);
  g_assert_cmpint (bench.next, ==, PP_NEXT_PLAN);
  take (self, g_steal_pointer (&next), PP_LOG_MOVED, error);
}

static void
pause_for_long (Evening *self)
{
  g_autoptr (GDateTime) at = time_of (self->now);
  g_autoptr (GError) error = NULL;

  take (self, pp_progress_paused (self->panel, at, &error), PP_LOG_PAUSED, error);
  self->cup.is_open = self->before.is_open = FALSE;
  self->now += 60 * pick (self->rand, 3000);
}

static void
go_wrong (Evening *self)
{
  switch (pick (self->rand, 5))
    {
    case 0:
      pause_for_long (self);
      break;
    case 1:
      sit_elsewhere (self);
      break;
    case 2:
      come_off (self, TRUE);
      break;
    default:
      come_off (self, FALSE);
      break;
    }
}

static void
assert_end (const Evening *self, const PpBench *bench)
{
  for (guint job = 0; job < self->plan->order->n_jobs; job++)
    g_assert_true (is_done (self, job));
  g_assert_cmpfloat (bench->wait, <=, self->panel->adhesive->hard);
  g_assert_cmpfloat (bench->cured, <=, self->panel->adhesive->cure);
  g_assert_cmpfloat (bench->cured, >=, bench->wait);
}

static void
play (guint32 seed)
{
  Evening evening;
  PpBench bench;

  evening_init (&evening, seed);
  for (guint i = 0;; i++)
    {
      g_autoptr (GDateTime) now = time_of (evening.now);

      g_assert_cmpuint (i, <, MOST_ACTS);
      pp_bench_read (&bench, evening.plan, evening.panel, now);
      g_assert_cmpfloat (bench.wait, >=, 0);
      if (bench.next == PP_NEXT_NONE)
        break;
      if (bench.next == PP_NEXT_PLAN)
        plan_anew (&evening);
      else if (evening.mishaps < MISHAPS && pick (evening.rand, 6) == 0)
        {
          evening.mishaps++;
          go_wrong (&evening);
        }
      else if (bench.next == PP_NEXT_MIX)
        mix (&evening, &bench);
      else
        place (&evening, &bench);
    }
  assert_end (&evening, &bench);
  evening_clear (&evening);
}

static void
test_evenings (void)
{
  for (guint32 seed = 0; seed < EVENINGS; seed++)
    play (seed);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/evenings", test_evenings);

  return g_test_run ();
}
