/* css-class.h: a style class that goes by what is so now.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

static inline void
pp_css_class_set (GtkWidget  *widget,
                  const char *css_class,
                  gboolean    is_on)
{
  if (is_on)
    gtk_widget_add_css_class (widget, css_class);
  else
    gtk_widget_remove_css_class (widget, css_class);
}

G_END_DECLS
