/* file-drop.h: panels let go over the window, as from a file manager.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* Files dropped anywhere on it are opened, as from the menu. */
void pp_file_drop_add (PpWindow *window);

G_END_DECLS
