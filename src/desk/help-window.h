/* help-window.h: how the work goes, on one calm page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkWidget *pp_help_window_new (GtkWindow *parent);

G_END_DECLS
