/* edit-actions.h: what is done to the chosen pieces: turn, mirror, lift, lower, group, copy, ...
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Actions of the window, from menus, keys and buttons alike: win.undo, redo, cut, copy, paste,
 * duplicate, remove, select-all, choose-nothing, turn-left, turn-right (15 degrees),
 * turn-left-fine, turn-right-fine (1 degree), mirror, lift, lower, to-top, to-bottom, group,
 * ungroup, stays-put (stateful), over, under (the next that it overlaps), swap, space-evenly,
 * mirror-across, fuse-vase, fuse-piece, stand (in a pocket), to-tray, choose-next (the glass,
 * what is fused on, the holes, the wire).
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* Adds them to the window and keeps them enabled only where they can do something. */
void pp_edit_actions_add (PpWindow       *window);
/* Their keys. */
void pp_edit_actions_set_keys (GtkApplication *application);

G_END_DECLS
