/* vary.h: a layout much like another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* How far a piece goes at most, as a share of the lesser side of the glass, and by how many degrees
 * it turns. */
#define PP_VARY_SHARE 0.07
#define PP_VARY_TURN 12.0

/* The same pieces, each a little elsewhere, as if the layout lay on rubber that was pulled here and
 * there: what lies close together stays together. `number` 0 is the panel itself, every other
 * number another layout, the same on every machine. What is glued, pinned or in a pocket stays. A
 * panel that is at the bounds of what a panel may be (bounds.h) may come back as it is.
 * To be put right afterwards. (transfer full) */
PpPanel *pp_vary_new (const PpPanel *panel,
                      guint          number);

G_END_DECLS
