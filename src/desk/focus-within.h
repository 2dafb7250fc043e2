/* focus-within.h: the way of the Tab key through a widget with a grab_focus() of its own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* GtkWidgetClass.focus of a widget that takes no focus itself and has all that does in its first
 * child. GTK's own ends the way back out in grab_focus(), which comes in again: nobody would get
 * past such a widget with Shift+Tab. */
static inline gboolean
pp_focus_within (GtkWidget        *widget,
                 GtkDirectionType  direction)
{
  return gtk_widget_child_focus (gtk_widget_get_first_child (widget), direction);
}

G_END_DECLS
