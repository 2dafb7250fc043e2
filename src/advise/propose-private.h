/* propose-private.h: the kinds of proposals, and what they share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "advise/curable-private.h"
#include "advise/propose.h"

G_BEGIN_DECLS

#define PP_PROPOSE_GRAIN 8.0 /* steps a mm: exact in binary, and finer than a hand lays */

/* About `by` mm from `from`, in such steps. */
static inline double
pp_propose_step (double from,
                 double by)
{
  return from + round (by * PP_PROPOSE_GRAIN) / PP_PROPOSE_GRAIN;
}

static inline const PpPlacement *
pp_proposer_placement (const PpProposer *self,
                       guint             index)
{
  return pp_panel_placement (self->check->panel, index);
}

/* A pose `by` mm and `turn` degrees from where the placement lies, in steps of 1/8 mm and whole
 * degrees from where it was given. */
PpMove   pp_propose_pose     (const PpProposer *self,
                              guint             index,
                              PpPoint           by,
                              double            turn);
/* TRUE if the placement may be moved. */
gboolean pp_propose_is_free  (const PpProposer *self,
                              guint             index);
/* Of the present panel; NULL if it is new. (transfer none) */
const PpPlacement *pp_propose_given (const PpProposer *self,
                                     guint             index);
/* The estimate of sight and cost together, by which proposals are picked. */
double   pp_propose_weigh    (const PpProposer *self,
                              const PpMoves    *moves);

/* Something over a place that is in view of such probes (propose-cover.c); `disc`: the hole, or -1
 * for any. */
PpMoves  pp_propose_cover    (const PpProposer *self,
                              PpProbes          kinds,
                              int               disc,
                              PpDice           *dice);
/* For a finding about pieces, holes or the wire's length (propose-rest.c). */
PpMoves  pp_propose_mend     (const PpProposer *self,
                              const PpFinding  *finding,
                              PpDice           *dice);
/* A change undone, wholly or in part (propose-back.c). */
PpMoves  pp_propose_back     (const PpProposer *self,
                              PpDice           *dice);
/* Any piece a little. */
PpMoves  pp_propose_nudge    (const PpProposer *self,
                              PpDice           *dice);

G_END_DECLS
