/* keys-window.h: all the keys of the program, in groups.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK's own window for this neither scrolls nor fits a large text on a small screen.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The keys of actions are those the application has now. */
GtkWidget *pp_keys_window_new (GtkWindow *parent);

G_END_DECLS
