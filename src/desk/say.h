/* say.h: the text of a label, set where it is another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Setting a text that stands there already would lay it out again.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

static inline void
pp_say (GtkLabel   *label,
        const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text) != 0)
    gtk_label_set_text (label, text);
}

/* NULL or "" hides the label. */
static inline void
pp_say_or_hide (GtkLabel   *label,
                const char *text)
{
  gboolean has_text = text != NULL && *text != '\0';

  if (has_text)
    pp_say (label, text);
  if (gtk_widget_get_visible (GTK_WIDGET (label)) != has_text)
    gtk_widget_set_visible (GTK_WIDGET (label), has_text);
}

G_END_DECLS
