/* picking-view-zoom.c: the picture larger, and another part of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks, strokes and pieces are kept in the picture's own frame, so they go with it. It is never
 * smaller than whole, and never away from the view.
 */
#include "config.h"

#include "desk/picking-view-private.h"

#include "desk/em.h"

#define MARGIN 12.0     /* px about a picture that is whole */
#define MOST_LARGER 32.0 /* times as large as whole */
#define WHEEL_FACTOR 1.15
#define WHEEL_PAN 60.0  /* px a notch */
#define KEY_FACTOR 1.4
#define IN_VIEW_EM 3.0  /* from the side of the view, at least, where the keys are at work */

static PpBox
get_box (PpPickingView *self)
{
  if (!pp_picking_view_is_photo (self))
    return self->squared->box;
  return (PpBox) { 0, 0, pp_photo_get_width (self->photo), pp_photo_get_height (self->photo) };
}

static PpZoom
get_whole (PpPickingView *self)
{
  return pp_zoom_fit (get_box (self), gtk_widget_get_width (GTK_WIDGET (self->area)),
                      gtk_widget_get_height (GTK_WIDGET (self->area)), MARGIN, FALSE);
}

/* Along one way: a picture from `at` on, so long, in a view of `size`, stays in it. */
static double
keep_in (double at,
         double length,
         double size)
{
  if (length + 2 * MARGIN <= size)
    return (size - length) / 2;
  return CLAMP (at, size - MARGIN - length, MARGIN);
}

static void
set_zoom (PpPickingView *self,
          PpZoom         zoom)
{
  PpZoom whole = get_whole (self);
  PpBox box = get_box (self);
  double width = gtk_widget_get_width (GTK_WIDGET (self->area));
  double height = gtk_widget_get_height (GTK_WIDGET (self->area));

  self->is_whole = zoom.scale <= whole.scale;
  if (self->is_whole)
    self->zoom = whole;
  else
    {
      zoom.x = keep_in (zoom.x + box.x0 * zoom.scale, pp_box_width (box) * zoom.scale, width)
               - box.x0 * zoom.scale;
      zoom.y = keep_in (zoom.y + box.y0 * zoom.scale, pp_box_height (box) * zoom.scale, height)
               - box.y0 * zoom.scale;
      self->zoom = zoom;
    }
}

/* After another size of the view, or another picture in it. */
void
pp_picking_view_place (PpPickingView *self)
{
  gboolean is_photo = pp_picking_view_is_photo (self);

  if (is_photo != self->was_photo)
    self->is_whole = TRUE;
  self->was_photo = is_photo;
  set_zoom (self, self->is_whole ? get_whole (self) : self->zoom);
}

static void
zoom_around (PpPickingView *self,
             const PpZoom  *from,
             PpPoint        px,
             double         factor)
{
  double most;

  if (self->photo == NULL)
    return;
  most = MOST_LARGER * get_whole (self).scale;
  set_zoom (self, pp_zoom_around (from, px, fmin (factor, most / from->scale)));
  pp_picking_view_redraw (self);
}

void
pp_picking_view_zoom_by (PpPickingView *self,
                         double         factor)
{
  PpPoint middle = { gtk_widget_get_width (GTK_WIDGET (self->area)) / 2.0,
                     gtk_widget_get_height (GTK_WIDGET (self->area)) / 2.0 };

  g_return_if_fail (PP_IS_PICKING_VIEW (self));
  zoom_around (self, &self->zoom, middle, factor);
}

void
pp_picking_view_zoom_fit (PpPickingView *self)
{
  g_return_if_fail (PP_IS_PICKING_VIEW (self));
  self->is_whole = TRUE;
  pp_picking_view_redraw (self);
}

void
pp_picking_view_pan (PpPickingView *self,
                     const PpZoom  *from,
                     double         dx,
                     double         dy)
{
  PpZoom zoom = *from;

  zoom.x += dx;
  zoom.y += dy;
  set_zoom (self, zoom);
  pp_picking_view_redraw (self);
}

void
pp_picking_view_bring_in (PpPickingView *self,
                          PpPoint        at)
{
  double width = gtk_widget_get_width (GTK_WIDGET (self->area));
  double height = gtk_widget_get_height (GTK_WIDGET (self->area));
  double room = fmin (IN_VIEW_EM * pp_em_of (GTK_WIDGET (self)), fmin (width, height) / 4);
  PpPoint px = pp_zoom_to_widget (&self->zoom, at);

  if (self->is_whole || (px.x > room && px.y > room && px.x < width - room && px.y < height - room))
    return;
  pp_picking_view_pan (self, &self->zoom, width / 2 - px.x, height / 2 - px.y);
}

gboolean
pp_picking_view_key_to_zoom (PpPickingView *self,
                             guint          key)
{
  switch (key)
    {
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      pp_picking_view_zoom_by (self, KEY_FACTOR);
      return TRUE;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      pp_picking_view_zoom_by (self, 1 / KEY_FACTOR);
      return TRUE;
    case GDK_KEY_0:
    case GDK_KEY_KP_0:
      pp_picking_view_zoom_fit (self);
      return TRUE;
    default:
      return FALSE;
    }
}

/* As on the glass: with Ctrl larger, else another part of it; Shift turns down into across. */
static gboolean
scroll_cb (GtkEventControllerScroll *scroll,
           double                    dx,
           double                    dy,
           PpPickingView            *self)
{
  GdkModifierType state
    = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll));

  if (self->photo == NULL || self->is_dragging)
    return FALSE;
  if ((state & GDK_CONTROL_MASK) != 0)
    zoom_around (self, &self->zoom, self->pointer, pow (WHEEL_FACTOR, -dy));
  else if ((state & GDK_SHIFT_MASK) != 0 && dx == 0)
    pp_picking_view_pan (self, &self->zoom, -dy * WHEEL_PAN, 0);
  else
    pp_picking_view_pan (self, &self->zoom, -dx * WHEEL_PAN, -dy * WHEEL_PAN);
  return TRUE;
}

static void
pinch_begin_cb (GtkGesture       *pinch,
                GdkEventSequence *sequence,
                PpPickingView    *self)
{
  self->held = self->zoom;
}

static void
pinch_cb (GtkGestureZoom *pinch,
          double          scale,
          PpPickingView  *self)
{
  PpPoint px;

  if (gtk_gesture_get_bounding_box_center (GTK_GESTURE (pinch), &px.x, &px.y))
    zoom_around (self, &self->held, px, scale);
}

void
pp_picking_view_add_zoom (PpPickingView *self)
{
  GtkEventController *scroll
    = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkGesture *pinch = gtk_gesture_zoom_new ();

  self->is_whole = TRUE;
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->area), scroll);
  gtk_widget_add_controller (GTK_WIDGET (self->area), GTK_EVENT_CONTROLLER (pinch));
}
