/* mix-count.h: how many mixes some jobs need at least.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whole numbers, so that sums are the same in whatever order they are made.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* k of the step functions: up to so many jobs that just fill a mix. */
#define PP_MIX_STEPS 8
/* For minutes and for volume each: the share itself and the steps. */
#define PP_MIX_WEIGHTS (2 * (PP_MIX_STEPS + 1))

typedef struct
{
  gint32 sum[PP_MIX_WEIGHTS];
} PpMixWeights;

/* Of one job that takes these shares of a mix, 0 to 1 each. */
PpMixWeights pp_mix_weights       (double              of_minutes,
                                   double              of_volume);
void         pp_mix_weights_add   (PpMixWeights       *self,
                                   const PpMixWeights *more);
void         pp_mix_weights_less  (PpMixWeights       *self,
                                   const PpMixWeights *less);
/* The least number of mixes for the jobs whose weights were summed, at least 1. */
guint        pp_mix_weights_count (const PpMixWeights *self);

G_END_DECLS
