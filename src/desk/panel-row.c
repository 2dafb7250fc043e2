/* panel-row.c: a panel on the shelf, and what can be done with it besides opening it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/panel-row.h"

#include "panel/i18n.h"

static GMenuModel *
make_menu (GFile          *file,
           const PpRowAct *acts)
{
  g_autofree char *uri = g_file_get_uri (file);
  GMenu *menu = g_menu_new ();

  for (; acts->words != NULL; acts++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (acts->words, NULL);

      g_menu_item_set_action_and_target (item, acts->action, "s", uri);
      g_menu_append_item (menu, item);
    }
  return G_MENU_MODEL (menu);
}

static void
secondary_cb (GtkGestureClick *gesture,
              int              n,
              double           x,
              double           y,
              GtkMenuButton   *more)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_menu_button_popup (more);
}

static gboolean
menu_key_cb (GtkWidget *row,
             GVariant  *arguments,
             gpointer   more)
{
  gtk_menu_button_popup (more);
  return TRUE;
}

static void
add_ways (GtkWidget *row,
          GtkWidget *more)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkEventController *keys = gtk_shortcut_controller_new ();
  GtkShortcutTrigger *trigger = gtk_shortcut_trigger_parse_string ("Menu|<Shift>F10");
  GtkShortcutAction *action = gtk_callback_action_new (menu_key_cb, more, NULL);

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect (click, "pressed", G_CALLBACK (secondary_cb), more);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (click));
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (trigger, action));
  gtk_widget_add_controller (row, keys);
}

static GtkWidget *
make_more (GFile          *file,
           const PpRowAct *acts)
{
  GtkWidget *more = gtk_menu_button_new ();
  g_autoptr (GMenuModel) menu = make_menu (file, acts);

  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (more), "pp-menu-symbolic");
  gtk_menu_button_set_has_frame (GTK_MENU_BUTTON (more), FALSE);
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (more), menu);
  gtk_widget_set_valign (more, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (more, _("What else can be done with it"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (more), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("What else can be done with it"), -1);
  return more;
}

GtkWidget *
pp_panel_row_new (GFile          *file,
                  gboolean        is_sample,
                  const PpRowAct *acts)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *tile = pp_panel_tile_new (file, is_sample);

  gtk_widget_set_hexpand (tile, TRUE);
  gtk_box_append (GTK_BOX (row), tile);
  g_object_bind_property (tile, "visible", row, "visible", 0); /* a file that is gone */
  if (acts != NULL)
    {
      GtkWidget *more = make_more (file, acts);

      gtk_box_append (GTK_BOX (row), more);
      add_ways (row, more);
    }
  return row;
}

PpPanelTile *
pp_panel_row_get_tile (GtkWidget *row)
{
  return PP_PANEL_TILE (gtk_widget_get_first_child (row));
}
