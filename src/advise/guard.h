/* guard.h: what a search must leave alone.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Glued and pinned placements stay, and so does what carries a glued one: all from which a way of
 * hard edges leads to it. A drilled hole stays, and one with a glued piece over its knot; a wire
 * that is knotted keeps its length, and both its holes their places.
 */
#pragma once

#include "glue/order.h"

G_BEGIN_DECLS

typedef struct
{
  const PpPanel *panel;      /* the given one */
  gboolean      *placements; /* by index in it: stays */
  gboolean      *holes;      /* likewise */
  double        *overhang;   /* mm, by index in it */
  gboolean       wire;       /* keeps its length */
} PpGuard;

/* (transfer full) */
PpGuard *pp_guard_new        (const PpCheck *given);
void     pp_guard_free       (PpGuard       *self);

/* By id; what the given panel has not is free. */
gboolean pp_guard_holds      (const PpGuard *self,
                              const char    *placement);
gboolean pp_guard_holds_hole (const PpGuard *self,
                              const char    *hole);
/* Whether no glued placement got anything before it in the stack that did not stand there in the
 * given panel. */
gboolean pp_guard_allows     (const PpGuard *self,
                              const PpPanel *panel);
/* Whether a placement reaches farther beyond the edge of the glass than in the given panel; one
 * that is not in it, at all. */
gboolean pp_guard_pushes_over_edge (const PpGuard *self,
                                    const PpCheck *check);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpGuard, pp_guard_free)

G_END_DECLS
