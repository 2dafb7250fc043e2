/* checker.h: checks panels in a thread of its own, one running and one waiting.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * During a drag panels come faster than they can be checked: the one that waits is replaced, the
 * one that runs goes on to its end, so that answers keep coming, in order. The plan is made only
 * when no other panel waits, and given up for the next one.
 * Signals: checked (gpointer PpCheck), planned (gpointer PpPlan): borrowed, in the main thread.
 */
#pragma once

#include "glue/plan.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define PP_TYPE_CHECKER (pp_checker_get_type ())
G_DECLARE_FINAL_TYPE (PpChecker, pp_checker, PP, CHECKER, GObject)

PpChecker *pp_checker_new  (void);
void       pp_checker_ask  (PpChecker     *self,
                            const PpPanel *panel);
/* How far the plan being made is, 0 to 1; NAN while none is. */
double     pp_checker_get_planning (PpChecker *self);
/* The best plan found so far will do. */
void       pp_checker_end_planning (PpChecker *self);
/* Lets go of what runs and waits; no signal comes after it. */
void       pp_checker_stop (PpChecker     *self);

G_END_DECLS
