/* work.c: how far something is that takes a while.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/work.h"

#define WHOLE 10000

struct _PpWork
{
  gatomicrefcount  refs;
  GCancellable    *cancellable;
  int              done; /* of WHOLE, atomic */
  double           from; /* of the thread that works */
  double           to;
};

PpWork *
pp_work_new (void)
{
  PpWork *self = g_new0 (PpWork, 1);

  g_atomic_ref_count_init (&self->refs);
  self->cancellable = g_cancellable_new ();
  self->to = 1;
  return self;
}

PpWork *
pp_work_ref (PpWork *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  g_atomic_ref_count_inc (&self->refs);
  return self;
}

void
pp_work_unref (PpWork *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->refs))
    return;
  g_object_unref (self->cancellable);
  g_free (self);
}

GCancellable *
pp_work_get_cancellable (PpWork *self)
{
  g_return_val_if_fail (self != NULL, NULL);
  return self->cancellable;
}

void
pp_work_set_part (PpWork *self,
                  double  from,
                  double  to)
{
  g_return_if_fail (self != NULL && from >= 0 && from <= to && to <= 1);

  self->from = from;
  self->to = to;
  pp_work_report (0, self);
}

void
pp_work_report (double   done,
                gpointer work)
{
  PpWork *self = work;
  double whole = self->from + (self->to - self->from) * CLAMP (done, 0, 1);

  g_atomic_int_set (&self->done, (int) (whole * WHOLE));
}

double
pp_work_get_done (PpWork *self)
{
  g_return_val_if_fail (self != NULL, 0);
  return (double) g_atomic_int_get (&self->done) / WHOLE;
}
