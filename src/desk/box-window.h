/* box-window.h: the maker's box, opened: found, counted, taken to the tray, put into a file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_BOX_WINDOW (pp_box_window_get_type ())
G_DECLARE_FINAL_TYPE (PpBoxWindow, pp_box_window, PP, BOX_WINDOW, GtkWindow)

/* (transfer none) */
PpBoxWindow *pp_box_window_new (GtkWindow  *parent,
                                PpDocument *document);

G_END_DECLS
