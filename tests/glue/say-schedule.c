/* say-schedule.c: reads problems and says how each is scheduled, for tests/reference/schedule.py.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In: "tasks links tucks mixing life largest", then a line "minutes volume stage depth" a task,
 * "first second lag" a link, "lower upper" a tuck. Out, a line each: the rule broken or "-",
 * whether proved, the end, the mixes, seconds of the processor, the tasks in order.
 */
#include "verify.h"

#include <math.h>
#include <stdio.h>
#include <time.h>

static void
say (const PpProblem *problem)
{
  clock_t begun = clock ();
  g_autoptr (PpSchedule) schedule = pp_schedule_new (problem, 0, NULL, NULL, NULL, NULL, NULL);
  double seconds = (double) (clock () - begun) / CLOCKS_PER_SEC;
  const char *broken = verify_schedule (problem, schedule);

  printf ("%s %d %.17g %u %.6f", broken != NULL ? broken : "-", schedule->optimal, schedule->end,
          schedule->n_batches, seconds);
  for (guint i = 0; i < schedule->n_slots; i++)
    printf (" %u", schedule->slots[i].task);
  printf ("\n");
}

int
main (void)
{
  PpProblem p = { .sitting = NAN };

  while (scanf ("%u %u %u %lf %lf %lf", &p.n_tasks, &p.n_links, &p.n_tucks, &p.mixing, &p.life,
                &p.largest) == 6)
    {
      g_autofree PpTask *tasks = g_new (PpTask, p.n_tasks);
      g_autofree PpLink *links = g_new (PpLink, p.n_links);
      g_autofree PpTuck *tucks = g_new (PpTuck, p.n_tucks);
      gboolean good = TRUE;

      for (guint i = 0; i < p.n_tasks; i++)
        {
          tasks[i].rank = PP_NO_RANK;
          good &= scanf ("%lf %lf %u %lf", &tasks[i].minutes, &tasks[i].volume, &tasks[i].stage,
                         &tasks[i].depth) == 4;
        }
      for (guint i = 0; i < p.n_links; i++)
        good &= scanf ("%u %u %lf", &links[i].first, &links[i].second, &links[i].lag) == 3;
      for (guint i = 0; i < p.n_tucks; i++)
        good &= scanf ("%u %u", &tucks[i].lower, &tucks[i].upper) == 2;
      if (!good)
        return 1;
      p.tasks = tasks;
      p.links = links;
      p.tucks = tucks;
      say (&p);
    }

  return 0;
}
