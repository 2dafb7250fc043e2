/* numbers.h: the number of each knot and piece, the same on every sheet.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The steps of the glue plan first, 1 to n; what the plan leaves out (it is glued already, or
 * there is no plan) follows in the order of jobs: knots, then the stack from the bottom.
 */
#pragma once

#include "sheet/sheet.h"

G_BEGIN_DECLS

typedef struct
{
  guint  n_jobs;  /* knots and placements */
  guint  n_knots; /* 0 or 2: the first jobs */
  guint *of_job;  /* number of each job, from 1 */
  guint *jobs;    /* job of each number less 1 */
} PpNumbers;

/* (transfer full) */
PpNumbers *pp_numbers_new  (const PpSheetJob *job);
void       pp_numbers_free (PpNumbers        *self);

/* Places on the glass to hang a number on: for each placement of the scene where it can be seen
 * below what lies on it, as near the middle of what is seen of it as can be; its middle if it is
 * covered. `is_there` (nullable): which placements are there. Panel frame; g_free(). */
PpPoint   *pp_anchors_new  (const PpScene    *scene,
                            const gboolean   *is_there);

/* Likewise for one job (a knot's is its hole), of what is seen of it in `window` (panel frame):
 * FALSE if that is next to nothing. Of a piece that is covered whole its own middle counts. */
gboolean   pp_anchor_find  (const PpScene    *scene,
                            guint             job,
                            PpBox             window,
                            PpPoint          *at);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpNumbers, pp_numbers_free)

G_END_DECLS
