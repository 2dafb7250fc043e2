/* slack.h: where a hook can sit on a slack wire: an ellipse about the two holes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever the hook does, the two legs have the wire's length together. Panel frame, mm.
 */
#pragma once

#include "panel/point.h"

G_BEGIN_DECLS

typedef struct
{
  PpPoint from;   /* the holes: foci */
  PpPoint to;
  PpPoint middle;
  PpPoint along;  /* unit vector from `from` to `to`; (1, 0) if they coincide */
  PpPoint up;     /* unit normal of it that points up, to less y */
  double  half;   /* half the wire's length: the half axis along */
  double  sag;    /* the half axis up; 0 for a wire that is not longer than the holes' distance */
  double  spread; /* half the holes' distance */
} PpSlack;

/* Holes one above the other have no upper side: then `up` points away from `weight`, as that side
 * is where the hook will be, or right if that is on their line too. */
PpSlack  pp_slack_of        (PpPoint        from,
                             PpPoint        to,
                             double         length,
                             PpPoint        weight);
/* The hook in the middle of the wire. */
PpPoint  pp_slack_top       (const PpSlack *self);
/* The upper point of the ellipse on the upright at `x`; FALSE where there is none. */
gboolean pp_slack_above     (const PpSlack *self,
                             double         x,
                             PpPoint       *hook);
/* The points of the ellipse that are farther from `p` than all points near them: where a slipping
 * hook comes to rest if p is the centre of mass. Writes at most two and gives their number: none
 * only for a circle about p. */
guint    pp_slack_find_far  (const PpSlack *self,
                             PpPoint        p,
                             PpPoint        far[2]);

G_END_DECLS
