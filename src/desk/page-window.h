/* page-window.h: a window to read in: one page that scrolls.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Its child is the scrolled window, which has the focus and the name `title`. Escape closes it;
 * arrows and Space read on. `width` and `height`: px, until the maker makes it another. */
GtkWidget *pp_page_window_new (GtkWindow  *parent,
                               const char *title,
                               GtkWidget  *page,
                               int         width,
                               int         height);

G_END_DECLS
