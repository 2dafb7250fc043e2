/* bound.h: what no order and no mixes can beat.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/line.h"

G_BEGIN_DECLS

typedef struct
{
  double end;       /* min: no schedule ends sooner */
  guint  n_batches; /* no schedule does with fewer mixes */
} PpBound;

/* Over all orders of the line's jobs, not this one alone. Every job must fit a mix. */
PpBound pp_bound_of (const PpLine *line);

G_END_DECLS
