/* schedules.c: glue-ups of made-up panels: how long the proof takes, or what gap is left.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two knots, some stems, flat and shaped pieces on one another, a quarter of them held until the
 * glue grabs. "drops" have the little glue of most pieces; of "pools" two or three use up a mix.
 * "free" pools lie all side by side, which leaves every order.
 */
#include "glue/schedule.h"

#include <math.h>
#include <stdlib.h>

#define MOST 80
#define SEEDS 40

typedef enum
{
  DROPS,
  POOLS,
  FREE,
} Kind;

static const char * const names[] = { "drops", "pools", "free" };

typedef struct
{
  PpProblem problem;
  PpTask    tasks[MOST];
  PpLink    links[MOST * MOST];
} Made;

static guint
stage_of (guint i, guint n)
{
  return i < 2 ? 0 : i < 2 + n / 8 ? 1 : i < n / 2 ? 2 : 3;
}

static void
make (Made *self, guint n, Kind kind, guint32 seed)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);

  self->problem = (PpProblem) { .n_tasks = n, .tasks = self->tasks, .links = self->links,
                                .mixing = 1, .life = 5, .largest = 6, .sitting = NAN };
  for (guint i = 0; i < n; i++)
    {
      const guint stage = kind == FREE ? 3 : stage_of (i, n);
      const double share = g_rand_double (rand);

      self->tasks[i] = (PpTask) {
        .minutes = stage < 2 ? 0.5 : 1 + 0.25 * g_rand_int_range (rand, 0, 3),
        .volume = kind != DROPS ? 0.5 + 2.5 * share : 0.05 + 0.3 * share,
        .stage = stage,
        .depth = g_rand_double_range (rand, 20, 400),
        .rank = PP_NO_RANK,
      };
    }
  for (guint a = 2; a < n && kind != FREE; a++)
    {
      const gboolean hold = g_rand_int_range (rand, 0, 4) == 0;

      for (guint b = a + 1; b < n; b++)
        if (g_rand_double (rand) < 1.2 / n)
          self->links[self->problem.n_links++] = (PpLink) { a, b, hold ? 10 : 0 };
    }
}

static int
compare (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

static void
measure (guint n, Kind kind)
{
  double ms[SEEDS], gaps[SEEDS];
  guint proved = 0, ends = 0;
  g_autofree Made *made = g_new (Made, 1);

  for (guint32 seed = 0; seed < SEEDS; seed++)
    {
      make (made, n, kind, seed + 1000 * n);

      const gint64 began = g_get_monotonic_time ();
      g_autoptr (PpSchedule) schedule = pp_schedule_new (&made->problem, 0, NULL, NULL, NULL, NULL,
                                                         NULL);

      ms[seed] = (double) (g_get_monotonic_time () - began) / 1000;
      gaps[seed] = 100 * (schedule->end - schedule->lower_bound) / schedule->end;
      proved += schedule->optimal;
      ends += gaps[seed] < 1e-6;
    }
  qsort (ms, SEEDS, sizeof (double), compare);
  qsort (gaps, SEEDS, sizeof (double), compare);
  g_print ("%2u %s: %u of %u proved, end of %u; median %.1f ms, worst %.1f ms; gap median %.2f %%, "
           "worst %.2f %%\n", n, names[kind], proved, SEEDS, ends, ms[SEEDS / 2],
           ms[SEEDS - 1], gaps[SEEDS / 2], gaps[SEEDS - 1]);
}

int
main (void)
{
  static const guint sizes[] = { 8, 12, 16, 20, 30, 60 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (Kind kind = DROPS; kind <= FREE; kind++)
      measure (sizes[i], kind);

  return 0;
}
