/* fit-layout.h: of several ways to show the same, the first for which there is room.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The children are the ways, the widest first; the last is shown where none has its natural width.
 * The others are not seen, neither by assistive technology.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_FIT_LAYOUT (pp_fit_layout_get_type ())
G_DECLARE_FINAL_TYPE (PpFitLayout, pp_fit_layout, PP, FIT_LAYOUT, GtkLayoutManager)

G_END_DECLS
