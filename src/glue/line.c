/* line.c: puts the jobs of a problem in one order.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The wish is a plain sorting. Where a link stands against it, the job's turn first does all that
 * must go before it, in the order of the wish; so an accepted order in which a new piece has come
 * under an old one keeps all it can. Links never lead to a lower stage, so stages stay whole.
 */
#include "glue/line.h"

#include "panel/tolerance.h"

#include <math.h>

typedef struct
{
  GArray  **before; /* guint: tasks that links put before each, in the order of the wish */
  gboolean *done;
  GArray   *order;  /* guint */
} Walk;

/* Equal depths must compare equal in any pair, so they are told apart in steps of PP_TIE. */
static gint64
depth_key (const PpTask *task)
{
  return llrint (CLAMP (task->depth, -1e9, 1e9) / PP_TIE);
}

static int
compare_wish (gconstpointer a, gconstpointer b, gpointer data)
{
  const PpTask *tasks = data;
  const guint i = *(const guint *) a;
  const guint j = *(const guint *) b;

  if (tasks[i].stage != tasks[j].stage)
    return tasks[i].stage < tasks[j].stage ? -1 : 1;
  if (tasks[i].rank != tasks[j].rank)
    return tasks[i].rank < tasks[j].rank ? -1 : 1;

  const gint64 y_i = depth_key (&tasks[i]);
  const gint64 y_j = depth_key (&tasks[j]);

  if (y_i != y_j)
    return y_i < y_j ? -1 : 1;
  /* The lower of two that tuck has the lower number. */
  return i < j ? -1 : i > j;
}

static guint *
sort_wish (const PpProblem *problem)
{
  guint *wish = g_new (guint, problem->n_tasks);

  for (guint i = 0; i < problem->n_tasks; i++)
    wish[i] = i;
  g_qsort_with_data (wish, (int) problem->n_tasks, sizeof (guint), compare_wish,
                     (gpointer) problem->tasks);

  return wish;
}

static int
compare_place (gconstpointer a, gconstpointer b, gpointer data)
{
  const guint *place = data;
  const guint i = place[*(const guint *) a];
  const guint j = place[*(const guint *) b];

  return i < j ? -1 : i > j;
}

/* As deep as the longest chain of links, at most the number of jobs. */
static void
take (Walk *walk,
      guint task)
{
  if (walk->done[task])
    return;

  walk->done[task] = TRUE;
  for (guint i = 0; i < walk->before[task]->len; i++)
    take (walk, g_array_index (walk->before[task], guint, i));
  g_array_append_val (walk->order, task);
}

static guint *
find_order (const PpProblem *problem)
{
  const guint n = problem->n_tasks;
  g_autofree guint *wish = sort_wish (problem);
  g_autofree guint *place = g_new (guint, n);
  g_autofree gboolean *done = g_new0 (gboolean, n);
  g_autofree GArray **before = g_new (GArray *, n);
  Walk walk = { before, done, g_array_sized_new (FALSE, FALSE, sizeof (guint), n) };

  for (guint i = 0; i < n; i++)
    {
      place[wish[i]] = i;
      before[i] = g_array_new (FALSE, FALSE, sizeof (guint));
    }
  for (guint i = 0; i < problem->n_links; i++)
    g_array_append_val (before[problem->links[i].second], problem->links[i].first);
  for (guint i = 0; i < n; i++)
    g_array_sort_with_data (before[i], compare_place, place);
  for (guint i = 0; i < n; i++)
    take (&walk, wish[i]);
  for (guint i = 0; i < n; i++)
    g_array_unref (before[i]);

  return (guint *) (gpointer) g_array_free (walk.order, FALSE);
}

static void
sort_links (PpLine      *self,
            const guint *position)
{
  const PpProblem *problem = self->problem;
  g_autofree guint *filled = g_new0 (guint, self->n + 1);

  for (guint i = 0; i < problem->n_links; i++)
    self->offsets[position[problem->links[i].second] + 1]++;
  for (guint k = 0; k < self->n; k++)
    self->offsets[k + 1] += self->offsets[k];

  for (guint i = 0; i < problem->n_links; i++)
    {
      const guint second = position[problem->links[i].second];
      const guint at = self->offsets[second] + filled[second]++;

      self->before[at] = position[problem->links[i].first];
      self->lags[at] = problem->links[i].lag;
    }
}

/* The accepted order, as it stands in the line: each job of it and what is pulled ahead for it, one
 * after the other; then the rest of the stage. */
static void
close_kept (PpLine *self,
            guint   from,
            guint   end)
{
  guint last = end;

  while (last > from && self->tasks[last - 1]->rank == PP_NO_RANK)
    last--;
  for (guint k = from; k < end; k++)
    {
      if (last > from && k > from)
        pp_closure_add (self->closure, MIN (k, last) - 1, k);
      for (guint at = self->offsets[k]; at < self->offsets[k + 1]; at++)
        pp_closure_add (self->closure, self->before[at], k);
    }
}

static void
close_links (PpLine *self)
{
  for (guint from = 0, end; from < self->n; from = end)
    {
      for (end = from; end < self->n && self->tasks[end]->stage == self->tasks[from]->stage; end++)
        ;
      close_kept (self, from, end);
    }
}

static PpLine *
new_in_order (const PpProblem *problem,
              const guint     *order)
{
  PpLine *self = g_new (PpLine, 1);
  g_autofree guint *position = g_new (guint, problem->n_tasks);

  self->problem = problem;
  self->n = problem->n_tasks;
  self->tasks = g_new (const PpTask *, self->n);
  self->offsets = g_new0 (guint, self->n + 1);
  self->before = g_new (guint, problem->n_links);
  self->lags = g_new (double, problem->n_links);
  self->closure = pp_closure_new (self->n);
  for (guint k = 0; k < self->n; k++)
    {
      self->tasks[k] = &problem->tasks[order[k]];
      position[order[k]] = k;
    }
  sort_links (self, position);
  close_links (self);

  return self;
}

PpLine *
pp_line_new (const PpProblem *problem)
{
  g_autofree guint *order = find_order (problem);

  return new_in_order (problem, order);
}

PpLine *
pp_line_reorder (const PpLine *self,
                 const guint  *sequence)
{
  g_autofree guint *order = g_new (guint, self->n);

  for (guint k = 0; k < self->n; k++)
    order[k] = pp_line_get_task (self, sequence[k]);

  return new_in_order (self->problem, order);
}

void
pp_line_free (PpLine *self)
{
  if (self == NULL)
    return;

  g_free (self->tasks);
  g_free (self->offsets);
  g_free (self->before);
  g_free (self->lags);
  pp_closure_free (self->closure);
  g_free (self);
}

guint
pp_line_get_task (const PpLine *self,
                  guint         position)
{
  return (guint) (self->tasks[position] - self->problem->tasks);
}

gboolean
pp_line_must_precede (const PpLine *self,
                      guint         a,
                      guint         b)
{
  return self->tasks[a]->stage < self->tasks[b]->stage
         || pp_closure_before (self->closure, a, b);
}
