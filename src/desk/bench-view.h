/* bench-view.h: the bench: one piece at a time, to be read at arm's length.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fills the screen from pp_bench_view_begin() until it is taken from view. Signal: leave, the maker
 * is done for now.
 */
#pragma once

#include "desk/clock.h"
#include "desk/window.h"

G_BEGIN_DECLS

#define PP_TYPE_BENCH_VIEW (pp_bench_view_get_type ())
G_DECLARE_FINAL_TYPE (PpBenchView, pp_bench_view, PP, BENCH_VIEW, GtkWidget)

/* For tests; without it the system's. What `data` is must outlive the view. */
void pp_bench_view_set_clock (PpBenchView  *self,
                              PpClock       clock);
/* `plan` is of the present panel of the window's document, which has a file. */
void pp_bench_view_begin     (PpBenchView  *self,
                              PpWindow     *window,
                              const PpPlan *plan);
/* Lets go of the document. */
void pp_bench_view_end       (PpBenchView  *self);

G_END_DECLS
