/* drilling.h: the action that proposes where to drill.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* Adds win.where-to-drill. */
void pp_drilling_add (PpWindow *window);

G_END_DECLS
