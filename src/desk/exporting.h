/* exporting.h: the sheets and the picture of a panel, written to files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each asks what is wanted and where to, works in a thread that can be stopped, and tells in one
 * sentence where the files are.
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

void pp_exporting_sheets  (PpWindow *window);
void pp_exporting_picture (PpWindow *window);

G_END_DECLS
