/* deadline.c: says "enough" when a time is up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/deadline.h"

#include <math.h>

/* Some years: what is longer is no deadline, and would not fit the clock. */
#define MOST_SECONDS 1e8

struct _PpDeadline
{
  GCancellable *enough;
  GThread      *thread;
  GMutex        mutex;
  GCond         freed;
  gint64        end;     /* µs of the monotonic clock */
  gboolean      is_over; /* nobody waits any more */
};

static gpointer
wait_thread (gpointer data)
{
  PpDeadline *self = data;

  g_mutex_lock (&self->mutex);
  while (!self->is_over)
    if (!g_cond_wait_until (&self->freed, &self->mutex, self->end))
      {
        g_cancellable_cancel (self->enough);
        break;
      }
  g_mutex_unlock (&self->mutex);
  return NULL;
}

PpDeadline *
pp_deadline_new (double seconds)
{
  PpDeadline *self = g_new0 (PpDeadline, 1);

  self->enough = g_cancellable_new ();
  g_mutex_init (&self->mutex);
  g_cond_init (&self->freed);
  self->end = g_get_monotonic_time () + (gint64) (fmin (seconds, MOST_SECONDS) * G_USEC_PER_SEC);
  if (seconds <= 0)
    g_cancellable_cancel (self->enough); /* before a thread could */
  self->thread = g_thread_new ("deadline", wait_thread, self);
  return self;
}

GCancellable *
pp_deadline_get_enough (PpDeadline *self)
{
  return self->enough;
}

void
pp_deadline_free (PpDeadline *self)
{
  if (self == NULL)
    return;
  g_mutex_lock (&self->mutex);
  self->is_over = TRUE;
  g_cond_signal (&self->freed);
  g_mutex_unlock (&self->mutex);
  g_thread_join (self->thread);
  g_cond_clear (&self->freed);
  g_mutex_clear (&self->mutex);
  g_object_unref (self->enough);
  g_free (self);
}
