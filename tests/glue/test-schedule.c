/* test-schedule.c: mixes and times of small glue-ups.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By hand, derivations beside the rows; against a search that tries everything; and every schedule
 * made here is held against the rules by verify.c, which in turn must refuse a spoilt one.
 */
#include "brute.h"
#include "instance.h"
#include "verify.h"

#include <math.h>

#define CLOSE 1e-6
#define NONE PP_NO_RANK

/* In all rows: mixing 1, life 5 (so 4 minutes of work), largest mix 6, unless another is given. */
typedef struct
{
  const char *name;
  guint       n_tasks;
  PpTask      tasks[6];
  guint       n_links;
  PpLink      links[4];
  double      sitting; /* 0: no end */
  gboolean    exists;
  double      end;
  guint       n_batches;
  double      last_mix; /* start of the last mixing */
  guint       last_sitting;
  double      bound;
  gboolean    optimal;
  guint       order[6];
} Row;

#define JOB(minutes, volume) { minutes, volume, 0, 0, NONE }
#define AT(depth) { 1, 0.1, 0, depth, NONE }
#define RANKED(depth, rank) { 1, 0.1, 0, depth, rank }

static const Row rows[] = {
  { "nothing", 0, { { 0 } }, 0, { { 0 } }, 0, TRUE, 0, 0, 0, 0, 0, TRUE, { 0 } },
  /* Mix 0-1, job 1-2. */
  { "one", 1, { JOB (1, 0.1) }, 0, { { 0 } }, 0, TRUE, 2, 1, 0, 0, 2, TRUE, { 0 } },
  /* 1-2, 2-3, 3-4, 4-5: just within the life. */
  { "full-life", 4, { AT (0), AT (0), AT (0), AT (0) },
    0, { { 0 } }, 0, TRUE, 5, 1, 0, 0, 5, TRUE, { 0, 1, 2, 3 } },
  /* The fifth needs a mix of its own: 5-6, 6-7. */
  { "two-mixes", 5, { AT (0), AT (0), AT (0), AT (0), AT (0) },
    0, { { 0 } }, 0, TRUE, 7, 2, 5, 0, 7, TRUE, { 0, 1, 2, 3, 4 } },
  /* The second mix ends at 7: in a sitting of 7, not in one of 6. */
  { "one-sitting", 5, { AT (0), AT (0), AT (0), AT (0), AT (0) },
    0, { { 0 } }, 7, TRUE, 7, 2, 5, 0, 7, TRUE, { 0, 1, 2, 3, 4 } },
  { "two-sittings", 5, { AT (0), AT (0), AT (0), AT (0), AT (0) },
    0, { { 0 } }, 6, TRUE, 7, 2, 5, 1, 7, TRUE, { 0, 1, 2, 3, 4 } },
  /* Two of 2.5 ml a mix: 0-1, jobs to 3; 3-4, jobs to 6. */
  { "volume", 4, { JOB (1, 2.5), JOB (1, 2.5), JOB (1, 2.5), JOB (1, 2.5) },
    0, { { 0 } }, 0, TRUE, 6, 2, 3, 0, 6, TRUE, { 0, 1, 2, 3 } },
  /* 3 x 1.25 in 4 minutes, so four jobs need two mixes: 5 + 2. */
  { "thirds", 4, { JOB (1.25, 1), JOB (1.25, 1), JOB (1.25, 1), JOB (1.25, 1) },
    0, { { 0 } }, 0, TRUE, 7, 2, 4.75, 0, 7, TRUE, { 0, 1, 2, 3 } },
  /* 1-2, then not before 12: mixing 11-12, job 12-13. */
  { "grab", 2, { AT (0), AT (0) }, 1, { { 0, 1, 10 } },
    0, TRUE, 13, 2, 11, 0, 13, TRUE, { 0, 1 } },
  /* 1-2, then 4-5 from the same mix. */
  { "grab-within", 2, { AT (0), AT (0) }, 1, { { 0, 1, 2 } },
    0, TRUE, 5, 1, 0, 0, 5, TRUE, { 0, 1 } },
  /* 5-6 is past the life, but mixing again fits into the wait: 4-5. */
  { "grab-beyond", 2, { AT (0), AT (0) }, 1, { { 0, 1, 3 } },
    0, TRUE, 6, 2, 4, 0, 6, TRUE, { 0, 1 } },
  /* The first takes a whole mix and is held until 12. Mixing for the other two at 2 would let that
   * mix die before 13; at 13 - 5 = 8 it does for both: 9-10 and 12-13. */
  { "mix-late", 3, { { 1, 6, 0, 0, NONE }, { 1, 1, 0, 10, NONE }, { 1, 1, 0, 20, NONE } },
    1, { { 0, 2, 10 } }, 0, TRUE, 13, 2, 8, 0, 13, TRUE, { 0, 1, 2 } },
  /* From far to near, cut as late as can be: {0, 1} 0-5, {2, 3, 4} 5-9. Cut at once, the second
   * mixing fits into the wait: 3-4, then 4-8. */
  { "cut-early", 5, { RANKED (0, 0), RANKED (0, 1), RANKED (0, 2), RANKED (0, 3), RANKED (0, 4) },
    1, { { 0, 1, 2 } }, 0, TRUE, 8, 2, 3, 0, 8, TRUE, { 0, 1, 2, 3, 4 } },
  /* Where the order is free one more is done in the wait, at 2-3: one pair against far to near. */
  { "fill-the-wait", 5, { AT (0), AT (10), AT (20), AT (30), AT (40) },
    1, { { 0, 1, 2 } }, 0, TRUE, 7, 2, 3, 0, 7, TRUE, { 0, 2, 1, 3, 4 } },
  /* A lower stage first, however near. */
  { "stages", 3, { { 1, 1, 3, 0, NONE }, { 1, 1, 2, 90, NONE }, { 1, 1, 0, 99, NONE } },
    0, { { 0 } }, 0, TRUE, 4, 1, 0, 0, 4, TRUE, { 2, 1, 0 } },
  { "far-to-near", 3, { AT (30), AT (10), AT (20) },
    0, { { 0 } }, 0, TRUE, 4, 1, 0, 0, 4, TRUE, { 1, 2, 0 } },
  /* The far one lies on a near one, which is pulled ahead; no order does without that. */
  { "pulled-ahead", 3, { AT (90), AT (10), AT (95) },
    1, { { 0, 1, 0 } }, 0, TRUE, 4, 1, 0, 0, 4, TRUE, { 0, 1, 2 } },
  /* Of two that are pulled ahead the farther comes first. */
  { "pulled-ahead-two", 3, { AT (50), AT (40), AT (10) },
    2, { { 0, 2, 0 }, { 1, 2, 0 } }, 0, TRUE, 4, 1, 0, 0, 4, TRUE, { 1, 0, 2 } },
  /* 1-2, wait to 12; with the mix of 11 four jobs to 16, with that of 16 the last. Two mixes would
   * do for six jobs if nothing had to wait. */
  { "wait-then-work", 6, { AT (0), AT (0), { 1, 0.1, 1, 0, NONE }, { 1, 0.1, 1, 0, NONE },
                           { 1, 0.1, 1, 0, NONE }, { 1, 0.1, 1, 0, NONE } },
    1, { { 0, 1, 10 } }, 0, TRUE, 18, 3, 16, 0, 18, TRUE, { 0, 1, 2, 3, 4, 5 } },
  /* A wait in each of two stages: 1-2, 12-13, 13-14, 24-25. */
  { "two-waits", 4, { AT (0), AT (0), { 1, 0.1, 1, 0, NONE }, { 1, 0.1, 1, 0, NONE } },
    2, { { 0, 1, 10 }, { 2, 3, 10 } }, 0, TRUE, 25, 3, 23, 0, 25, TRUE, { 0, 1, 2, 3 } },
  /* The maker's order, against the depth; what is not in it follows. */
  { "accepted", 4, { RANKED (10, 2), RANKED (20, 1), RANKED (30, 0), AT (0) },
    0, { { 0 } }, 0, TRUE, 5, 1, 0, 0, 5, TRUE, { 2, 1, 0, 3 } },
  /* A new piece came under one of the accepted order: it goes right before that. */
  { "accepted-link", 4, { AT (50), RANKED (10, 0), RANKED (20, 1), RANKED (30, 2) },
    1, { { 0, 2, 0 } }, 0, TRUE, 5, 1, 0, 0, 5, TRUE, { 1, 0, 2, 3 } },
  /* An accepted order keeps to the stages. */
  { "accepted-stage", 2, { { 1, 1, 3, 0, 0 }, { 1, 1, 0, 0, 1 } },
    0, { { 0 } }, 0, TRUE, 3, 1, 0, 0, 3, TRUE, { 1, 0 } },
  /* 4 minutes and 6 ml are just what a mix has; a little more fits none. */
  { "fits-just", 2, { JOB (4, 1), JOB (1, 6) },
    0, { { 0 } }, 0, TRUE, 7, 2, 5, 0, 7, TRUE, { 0, 1 } },
  { "too-long", 1, { JOB (4.001, 1) },
    0, { { 0 } }, 0, FALSE, 0, 0, 0, 0, 0, FALSE, { 0 } },
  { "too-large", 2, { JOB (1, 1), JOB (1, 6.001) },
    0, { { 0 } }, 0, FALSE, 0, 0, 0, 0, 0, FALSE, { 0 } },
};

static PpSchedule *
make_schedule (const PpProblem *problem)
{
  g_autoptr (GError) error = NULL;
  PpSchedule *schedule = pp_schedule_new (problem, 0, NULL, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (schedule);
  if (schedule->exists)
    g_assert_cmpstr (verify_schedule (problem, schedule), ==, NULL);

  return schedule;
}

static PpProblem
problem_of (const Row *row)
{
  return (PpProblem) {
    .n_tasks = row->n_tasks,
    .tasks = row->tasks,
    .n_links = row->n_links,
    .links = row->links,
    .mixing = 1,
    .life = 5,
    .largest = 6,
    .sitting = row->sitting > 0 ? row->sitting : (double) NAN,
  };
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  const PpProblem problem = problem_of (row);
  g_autoptr (PpSchedule) schedule = make_schedule (&problem);

  g_assert_cmpint (schedule->exists, ==, row->exists);
  g_assert_cmpint (schedule->optimal, ==, row->optimal);
  g_assert_cmpuint (schedule->n_batches, ==, row->n_batches);
  if (!row->exists)
    return;

  g_assert_cmpfloat_with_epsilon (schedule->end, row->end, CLOSE);
  g_assert_cmpfloat_with_epsilon (schedule->lower_bound, row->bound, CLOSE);
  for (guint i = 0; i < row->n_tasks; i++)
    g_assert_cmpuint (schedule->slots[i].task, ==, row->order[i]);
  if (row->n_batches > 0)
    {
      const PpBatch *last = &schedule->batches[row->n_batches - 1];

      g_assert_cmpfloat_with_epsilon (last->start, row->last_mix, CLOSE);
      g_assert_cmpuint (last->sitting, ==, row->last_sitting);
    }
}

/* End, mixes and pairs are those of a search that tries everything. */
static void
assert_best (const PpProblem *problem)
{
  guint order[INSTANCE_MAX_TASKS];
  g_autoptr (PpSchedule) schedule = make_schedule (problem);
  const BruteScore best = brute_solve (problem, NULL);

  for (guint i = 0; i < schedule->n_slots; i++)
    order[i] = schedule->slots[i].task;
  g_assert_true (schedule->optimal);
  g_assert_cmpfloat_with_epsilon (schedule->end, best.end, CLOSE);
  g_assert_cmpfloat (schedule->lower_bound, ==, schedule->end);
  g_assert_cmpuint (schedule->n_batches, ==, best.n_batches);
  g_assert_cmpuint (brute_count_against (problem, order), ==, best.n_against);
}

/* Glue that never sets, mixed in any amount. */
static void
test_endless (void)
{
  const PpTask tasks[] = { AT (30), AT (10), AT (20), AT (0) };
  const PpLink links[] = { { 0, 1, 10 } };
  PpProblem problem = { .n_tasks = 4, .tasks = tasks, .n_links = 1, .links = links, .mixing = 1,
                        .life = 1e9, .largest = 1e9, .sitting = NAN };

  assert_best (&problem);
}

static void
test_brute (void)
{
  for (guint32 seed = 0; seed < 600; seed++)
    {
      Instance instance;

      instance_init (&instance, seed, 1 + seed % 6);
      assert_best (&instance.problem);
    }
}

/* The maker's order fixes all: only the mixes are left to choose. */
static void
test_brute_on_order (void)
{
  for (guint32 seed = 0; seed < 600; seed++)
    {
      Instance instance;
      guint order[INSTANCE_MAX_TASKS];

      instance_init (&instance, seed, 1 + seed % 7);
      for (guint i = 0; i < instance.problem.n_tasks; i++)
        instance.tasks[i].rank = (i * 5) % 11;
      g_autoptr (PpSchedule) schedule = make_schedule (&instance.problem);

      for (guint i = 0; i < schedule->n_slots; i++)
        order[i] = schedule->slots[i].task;

      const BruteScore best = brute_solve (&instance.problem, order);

      g_assert_true (schedule->optimal);
      g_assert_cmpfloat_with_epsilon (schedule->end, best.end, CLOSE);
      g_assert_cmpuint (schedule->n_batches, ==, best.n_batches);
    }
}

/* One in a thousand problems: the best way to the last cut but one is not part of the best of all,
 * since a job that is waited for ends later in it. */
static void
test_brute_rare (void)
{
  static const struct { guint32 seed; guint n_tasks; } rare[] = {
    { 32177, 4 }, { 103834, 5 }, { 116370, 5 }, { 1218, 5 }, { 167674, 5 }, { 64914, 5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rare); i++)
    {
      Instance instance;

      instance_init (&instance, rare[i].seed, rare[i].n_tasks);
      assert_best (&instance.problem);
    }
}

/* How the tasks are numbered is nobody's business. */
static void
test_renumbered (void)
{
  for (guint32 seed = 0; seed < 300; seed++)
    {
      Instance instance;
      Instance other;
      guint renumbered[INSTANCE_MAX_TASKS];

      instance_init (&instance, seed, INSTANCE_MAX_TASKS);
      instance_renumber (&other, &instance, seed + 1, renumbered);
      g_autoptr (PpSchedule) one = make_schedule (&instance.problem);
      g_autoptr (PpSchedule) two = make_schedule (&other.problem);

      g_assert_cmpuint (one->n_batches, ==, two->n_batches);
      g_assert_cmpfloat_with_epsilon (one->lower_bound, two->lower_bound, CLOSE);
      g_assert_cmpint (one->optimal, ==, two->optimal);
      for (guint i = 0; i < one->n_slots; i++)
        {
          g_assert_cmpuint (renumbered[one->slots[i].task], ==, two->slots[i].task);
          g_assert_cmpuint (one->slots[i].mix, ==, two->slots[i].mix);
          g_assert_cmpfloat_with_epsilon (one->slots[i].start, two->slots[i].start, CLOSE);
        }
    }
}

/* The schedule of "mix-late": 0 at 1-2 from the first mix, 1 at 9-10 and 2 at 12-13 from that of 8. */
static void
spoil (PpSchedule *schedule,
       const char *rule)
{
  PpSlot *slots = schedule->slots;

  if (g_str_equal (rule, "tasks"))
    slots[1].task = 0;
  else if (g_str_equal (rule, "empty"))
    slots[0].mix = 1;
  else if (g_str_equal (rule, "zero"))
    schedule->batches[0].start = -1;
  else if (g_str_equal (rule, "hands"))
    slots[1].start = 11.5;
  else if (g_str_equal (rule, "mixed"))
    slots[1].start = 7;
  else if (g_str_equal (rule, "life"))
    slots[2].start = 12.01;
  else if (g_str_equal (rule, "link"))
    slots[2].start = 11.5;
  else if (g_str_equal (rule, "end"))
    schedule->end = 12;
  else if (g_str_equal (rule, "bound"))
    schedule->lower_bound = 13.5;
  else if (g_str_equal (rule, "sitting"))
    schedule->batches[1].sitting = 1;
  else
    g_assert_not_reached ();
}

static const Row *
find_row (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (g_str_equal (rows[i].name, name))
      return &rows[i];
  g_assert_not_reached ();
}

static void
test_spoilt (void)
{
  static const char * const rules[] = { "tasks", "empty", "zero", "hands", "mixed", "life", "link",
                                        "end", "bound", "sitting" };
  const PpProblem problem = problem_of (find_row ("mix-late"));

  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      g_autoptr (PpSchedule) schedule = make_schedule (&problem);

      spoil (schedule, rules[i]);
      g_assert_cmpstr (verify_schedule (&problem, schedule), ==, rules[i]);
    }
}

/* Spoilt by a problem that asks for more. */
static void
test_spoilt_problem (void)
{
  PpProblem problem = problem_of (find_row ("mix-late"));
  g_autoptr (PpSchedule) schedule = make_schedule (&problem);
  PpTask tasks[3];

  problem.largest = 5.9;
  g_assert_cmpstr (verify_schedule (&problem, schedule), ==, "volume");
  problem = problem_of (find_row ("mix-late"));
  memcpy (tasks, problem.tasks, sizeof tasks);
  tasks[0].stage = 1;
  problem.tasks = tasks;
  g_assert_cmpstr (verify_schedule (&problem, schedule), ==, "stage");

  /* A job of the first mix while the second is mixed and used; its life is long enough. */
  problem = problem_of (find_row ("mix-late"));
  problem.life = 20;
  problem.largest = 9;
  schedule->slots[1].mix = 0;
  g_assert_cmpstr (verify_schedule (&problem, schedule), ==, "ended");
}

static void
test_cancelled (void)
{
  const PpProblem problem = problem_of (find_row ("grab"));
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (pp_schedule_new (&problem, 0, NULL, cancellable, NULL, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* A line of two thousand with a wait each: narrowed by its steps, still a schedule. */
static void
test_large (void)
{
  const guint n = 2000;
  g_autofree PpTask *tasks = g_new0 (PpTask, n);
  g_autofree PpLink *links = g_new0 (PpLink, n);
  PpProblem problem = { .n_tasks = n, .tasks = tasks, .links = links,
                        .mixing = 1, .life = 60, .largest = 6, .sitting = 120 };

  for (guint i = 0; i < n; i++)
    tasks[i] = (PpTask) { 1 + 0.25 * (i % 7), 0.05 + 0.01 * (i % 5), 0, (i * 37) % n, NONE };
  for (guint i = 3; i < n; i += 3)
    links[problem.n_links++] = (PpLink) { i - 3, i, 10 };

  g_autoptr (GError) error = NULL;
  g_autoptr (PpSchedule) schedule = pp_schedule_new (&problem, 100000, NULL, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (verify_schedule (&problem, schedule), ==, NULL);
  g_assert_false (schedule->optimal);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/schedule/row/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  g_test_add_func ("/schedule/endless", test_endless);
  g_test_add_func ("/schedule/brute/all-orders", test_brute);
  g_test_add_func ("/schedule/brute/on-order", test_brute_on_order);
  g_test_add_func ("/schedule/brute/rare", test_brute_rare);
  g_test_add_func ("/schedule/renumbered", test_renumbered);
  g_test_add_func ("/schedule/spoilt/schedule", test_spoilt);
  g_test_add_func ("/schedule/spoilt/problem", test_spoilt_problem);
  g_test_add_func ("/schedule/cancelled", test_cancelled);
  g_test_add_func ("/schedule/large", test_large);

  return g_test_run ();
}
