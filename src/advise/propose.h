/* propose.h: what a search tries next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A proposal is a few moves from the present panel: aimed at a finding, back toward where things
 * lay, or a small step somewhere. Where many look alike, the glance picks. Nothing that the guard
 * holds is moved. Threads may share a proposer; each brings dice of its own.
 */
#pragma once

#include "advise/dice.h"
#include "advise/glance.h"
#include "advise/goal.h"
#include "advise/guard.h"

G_BEGIN_DECLS

typedef struct
{
  const PpGoal  *goal;
  const PpGuard *guard;
  const PpPanel *given;
  const PpCheck *check;    /* of the present panel */
  PpGlance      *glance;   /* likewise */
  double         seen;     /* the glance's estimate of it */
  GPtrArray     *troubles; /* PpFinding that the goal minds and that moves can cure, borrowed */
  GArray        *movable;  /* guint: placements that may be moved */
  GArray        *changed;  /* guint: of those, the ones that lie elsewhere than given, or are new */
} PpProposer;

/* All borrowed, and must outlive it. (transfer full) */
PpProposer *pp_proposer_new  (const PpGoal     *goal,
                              const PpGuard    *guard,
                              const PpCheck    *check);
void        pp_proposer_free (PpProposer       *self);
/* Without moves where nothing comes to mind. */
PpMoves     pp_propose       (const PpProposer *self,
                              PpDice           *dice);
/* From the present panel, some of what was changed put back at random: a new start nearer to the
 * given panel. */
PpMoves     pp_propose_ruin  (const PpProposer *self,
                              PpDice           *dice);

/* PpMoves: every change to the present panel undone by itself, wholly, then in part. (transfer
 * full) */
GArray     *pp_propose_undos (const PpProposer *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpProposer, pp_proposer_free)

G_END_DECLS
