/* crew.c: a few threads that do numbered pieces of work.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/crew.h"

struct _PpCrew
{
  guint        n_workers;
  GThreadPool *pool;    /* NULL for one alone */
  GMutex       mutex;
  GCond        idle;
  guint        n_busy;  /* of the pool, under the mutex */
  int          next;    /* atomic: the next number to be done */
  int          n;
  PpCrewFunc   func;
  gpointer     data;
};

static void
work_as (PpCrew *self,
         guint   worker)
{
  int number;

  while ((number = g_atomic_int_add (&self->next, 1)) < self->n)
    self->func (worker, (guint) number, self->data);
}

static void
work_in_pool (gpointer worker,
              gpointer data)
{
  PpCrew *self = data;

  work_as (self, GPOINTER_TO_UINT (worker));
  g_mutex_lock (&self->mutex);
  self->n_busy--;
  g_cond_signal (&self->idle);
  g_mutex_unlock (&self->mutex);
}

PpCrew *
pp_crew_new (guint n_workers)
{
  PpCrew *self = g_new0 (PpCrew, 1);

  g_assert (n_workers >= 1);
  g_mutex_init (&self->mutex);
  g_cond_init (&self->idle);
  if (n_workers > 1)
    self->pool = g_thread_pool_new (work_in_pool, self, (int) n_workers - 1, TRUE, NULL);
  /* where the system gives fewer threads, fewer work: none is waited for that never comes */
  self->n_workers = 1 + (self->pool != NULL ? g_thread_pool_get_num_threads (self->pool) : 0);
  return self;
}

void
pp_crew_free (PpCrew *self)
{
  if (self == NULL)
    return;
  if (self->pool != NULL)
    g_thread_pool_free (self->pool, FALSE, TRUE);
  g_mutex_clear (&self->mutex);
  g_cond_clear (&self->idle);
  g_free (self);
}

void
pp_crew_run (PpCrew     *self,
             guint       n,
             PpCrewFunc  func,
             gpointer    data)
{
  self->func = func;
  self->data = data;
  self->n = (int) n;
  self->next = 0;
  self->n_busy = self->n_workers - 1;
  for (guint worker = 1; worker < self->n_workers; worker++)
    g_thread_pool_push (self->pool, GUINT_TO_POINTER (worker), NULL);
  work_as (self, 0);
  g_mutex_lock (&self->mutex);
  while (self->n_busy > 0)
    g_cond_wait (&self->idle, &self->mutex);
  g_mutex_unlock (&self->mutex);
}
