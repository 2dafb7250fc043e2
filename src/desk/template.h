/* template.h: the end of a widget that was made from a template.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* For dispose. `type` is the widget's own. GTK 4.8 lets go only of children that a field is bound
 * to, and looks for the template in the class of the object, which may be a subclass without one;
 * the rest goes here. For children of GtkWidget itself: others let go of their own children. */
static inline void
pp_template_dispose (GtkWidget *widget,
                     GType      type)
{
  GtkWidget *child;

  if (G_OBJECT_TYPE (widget) == type)
    gtk_widget_dispose_template (widget, type);
  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

G_END_DECLS
