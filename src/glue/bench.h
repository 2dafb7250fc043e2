/* bench.h: where the maker stands in a glue-up, and what comes next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Goes by the plan in hand, what is glued, the log and the time; asks no clock. The plan may have
 * been made before some of its jobs were done, so that the sheet on the bench stays true: its
 * steps are followed in their order, leaving out those done. A new one is needed only when
 * something came off that it does not hold, or sits elsewhere.
 */
#pragma once

#include "glue/plan.h"

G_BEGIN_DECLS

typedef enum
{
  PP_NEXT_PLAN,  /* a plan for this panel, if there is one; `step` is not set */
  PP_NEXT_MIX,   /* mix what `mix` says, for `step` */
  PP_NEXT_PLACE, /* do `step` from the open mix */
  PP_NEXT_NONE,  /* all is done */
} PpNext;

typedef struct
{
  PpNext        next;
  double        wait;    /* min until that may begin, in an early mix longer than `left`; 0: now.
                          * NONE: until the panel may be moved */
  double        cured;   /* NONE: min until it may hang; else NAN */
  gboolean      can_hurry; /* MIX: `step` could go with the open mix, were `wait` passed over */
  const PpStep *step;    /* in hand, of the plan; NULL: none */
  gboolean      is_open; /* a mix is open, and not past */
  double        age;     /* min since the parts of the open mix touched; NAN: none */
  double        left;    /* min for which it can be used; NAN: none */
  PpMix         mix;     /* MIX: for what is left of the step's mix; its start is 0 */
} PpBench;

/* What to do on `panel` at `now`. `plan` is of it or of an earlier one; `self` borrows it. */
void pp_bench_read (PpBench       *self,
                    const PpPlan  *plan,
                    const PpPanel *panel,
                    GDateTime     *now);

/* min since a job was done; NAN: it is not, or it is not known when. */
double pp_bench_age_of (const PpPlan  *plan,
                        const PpPanel *panel,
                        guint          job,
                        GDateTime     *now);

G_END_DECLS
