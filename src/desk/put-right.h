/* put-right.h: the actions that look for a better panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "win.put-right" (code, about) does the cheapest thing that cures one finding, as one step of
 * undo. "win.put-all-right" searches, shows what it found, and does it when that is accepted. Both
 * can be stopped.
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

void pp_put_right_add      (PpWindow       *window);
void pp_put_right_set_keys (GtkApplication *application);

G_END_DECLS
