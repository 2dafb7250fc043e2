/* view-actions.h: zoom and how the panel is looked at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Actions of the window: win.zoom-in, zoom-out, zoom-fit, zoom-true (1 mm = 1 mm of the screen),
 * heights, glue, groups, from-behind, measure (stateful).
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

void pp_view_actions_add      (PpWindow       *window);
void pp_view_actions_set_keys (GtkApplication *application);

G_END_DECLS
