/* instance.c: small random problems, the same for the same seed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "instance.h"

#include <math.h>

static void
set_limits (Instance *self,
            GRand    *rand)
{
  self->problem.mixing = g_rand_int_range (rand, 1, 3);
  self->problem.life = self->problem.mixing + g_rand_int_range (rand, 3, 8);
  self->problem.largest = g_rand_int_range (rand, 3, 9);
  self->problem.sitting = g_rand_boolean (rand) ? NAN : g_rand_int_range (rand, 5, 20);
}

static void
add_pairs (Instance *self,
           GRand    *rand)
{
  const guint n = self->problem.n_tasks;
  const double grab = g_rand_int_range (rand, 1, 9);

  for (guint b = 1; b < n; b++)
    for (guint a = 0; a < b; a++)
      {
        const int kind = g_rand_int_range (rand, 0, 8);

        if (kind == 0)
          self->tucks[self->problem.n_tucks++] = (PpTuck) { a, b };
        if (kind != 1 && kind != 2)
          continue;
        self->links[self->problem.n_links++] = (PpLink) { a, b, kind == 1 ? grab : 0 };
        self->tasks[b].stage = MAX (self->tasks[b].stage, self->tasks[a].stage);
      }
}

static void
point_at_arrays (Instance *self)
{
  self->problem.tasks = self->tasks;
  self->problem.links = self->links;
  self->problem.tucks = self->tucks;
}

void
instance_init (Instance *self,
               guint32   seed,
               guint     n_tasks)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  const guint n_stages = (guint) g_rand_int_range (rand, 1, 4);

  g_assert_cmpuint (n_tasks, <=, INSTANCE_MAX_TASKS);
  *self = (Instance) { .problem.n_tasks = n_tasks };
  point_at_arrays (self);
  set_limits (self, rand);
  for (guint i = 0; i < n_tasks; i++)
    self->tasks[i] = (PpTask) {
      .minutes = g_rand_int_range (rand, 1, 4),
      .volume = g_rand_int_range (rand, 1, 4),
      .stage = (guint) g_rand_int_range (rand, 0, (int) n_stages),
      .depth = g_rand_int_range (rand, 0, 10) * INSTANCE_MAX_TASKS + (int) i,
      .rank = PP_NO_RANK,
    };
  add_pairs (self, rand);
}

static gboolean
is_free (const Instance *self,
         const gboolean *done,
         guint           task)
{
  if (done[task])
    return FALSE;
  for (guint i = 0; i < self->problem.n_links; i++)
    if (self->links[i].second == task && !done[self->links[i].first])
      return FALSE;

  return TRUE;
}

void
instance_renumber (Instance       *self,
                   const Instance *from,
                   guint32         seed,
                   guint          *renumbered)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  const guint n = from->problem.n_tasks;
  gboolean done[INSTANCE_MAX_TASKS] = { FALSE };

  *self = *from;
  point_at_arrays (self);
  for (guint number = 0; number < n; number++)
    {
      guint task = (guint) g_rand_int_range (rand, 0, (int) n);

      while (!is_free (from, done, task))
        task = (task + 1) % n;
      done[task] = TRUE;
      renumbered[task] = number;
      self->tasks[number] = from->tasks[task];
    }
  for (guint i = 0; i < self->problem.n_links; i++)
    {
      self->links[i].first = renumbered[from->links[i].first];
      self->links[i].second = renumbered[from->links[i].second];
    }
  for (guint i = 0; i < self->problem.n_tucks; i++)
    {
      self->tucks[i].lower = renumbered[from->tucks[i].lower];
      self->tucks[i].upper = renumbered[from->tucks[i].upper];
    }
}
