/* side-layout.h: a picture and a column of paper beside it, or under it where the room is narrow.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Of two children the first is the work, the second the paper. They stand side by side where that
 * leaves the work its least width; else the paper lies under the work and has half the height.
 * Widths in em go by the text of the widget they are in. A paper that is hidden takes no room.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_SIDE_LAYOUT (pp_side_layout_get_type ())
G_DECLARE_FINAL_TYPE (PpSideLayout, pp_side_layout, PP, SIDE_LAYOUT, GtkLayoutManager)

/* "work-em" (double): the least width of the work beside the paper; 24.
 * "paper-em" (double): the width of the paper, as it reads well; 0, the default, for its natural
 *   one, or its least where that is all there is room for.
 * "paper-most" (uint, px): where the text is large the work needs the room more, and the paper is
 *   as narrow as that, but not under 14 em; 0, the default, for no such limit. */

G_END_DECLS
