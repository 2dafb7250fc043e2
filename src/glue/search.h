/* search.h: the best order of jobs and its mixes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/bound.h"
#include "glue/split.h"

G_BEGIN_DECLS

typedef struct
{
  guint   *sequence;    /* positions of the line, in the order in which they are done */
  guint   *firsts;      /* n_batches + 1: batch i does firsts[i] up to firsts[i + 1] - 1 */
  guint    n_batches;
  double   lower_bound; /* min, proved */
  gboolean optimal;     /* proved: end, then number of mixes, then pairs */
} PpBestLine;

/* Better than `split`, which cuts the line as it is, or that itself. `bound` is of the same line.
 * Other arguments, result and errors as of pp_schedule_new(). */
PpBestLine *pp_search_run     (const PpLine  *line,
                               const PpBound *bound,
                               const PpSplit *split,
                               guint64        max_steps,
                               GCancellable  *enough,
                               GCancellable  *cancellable,
                               PpScheduleFunc progress,
                               gpointer       data,
                               GError       **error);
void        pp_best_line_free (PpBestLine    *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpBestLine, pp_best_line_free)

G_END_DECLS
