/* advise.h: a panel put right: what to move, what that costs, what it cures and what it leaves.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Panels are values: the one given stays as it is, and the better one comes with the advice.
 * Whatever is glued, pinned or carries what is glued is left alone (guard.h). Long: for a thread of
 * its own; the calling thread is one of those that search.
 */
#pragma once

#include "advise/change.h"
#include "advise/goal.h"

G_BEGIN_DECLS

/* How long a search goes on. */
typedef struct
{
  guint64 seed;
  guint64 steps;   /* tries; 0: as many as there is time for */
  double  seconds; /* stops it earlier; 0: no end. With both 0 a built-in number of steps. */
  guint   threads; /* 0: one for each processor. The answer does not depend on it. */
} PpSearchLimits;

/* Where a search is, told now and then in the calling thread. */
typedef struct
{
  guint64   steps;
  double    share;  /* of steps or seconds, whichever ends first; 0 to 1 */
  PpFigures best;   /* of the best panel so far */
  double    cost;
} PpAdviceProgress;

typedef void (*PpAdviceFunc) (const PpAdviceProgress *progress,
                              gpointer                data);

typedef struct
{
  const PpPanel *panel;   /* the better one; the given one itself where none was found */
  gboolean       changed;
  guint64        seed;
  guint64        steps;
  double         cost;
  PpFigures      before;
  PpFigures      after;
  GPtrArray     *changes; /* PpChange */
  GPtrArray     *cured;   /* PpFinding: of before, not quiet, gone */
  GPtrArray     *left;    /* PpFinding: of after, not quiet */
  PpCheck       *check_before; /* what the findings belong to */
  PpCheck       *check_after;
} PpAdvice;

/* The cheapest change found after which the finding of this code about these ids (a set, ended by
 * NULL) is gone and nothing of its level or worse is there that was not. If none is found, or there
 * is no such finding, nothing is changed. `cancellable` and `progress` (nullable): when cancelled,
 * the best so far. (transfer full), never NULL. */
PpAdvice *pp_advise_one   (const PpPanel        *panel,
                           const char           *code,
                           const char * const   *about,
                           const PpSearchLimits *limits,
                           GCancellable         *cancellable,
                           PpAdviceFunc          progress,
                           gpointer              data);
/* All of them, as far as it goes; never a worse panel. */
PpAdvice *pp_advise_all   (const PpPanel        *panel,
                           const PpSearchLimits *limits,
                           GCancellable         *cancellable,
                           PpAdviceFunc          progress,
                           gpointer              data);
/* What was changed from `before` to `after`, however that came about. */
PpAdvice *pp_advice_new   (const PpPanel        *before,
                           const PpPanel        *after);
void      pp_advice_free  (PpAdvice             *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpAdvice, pp_advice_free)

G_END_DECLS
