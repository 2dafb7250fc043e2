/* crew.h: a few threads that do numbered pieces of work.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Who does which piece goes by the clock, so no answer may depend on it: the work writes to its own
 * number. What a worker keeps (its checks, whose shapes are for one thread at a time) goes by the
 * number of the worker.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _PpCrew PpCrew;

typedef void (*PpCrewFunc) (guint    worker,
                            guint    number,
                            gpointer data);

/* The caller is worker 0; `n_workers` is at least 1. (transfer full) */
PpCrew *pp_crew_new  (guint       n_workers);
void    pp_crew_free (PpCrew     *self);
/* Calls `func` once for each number from 0 to n - 1 and returns when all are done. */
void    pp_crew_run  (PpCrew     *self,
                      guint       n,
                      PpCrewFunc  func,
                      gpointer    data);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpCrew, pp_crew_free)

G_END_DECLS
