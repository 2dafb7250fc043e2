/* pointed.c: a press with the pointer after which the keys go on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/pointed.h"

#define SIGNAL "pointed"

void
pp_pointed_add_signal (GObjectClass *klass)
{
  g_signal_new (SIGNAL, G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 0);
}

static gboolean
tell (gpointer self)
{
  if (gtk_widget_get_mapped (self))
    g_signal_emit_by_name (self, SIGNAL);
  return G_SOURCE_REMOVE;
}

/* Before the widget itself has taken the press. */
static void
released_cb (GtkGestureClick *click,
             int              n_presses,
             double           x,
             double           y,
             GtkWidget       *self)
{
  GtkWidget *pressed = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (click));

  if (gtk_widget_contains (pressed, x, y))
    g_idle_add_full (G_PRIORITY_DEFAULT, tell, g_object_ref (self), g_object_unref);
}

void
pp_pointed_watch (GtkWidget *pressed,
                  GtkWidget *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  g_return_if_fail (GTK_IS_WIDGET (pressed) && GTK_IS_WIDGET (self));

  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (click), GTK_PHASE_CAPTURE);
  g_signal_connect (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (pressed, GTK_EVENT_CONTROLLER (click));
}
