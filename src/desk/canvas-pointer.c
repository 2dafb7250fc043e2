/* canvas-pointer.c: press, drag, scroll, pinch, drop.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The gestures only pass widget px on to canvas-drag.c and to the zoom.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/tray.h"
#include "panel/i18n.h"

#define WHEEL_FACTOR 1.15
#define WHEEL_NOTCH 0.9   /* of a notch: less is a stroke over a touchpad */
#define WHEEL_PAN 60.0 /* px a notch */

static void
drag_begin_cb (GtkGestureDrag *gesture,
               double          x,
               double          y,
               PpCanvas       *self)
{
  GdkModifierType state;
  gboolean is_middle;

  if (self->document == NULL)
    return;
  state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));
  is_middle = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture))
              == GDK_BUTTON_MIDDLE;
  if (!gtk_widget_has_focus (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
  pp_canvas_drag_begin (self, (PpPoint) { x, y },
                        (state & (GDK_SHIFT_MASK | GDK_CONTROL_MASK)) != 0, is_middle);
}

static PpPoint
get_point (GtkGestureDrag *gesture,
           double          dx,
           double          dy)
{
  double x = 0, y = 0;

  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  return (PpPoint) { x + dx, y + dy };
}

static void
drag_update_cb (GtkGestureDrag *gesture,
                double          dx,
                double          dy,
                PpCanvas       *self)
{
  GdkModifierType state
    = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));

  if (self->document != NULL)
    pp_canvas_drag_update (self, get_point (gesture, dx, dy), (state & GDK_SHIFT_MASK) != 0);
}

static void
drag_end_cb (GtkGestureDrag *gesture,
             double          dx,
             double          dy,
             PpCanvas       *self)
{
  if (self->document == NULL)
    return;
  drag_update_cb (gesture, dx, dy, self);
  pp_canvas_drag_end (self);
}

static void
cancel_cb (GtkGesture       *gesture,
           GdkEventSequence *sequence,
           PpCanvas         *self)
{
  if (self->document != NULL)
    pp_canvas_drag_cancel (self);
}

static gboolean
scroll_cb (GtkEventControllerScroll *scroll,
           double                    dx,
           double                    dy,
           PpCanvas                 *self)
{
  GdkModifierType state
    = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll));
  PpZoom zoom = self->zoom;

  if (self->document == NULL)
    return FALSE;
  if (fabs (dy) >= WHEEL_NOTCH && pp_canvas_drag_past (self, dy < 0))
    return TRUE;
  if ((state & GDK_CONTROL_MASK) != 0)
    {
      PpPoint at = pp_zoom_to_widget (&zoom, pp_canvas_get_pointer (self));

      pp_canvas_set_zoom (self, pp_zoom_around (&zoom, at, pow (WHEEL_FACTOR, -dy)), FALSE);
      return TRUE;
    }
  if ((state & GDK_SHIFT_MASK) != 0 && dx == 0)
    {
      dx = dy;
      dy = 0;
    }
  zoom.x -= dx * WHEEL_PAN;
  zoom.y -= dy * WHEEL_PAN;
  pp_canvas_set_zoom (self, zoom, FALSE);
  return TRUE;
}

static void
pinch_begin_cb (GtkGesture       *pinch,
                GdkEventSequence *sequence,
                PpCanvas         *self)
{
  self->drag.zoom = self->zoom;
}

static void
pinch_cb (GtkGestureZoom *pinch,
          double          scale,
          PpCanvas       *self)
{
  double x, y;

  if (self->document != NULL
      && gtk_gesture_get_bounding_box_center (GTK_GESTURE (pinch), &x, &y))
    pp_canvas_set_zoom (self, pp_zoom_around (&self->drag.zoom, (PpPoint) { x, y }, scale), FALSE);
}

static void
motion_cb (GtkEventControllerMotion *motion,
           double                    x,
           double                    y,
           PpCanvas                 *self)
{
  if (self->document == NULL)
    return;
  self->pointer = pp_zoom_to_panel (&self->zoom, (PpPoint) { x, y });
  self->has_pointer = TRUE;
  if (self->drag.kind == PP_DRAG_NONE)
    gtk_widget_set_cursor_from_name (GTK_WIDGET (self),
                                     pp_canvas_get_cursor (self, (PpPoint) { x, y }));
}

static void
leave_cb (GtkEventControllerMotion *motion,
          PpCanvas                 *self)
{
  self->has_pointer = FALSE;
}

static GdkDragAction
drop_motion_cb (GtkDropTarget *drop,
                double         x,
                double         y,
                PpCanvas      *self)
{
  return self->document != NULL ? GDK_ACTION_COPY : 0;
}

/* Why the piece cannot be laid here, or NULL. An id says little in another window's panel. */
static const char *
get_refusal (PpCanvas      *self,
             const PpPiece *piece)
{
  const PpPanel *panel = pp_document_get_panel (self->document);

  if (pp_canvas_is_aslant (self))
    return _("Look at the panel straight from the front to lay a piece on it.");
  if (pp_panel_find_piece (panel, piece->id, NULL) != piece)
    return _("That piece is not in this panel’s tray. Copy it on the glass there and paste it "
             "here.");
  return NULL;
}

static gboolean
drop_cb (GtkDropTarget *drop,
         const GValue  *value,
         double         x,
         double         y,
         PpCanvas      *self)
{
  const PpPieceDrag *drag = g_value_get_boxed (value);
  PpPoint mm = pp_zoom_to_panel (&self->zoom, (PpPoint) { x, y });
  const char *refusal;

  if (self->document == NULL || drag == NULL)
    return FALSE;
  refusal = get_refusal (self, drag->piece);
  if (refusal != NULL)
    {
      pp_document_refuse (self->document, refusal);
      return FALSE;
    }
  pp_canvas_put (self, drag->piece->id, (PpPoint) { mm.x - drag->grip.x, mm.y - drag->grip.y });
  return TRUE;
}

static void
menu_cb (GtkGestureClick *gesture,
         int              n_press,
         double           x,
         double           y,
         PpCanvas        *self)
{
  PpPoint px = { x, y };

  if (self->document == NULL || self->drag.panel != NULL)
    return;
  if (!gtk_widget_has_focus (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
  pp_canvas_press_for_menu (self, px);
  pp_canvas_open_menu (self, px);
}

static void
add_menu (PpCanvas *self)
{
  GtkGesture *press = gtk_gesture_click_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (press), GDK_BUTTON_SECONDARY);
  g_signal_connect (press, "pressed", G_CALLBACK (menu_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (press));
}

static void
add_drag (PpCanvas *self,
          guint     button)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), button);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (cancel_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

static void
add_scroll (PpCanvas *self)
{
  GtkEventController *scroll
    = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkGesture *pinch = gtk_gesture_zoom_new ();

  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (pinch));
}

void
pp_canvas_add_pointer (PpCanvas *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkDropTarget *drop = gtk_drop_target_new (PP_TYPE_PIECE_DRAG, GDK_ACTION_COPY);

  add_drag (self, GDK_BUTTON_PRIMARY);
  add_drag (self, GDK_BUTTON_MIDDLE);
  add_menu (self);
  add_scroll (self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect (drop, "motion", G_CALLBACK (drop_motion_cb), self);
  g_signal_connect (drop, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drop));
}
