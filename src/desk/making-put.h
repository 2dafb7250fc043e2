/* making-put.h: what was made at the piece bench, put in the tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/making.h"

G_BEGIN_DECLS

/* The panel with it in its tray: `piece`, which is what the making makes, or all that it makes.
 * `id` (nullable): that of the piece that is made otherwise, then it alone. `label` names the act,
 * where there is one (transfer full). Returns (transfer full). Errors: as the way of making and
 * pp_edit_add_piece(). */
PpPanel *pp_making_put (const PpMaking  *making,
                        const PpPiece   *piece,
                        const char      *id,
                        const PpPanel   *panel,
                        char           **label,
                        GError         **error);

G_END_DECLS
