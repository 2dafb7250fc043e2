/* split.h: cuts a line of jobs into mixes so that the last job ends soonest.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/line.h"

G_BEGIN_DECLS

typedef struct
{
  guint    n_batches;
  guint   *firsts;  /* n_batches + 1: batch i does jobs firsts[i] to firsts[i + 1] - 1 */
  double  *starts;  /* min, of each job of the line */
  double   end;     /* min, 0 without jobs */
  gboolean exact;   /* no way of cutting this line is better: the search was not narrowed */
} PpSplit;

/* Every job of the line must fit a mix of its own. Arguments, result and errors as of
 * pp_schedule_new(). */
PpSplit *pp_split_new  (const PpLine    *line,
                        guint64          max_steps,
                        GCancellable    *cancellable,
                        PpScheduleFunc   progress,
                        gpointer         data,
                        GError         **error);
void     pp_split_free (PpSplit         *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSplit, pp_split_free)

G_END_DECLS
