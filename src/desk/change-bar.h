/* change-bar.h: the bar that says that another program changed the file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals, without arguments: keep-mine, show-theirs.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_CHANGE_BAR (pp_change_bar_get_type ())
G_DECLARE_FINAL_TYPE (PpChangeBar, pp_change_bar, PP, CHANGE_BAR, GtkWidget)

GtkWidget *pp_change_bar_new  (void);
/* Shows the sentence; NULL hides the bar. */
void       pp_change_bar_show (PpChangeBar *self,
                               const char  *sentence);

G_END_DECLS
