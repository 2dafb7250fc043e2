/* tray-menu.c: what can be done with a piece of the tray, beside its compartment.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One menu at a time, for the compartment asked about; it goes when it is closed.
 */
#include "config.h"

#include "desk/tray-row-private.h"

#include "panel/i18n.h"

typedef struct
{
  const char *label;
  const char *action; /* of the window; told the piece's id */
} Row;

static const Row rows[] = {
  { N_("Change it…"), "win.change-piece" },
  { N_("Put it in the box"), "win.put-in-box" },
  { N_("Take it off the tray"), "win.take-off-tray" },
};

static gboolean
drop_cb (gpointer menu)
{
  gtk_widget_unparent (menu);
  g_object_unref (menu);
  return G_SOURCE_REMOVE;
}

/* The action that was chosen is done after this signal, and needs the menu's place in the tree. */
static void
closed_cb (GtkPopover *menu,
           gpointer    data)
{
  g_idle_add (drop_cb, g_object_ref (menu));
}

void
pp_tray_menu_open (PpTrayCompartment *compartment)
{
  const char *id = pp_tray_compartment_get_piece (compartment)->id;
  g_autoptr (GMenu) menu = g_menu_new ();
  GtkAllocation place;
  GtkWidget *popover;

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (_(rows[i].label), NULL);

      g_menu_item_set_action_and_target (item, rows[i].action, "s", id);
      g_menu_append_item (menu, item);
    }
  popover = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_widget_set_parent (popover, gtk_widget_get_parent (GTK_WIDGET (compartment)));
  gtk_popover_set_position (GTK_POPOVER (popover), GTK_POS_TOP);
  gtk_widget_get_allocation (GTK_WIDGET (compartment), &place);
  gtk_popover_set_pointing_to (GTK_POPOVER (popover), &place);
  g_signal_connect (popover, "closed", G_CALLBACK (closed_cb), NULL);
  gtk_popover_popup (GTK_POPOVER (popover));
}
