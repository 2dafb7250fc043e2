/* checker.c: checks panels in a thread of its own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The check before is handed to the next one, so that what did not change is not made again. It
 * is touched by one thread at a time: by the worker while one runs; the main thread only reads
 * what is said in it.
 */
#include "config.h"

#include "desk/checker.h"

#include "desk/work.h"

#include <math.h>

struct _PpChecker
{
  GObject        parent_instance;
  GCancellable  *cancellable;
  GCancellable  *planning;    /* or NULL */
  PpWork        *search;      /* of the plan: how far, and whether the best so far will do */
  const PpPanel *waiting;
  const PpCheck *last;
  const PpCheck *ordered;     /* the check whose order is `order`; both or neither NULL */
  PpOrder       *order;
  gboolean       is_running;
};

G_DEFINE_FINAL_TYPE (PpChecker, pp_checker, G_TYPE_OBJECT)

enum
{
  CHECKED,
  PLANNED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* What goes to the thread: a panel to check, or a check to plan. */
typedef struct
{
  const PpPanel *panel;
  const PpCheck *check;
  PpWork        *search;  /* NULL for a check */
  const PpCheck *ordered; /* and its order, to make that of `check` from */
  PpOrder       *order;
} Work;

static void
free_work (gpointer data)
{
  Work *work = data;

  pp_panel_unref (work->panel);
  pp_check_unref (work->check);
  pp_work_unref (work->search);
  pp_check_unref (work->ordered);
  pp_order_unref (work->order);
  g_free (work);
}

static void go_on (PpChecker *self);

static void
check_in_thread (GTask        *task,
                 gpointer      source,
                 gpointer      data,
                 GCancellable *cancellable)
{
  Work *work = data;
  g_autoptr (GError) error = NULL;
  PpCheck *check = pp_check_new (work->panel, work->check, cancellable, NULL, NULL, &error);

  if (check == NULL)
    g_task_return_error (task, g_steal_pointer (&error));
  else
    g_task_return_pointer (task, check, (GDestroyNotify) pp_check_unref);
}

/* The order is kept though the plan be given up: in a drag the next one is made from it. */
static void
order_anew (Work *work)
{
  PpOrder *order = pp_order_new_after (work->check, work->ordered, work->order);

  pp_order_unref (work->order);
  work->order = order;
  pp_check_unref (work->ordered);
  work->ordered = pp_check_ref (work->check);
}

static void
plan_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Work *work = data;
  g_autoptr (GError) error = NULL;
  PpPlan *plan;

  order_anew (work);
  plan = pp_plan_new_until (work->check, work->order, 0, pp_work_get_cancellable (work->search),
                            cancellable, pp_work_report, work->search, &error);

  if (plan == NULL)
    g_task_return_error (task, g_steal_pointer (&error));
  else
    g_task_return_pointer (task, plan, (GDestroyNotify) pp_plan_unref);
}

static void
planned_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  g_autoptr (PpChecker) self = data;
  g_autoptr (PpPlan) plan = g_task_propagate_pointer (G_TASK (result), NULL);
  Work *work = g_task_get_task_data (G_TASK (result));

  self->is_running = FALSE;
  self->ordered = g_steal_pointer (&work->ordered);
  self->order = g_steal_pointer (&work->order);
  g_clear_object (&self->planning);
  g_clear_pointer (&self->search, pp_work_unref);
  if (plan != NULL)
    g_signal_emit (self, signals[PLANNED], 0, plan);
  go_on (self);
}

/* The task does not hold the checker as its source: it may end in the thread, and so would that. */
static void
start (PpChecker           *self,
       const PpPanel       *panel,
       GCancellable        *cancellable,
       GTaskThreadFunc      in_thread,
       GAsyncReadyCallback  done)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, done, g_object_ref (self));
  Work *work = g_new0 (Work, 1);

  work->panel = panel;
  work->check = self->last != NULL ? pp_check_ref (self->last) : NULL;
  work->search = panel == NULL ? pp_work_ref (self->search) : NULL;
  if (panel == NULL)
    {
      work->ordered = g_steal_pointer (&self->ordered);
      work->order = g_steal_pointer (&self->order);
    }
  g_task_set_task_data (task, work, free_work);
  self->is_running = TRUE;
  g_task_run_in_thread (task, in_thread);
}

static void
plan (PpChecker *self)
{
  self->planning = g_cancellable_new ();
  self->search = pp_work_new ();
  start (self, NULL, self->planning, plan_in_thread, planned_cb);
}

static void
checked_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  g_autoptr (PpChecker) self = data;
  g_autoptr (PpCheck) check = g_task_propagate_pointer (G_TASK (result), NULL);

  self->is_running = FALSE;
  if (check != NULL)
    {
      g_clear_pointer (&self->last, pp_check_unref);
      self->last = pp_check_ref (check);
      g_signal_emit (self, signals[CHECKED], 0, check);
    }
  if (check != NULL && self->waiting == NULL && !g_cancellable_is_cancelled (self->cancellable))
    plan (self);
  else
    go_on (self);
}

static void
go_on (PpChecker *self)
{
  if (!self->is_running && self->waiting != NULL
      && !g_cancellable_is_cancelled (self->cancellable))
    start (self, g_steal_pointer (&self->waiting), self->cancellable, check_in_thread, checked_cb);
}

static void
pp_checker_dispose (GObject *object)
{
  PpChecker *self = PP_CHECKER (object);

  pp_checker_stop (self);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->planning);
  g_clear_pointer (&self->search, pp_work_unref);
  g_clear_pointer (&self->last, pp_check_unref);
  g_clear_pointer (&self->ordered, pp_check_unref);
  g_clear_pointer (&self->order, pp_order_unref);
  G_OBJECT_CLASS (pp_checker_parent_class)->dispose (object);
}

static void
pp_checker_class_init (PpCheckerClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_checker_dispose;
  signals[CHECKED] = g_signal_new ("checked", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[PLANNED] = g_signal_new ("planned", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
pp_checker_init (PpChecker *self)
{
  self->cancellable = g_cancellable_new ();
}

PpChecker *
pp_checker_new (void)
{
  return g_object_new (PP_TYPE_CHECKER, NULL);
}

void
pp_checker_ask (PpChecker     *self,
                const PpPanel *panel)
{
  g_return_if_fail (PP_IS_CHECKER (self) && panel != NULL);

  g_clear_pointer (&self->waiting, pp_panel_unref);
  self->waiting = pp_panel_ref (panel);
  g_cancellable_cancel (self->planning);
  go_on (self);
}

void
pp_checker_stop (PpChecker *self)
{
  g_return_if_fail (PP_IS_CHECKER (self));

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_cancellable_cancel (self->planning);
  g_clear_pointer (&self->waiting, pp_panel_unref);
}

double
pp_checker_get_planning (PpChecker *self)
{
  g_return_val_if_fail (PP_IS_CHECKER (self), (double) NAN);
  return self->search != NULL ? pp_work_get_done (self->search) : (double) NAN;
}

void
pp_checker_end_planning (PpChecker *self)
{
  g_return_if_fail (PP_IS_CHECKER (self));
  if (self->search != NULL)
    g_cancellable_cancel (pp_work_get_cancellable (self->search));
}
