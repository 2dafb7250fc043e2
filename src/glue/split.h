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
} PpSplit;

/* The best cuts, but for lines with so many waits that not all can be tried. Every job of the line
 * must fit a mix of its own. Errors: G_IO_ERROR_CANCELLED. */
PpSplit *pp_split_new  (const PpLine *line,
                        GCancellable *cancellable,
                        GError      **error);
/* Cut at these jobs, all done as soon as can be; each batch must fit a mix. (transfer full) */
PpSplit *pp_split_at   (const PpLine *line,
                        const guint  *firsts,
                        guint         n_batches);
void     pp_split_free (PpSplit      *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSplit, pp_split_free)

G_END_DECLS
