/* colour-button.c: what a button that asks for a colour tells those who do not see it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/colour-button.h"

void
pp_colour_button_tell (GtkColorButton *self,
                       GtkWidget      *title)
{
  GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (self));
  GtkWidget *told[] = { GTK_WIDGET (self), button, NULL };

  g_return_if_fail (GTK_IS_BUTTON (button));
  told[2] = gtk_button_get_child (GTK_BUTTON (button));
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    gtk_accessible_update_relation (GTK_ACCESSIBLE (told[i]), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                    title, NULL, -1);
}
