/* plan.h: the glue-up on a clock: mixes, what goes on in each, sittings.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value: immutable, counted atomically, holding its check. Minutes count from the start of the
 * first mixing.
 */
#pragma once

#include "glue/order.h"

G_BEGIN_DECLS

typedef struct
{
  guint    job;
  guint    mix;     /* from 1 */
  guint    sitting; /* from 1 */
  double   start;   /* min */
  double   minutes;
  double   volume;  /* ml */
  gboolean hold;
} PpStep;

typedef struct
{
  double start; /* min, when mixing begins */
  double need;  /* ml that its jobs use */
  double a;     /* ml of part A and of part B to measure out */
  double b;
} PpMix;

typedef struct
{
  const PpCheck *check;
  PpOrder       *order;
  gboolean       exists;      /* FALSE: no schedule, and no steps or mixes */
  guint          n_steps;
  PpStep        *steps;       /* in the order of their start */
  guint          n_mixes;
  PpMix         *mixes;
  double         placed_by;   /* min, end of the last job; NAN if none exists */
  double         lower_bound; /* min, nothing can be done sooner; NAN if none exists */
  gboolean       optimal;
  GPtrArray     *findings;    /* PpFinding: mix-small */
} PpPlan;

/* Sets `a` and `b` by what is needed; a mix is made no smaller than the smallest. */
void    pp_mix_measure    (PpMix            *self,
                           const PpAdhesive *adhesive);

/* `cancellable` and `progress` as in pp_check_new(); `max_steps` bounds the search (0: the
 * built-in number). Returns (transfer full) or NULL. Errors: G_IO_ERROR_CANCELLED. */
PpPlan *pp_plan_new   (const PpCheck  *check,
                       guint64         max_steps,
                       GCancellable   *cancellable,
                       PpProgressFunc  progress,
                       gpointer        data,
                       GError        **error);
/* The same, but cancelling `enough` (nullable) ends the search with the best plan so far, and
 * `order` (nullable, referenced) is that of the check, if it was asked for before. */
PpPlan *pp_plan_new_until (const PpCheck  *check,
                           PpOrder        *order,
                           guint64         max_steps,
                           GCancellable   *enough,
                           GCancellable   *cancellable,
                           PpProgressFunc  progress,
                           gpointer        data,
                           GError        **error);
PpPlan *pp_plan_ref   (const PpPlan   *self);
void    pp_plan_unref (const PpPlan   *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpPlan, pp_plan_unref)

G_END_DECLS
