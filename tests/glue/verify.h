/* verify.h: whether a schedule keeps the rules of the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Written from the fifth page of the computations alone; shares no code with the scheduler.
 */
#pragma once

#include "glue/plan.h"
#include "glue/schedule.h"

G_BEGIN_DECLS

/* NULL if all is well, else the first rule found broken: "tasks", "empty", "zero", "hands",
 * "mixed", "life", "ended", "volume", "link", "stage", "end", "bound", "sitting". */
const char *verify_schedule (const PpProblem  *problem,
                             const PpSchedule *schedule);
/* The same of a plan that exists: its steps, and the rules that its order makes for them. */
const char *verify_plan     (const PpPlan     *plan);

G_END_DECLS
