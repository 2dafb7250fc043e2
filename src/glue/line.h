/* line.h: the jobs of a problem put in one order.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By stage, in a stage by the accepted order, then from the far edge to the near; a job's turn
 * pulls ahead what must go before it. From here on a job is its position in the line, and every
 * link leads from a lower position to a higher one.
 *
 * Where an accepted order binds, it binds here: in a stage all to the last job of that order stands
 * fixed, and the rest of the stage comes later.
 */
#pragma once

#include "glue/closure.h"
#include "glue/schedule.h"

G_BEGIN_DECLS

typedef struct
{
  const PpProblem *problem;
  guint            n;
  const PpTask   **tasks;    /* in order; of the problem */
  guint           *offsets;  /* n + 1: links into job k stand from offsets[k] to offsets[k + 1] */
  guint           *before;   /* position that each leads from */
  double          *lags;
  PpClosure       *closure;  /* of links and accepted order, stages left out */
} PpLine;

/* Borrows `problem`. (transfer full) */
PpLine  *pp_line_new          (const PpProblem *problem);
/* The same jobs in another order that keeps `self`: position k holds what was at sequence[k].
 * (transfer full) */
PpLine  *pp_line_reorder      (const PpLine    *self,
                               const guint     *sequence);
void     pp_line_free         (PpLine          *self);
/* The task at a position, as the problem numbers it. */
guint    pp_line_get_task     (const PpLine    *self,
                               guint            position);
/* Whether job `a` must come before job `b` > `a`, by links, accepted order or stages. */
gboolean pp_line_must_precede (const PpLine    *self,
                               guint            a,
                               guint            b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpLine, pp_line_free)

G_END_DECLS
