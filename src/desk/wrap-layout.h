/* wrap-layout.h: children in a line where there is room, else in several lines.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each child has its natural width, or the whole width where that is less; what is left over of
 * a line goes to those of its children that expand. All children of a line are as high as the
 * line. Unlike GtkFlowBox it has no focus and no cursor of its own, and no equal columns.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_WRAP_LAYOUT (pp_wrap_layout_get_type ())
G_DECLARE_FINAL_TYPE (PpWrapLayout, pp_wrap_layout, PP, WRAP_LAYOUT, GtkLayoutManager)

/* "spacing" (uint, px): between children and between lines.
 * "most" (uint, px): what of a natural width counts, as that of a text is all of it in one line. */

G_END_DECLS
