/* piece-actions.h: actions on the pieces of the tray: make one, change one, take one off.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

void pp_piece_actions_add      (PpWindow       *window);
void pp_piece_actions_set_keys (GtkApplication *application);

G_END_DECLS
