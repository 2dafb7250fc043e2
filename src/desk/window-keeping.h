/* window-keeping.h: a window is as large as the last one was.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Gives the window the size kept, if there is one. */
void pp_window_keeping_restore (GtkWindow *window);
/* Keeps its size. For a window that is still shown and is about to go. */
void pp_window_keeping_keep    (GtkWindow *window);

G_END_DECLS
