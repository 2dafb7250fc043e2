/* outside-change.h: another program changed the panel's file, or took it away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* From now on the window says so above its page, with both ways out: "Keep mine" leaves the panel
 * as one that is not saved, "Show theirs" makes the file's panel the next step of the history, so
 * that undo brings the maker's own back. */
void pp_outside_change_follow (PpWindow *window);

G_END_DECLS
