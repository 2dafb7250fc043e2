/* tray-row-pointer.c: what the pointer does to the tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Gestures belong to the row and ask which compartment is meant, so that thousands of
 * compartments stay cheap.
 */
#include "config.h"

#include "desk/tray-row-private.h"

#include "desk/tray-drag.h"
#include "desk/tray-words.h"

static PpTrayCompartment *
pick (PpTrayRow *self,
      double     x,
      double     y)
{
  GtkWidget *picked = gtk_widget_pick (GTK_WIDGET (self), x, y, GTK_PICK_DEFAULT);

  return PP_IS_TRAY_COMPARTMENT (picked) ? PP_TRAY_COMPARTMENT (picked) : NULL;
}

gboolean
pp_tray_row_query_tooltip (GtkWidget  *widget,
                           int         x,
                           int         y,
                           gboolean    by_keyboard,
                           GtkTooltip *tooltip)
{
  PpTrayRow *self = PP_TRAY_ROW (widget);
  PpTrayCompartment *compartment = pick (self, x, y);
  GdkRectangle area;
  g_autofree char *text = NULL;

  if (by_keyboard)
    compartment = (PpTrayCompartment *) gtk_widget_get_focus_child (widget);
  if (compartment == NULL)
    return FALSE;
  gtk_widget_get_allocation (GTK_WIDGET (compartment), &area);
  text = pp_tray_words_tooltip (pp_tray_compartment_get_piece (compartment), self->panel->units);
  gtk_tooltip_set_text (tooltip, text);
  gtk_tooltip_set_tip_area (tooltip, &area);
  return TRUE;
}

static void
pressed_cb (GtkGestureClick *click,
            int              n_press,
            double           x,
            double           y,
            PpTrayRow       *self)
{
  PpTrayCompartment *compartment = pick (self, x, y);

  if (compartment == NULL)
    return;
  if (n_press == 1)
    gtk_widget_grab_focus (GTK_WIDGET (compartment));
  else if (n_press == 2)
    gtk_widget_activate_action (GTK_WIDGET (compartment), "compartment.place", NULL);
}

static void
menu_cb (GtkGestureClick *click,
         int              n_press,
         double           x,
         double           y,
         PpTrayRow       *self)
{
  PpTrayCompartment *compartment = pick (self, x, y);

  if (compartment == NULL)
    return;
  gtk_widget_grab_focus (GTK_WIDGET (compartment));
  pp_tray_menu_open (compartment);
}

static GdkContentProvider *
prepare_cb (GtkDragSource *source,
            double         x,
            double         y,
            PpTrayRow     *self)
{
  PpTrayCompartment *compartment = pick (self, x, y);
  double own_x, own_y;

  if (compartment == NULL
      || !gtk_widget_translate_coordinates (GTK_WIDGET (self), GTK_WIDGET (compartment), x, y,
                                            &own_x, &own_y))
    return NULL;
  return pp_tray_drag_prepare (source, compartment, own_x, own_y, self->scale);
}

void
pp_tray_row_add_pointer (PpTrayRow *self)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkGesture *menu = gtk_gesture_click_new ();
  GtkDragSource *drag = gtk_drag_source_new ();

  gtk_drag_source_set_actions (drag, GDK_ACTION_COPY);
  g_signal_connect (drag, "prepare", G_CALLBACK (prepare_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu), GDK_BUTTON_SECONDARY);
  g_signal_connect (menu, "pressed", G_CALLBACK (menu_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (menu));
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}
