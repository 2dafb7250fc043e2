/* fit.h: a layout spaced out anew for another size of glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

#define PP_FIT_STEPS 800 /* of the search that puts it right afterwards */

/* Glass of `width` and `height` mm. Placements and holes that are not drilled move in proportion
 * about the middle of the glass, the wire's length with the distance of its holes; no piece is
 * scaled. Fused parts keep their size and stand as far from the lower edge as before, and stems in
 * their pockets go with them. To be put right afterwards. (transfer full)
 * Errors: PP_PANEL_ERROR_VALUE for a size that no glass has, and where pieces are glued on. */
PpPanel *pp_fit_new (const PpPanel  *panel,
                     double          width,
                     double          height,
                     GError        **error);

G_END_DECLS
