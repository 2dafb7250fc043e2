/* bound.h: what no order and no mixes can beat.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/line.h"
#include "glue/mix-count.h"

G_BEGIN_DECLS

typedef struct
{
  double        end;         /* min: no schedule ends sooner */
  guint         n_batches;   /* no schedule does with fewer mixes */
  PpMixWeights *weights;     /* of each job of the line */
  double       *tails;       /* min between the end of each job and the end of all, at least */
  gboolean     *waits;       /* a tail is that long for waits, not for the work alone */
  guint        *mixes_after; /* mixes begun after that of each job, at least, for waits */
} PpBound;

/* Over all orders of the line's jobs, not this one alone. Every job must fit a mix. (transfer
 * full) */
PpBound *pp_bound_new      (const PpLine    *line);
void     pp_bound_free     (PpBound         *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpBound, pp_bound_free)

G_END_DECLS
