/* sight-leg.h: how much of one leg of the wire is hidden from each of several views.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/sight-row.h"

G_BEGIN_DECLS

/* What is known of a leg's parts for as long as it hardly moves. */
typedef struct _PpSightLeg PpSightLeg;

/* Lines of sight in one direction. */
typedef struct
{
  PpPoint slant; /* mm in plan a mm of height, toward the viewer */
  PpPoint shift; /* mm, from the wire to where they leave the front face */
} PpAslant;

/* What a leg is looked at through. */
typedef struct
{
  GPtrArray      *screens;  /* PpScreen, in the order in which they dim */
  GPtrArray      *changed;  /* those new since before, and those no longer there */
  const PpAslant *views;
  guint           n_views;
} PpSightThrough;

/* `leg` as it lies, from the wire and without a view. `previous` (nullable): of the same leg
 * before, and the same views; what still holds is taken over. (transfer full) */
PpSightLeg *pp_sight_leg_new        (const PpSightRow     *leg,
                                     const PpSightThrough *through,
                                     const PpSightLeg     *previous);
void        pp_sight_leg_free       (PpSightLeg           *self);
/* The share of the parts that are hidden on all lines, view by view; `leg` and `through` are those
 * that it was made with. */
void        pp_sight_leg_get_shares (const PpSightLeg     *self,
                                     const PpSightRow     *leg,
                                     const PpSightThrough *through,
                                     double               *shares);

G_END_DECLS
