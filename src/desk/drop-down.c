/* drop-down.c: what a list that drops down tells those who do not see it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/drop-down.h"

static void
chosen_cb (GtkDropDown *self,
           GParamSpec  *pspec,
           GtkWidget   *button)
{
  GtkStringObject *chosen = gtk_drop_down_get_selected_item (self);

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  chosen != NULL ? gtk_string_object_get_string (chosen) : "", -1);
}

void
pp_drop_down_tell (GtkDropDown *self,
                   GtkWidget   *title)
{
  GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (self));

  g_return_if_fail (GTK_IS_TOGGLE_BUTTON (button));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  title, NULL, -1);
  g_signal_connect (self, "notify::selected-item", G_CALLBACK (chosen_cb), button);
  chosen_cb (self, NULL, button);
}
