/* search.h: the seeded local search behind put right.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "advise/advise.h"
#include "advise/goal.h"

G_BEGIN_DECLS

typedef struct
{
  PpPanel *panel; /* the given one where nothing better was found */
  PpRating rating;
  guint64  steps;
} PpBestPanel;

/* From the given panel of `goal`. The answer goes by panel, goal, seed and steps alone. `steps`
 * that end the search without any better found are bounded by `patience` (0: not). */
PpBestPanel pp_search (const PpGoal         *goal,
                       const PpCheck        *given,
                       const PpSearchLimits *limits,
                       guint64               patience,
                       GCancellable         *cancellable,
                       PpAdviceFunc          progress,
                       gpointer              data);

G_END_DECLS
