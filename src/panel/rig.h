/* rig.h: holes and wire for a panel that lacks them, where a new panel would have them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each returns (transfer full). Errors: PP_PANEL_ERROR_LIMIT for more holes than a panel may have.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* One more hole, not drilled: at the place new-panel.h gives a hole, or else at the first place
 * where it keeps clear of those that are there. `id` (nullable, transfer full): the hole's. */
PpPanel *pp_rig_add_hole    (const PpPanel *panel,
                             char         **id,
                             GError       **error);
/* A wire between the two holes that lie farthest apart across, as long as lets its legs rise by
 * 30 degrees; holes that are missing are added. The panel must have no wire. */
PpPanel *pp_rig_put_wire_on (const PpPanel *panel,
                             GError       **error);

G_END_DECLS
