/* shade.h: how much of a shape stays in view under panes of glass, by area.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pane is a set of closed rings, inside by the even-odd rule, less what is taken out of it, ring
 * by ring; these may overlap. Pane 0 is the shape that is looked at. A ring's last position is its
 * first.
 */
#pragma once

#include "panel/point.h"

G_BEGIN_DECLS

typedef struct _PpShade PpShade;

/* Without a pane. (transfer full) */
PpShade *pp_shade_new      (void);
void     pp_shade_free     (PpShade       *self);
/* The pane that rings are added to from then on. `transmittance` of pane 0 is not asked. */
void     pp_shade_add_pane (PpShade       *self,
                            double         transmittance);
void     pp_shade_add_ring (PpShade       *self,
                            const PpPoint *ring,
                            guint          n_positions);
/* Takes a ring out of the pane added last, of which nothing is left within `reach` mm of the
 * segment from `from` to `to` either: by that a window is soon done with. */
void     pp_shade_take_out (PpShade       *self,
                            const PpPoint *ring,
                            guint          n_positions,
                            PpPoint        from,
                            PpPoint        to,
                            double         reach);
/* mm² of pane 0 over which more light than `opaque` comes through all the others. */
double   pp_shade_get_shown (PpShade      *self,
                             double        opaque);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpShade, pp_shade_free)

G_END_DECLS
