/* picking-view-input.c: pointer and keys on the picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/picking-view-private.h"

#include "desk/nudge.h"

#define GRIP 28.0      /* px from a mark at which it is taken */
#define CLICK 6.0      /* px: a shorter drag is a press */
#define STEP_MM 1.0    /* of the cross */
#define STEP_INCH (PP_MM_PER_INCH / 16)
#define FAR_STEPS 10
#define STEP_PIXELS 1.0 /* of a mark */
#define FAR_PIXELS 20.0

/* What a press at a place would do, shown before it is done. */
static void
propose (PpPickingView *self,
         PpPoint        at)
{
  self->has_stroke = FALSE;
  if (self->found == NULL || pp_picking_view_is_photo (self))
    return;
  if (self->tool == PP_TOOL_PART)
    self->has_stroke = pp_stroke_part (self->found, at, &self->stroke);
  else if (self->tool == PP_TOOL_JOIN)
    self->has_stroke = pp_stroke_join (self->found, at, &self->stroke);
}

static void
do_stroke (PpPickingView *self)
{
  PpStroke stroke = self->stroke;

  if (!self->has_stroke)
    return;
  self->has_stroke = FALSE;
  pp_picking_view_redraw (self);
  g_signal_emit (self, pp_picking_view_signals[PP_PICKING_STROKE], 0, &stroke);
}

static void
choose (PpPickingView *self,
        guint          piece)
{
  if (piece != self->chosen)
    g_signal_emit (self, pp_picking_view_signals[PP_PICKING_CHOSEN], 0, piece);
}

static void
move_mark (PpPickingView *self,
           PpPoint        to)
{
  PpBox box = { 0, 0, pp_photo_get_width (self->photo), pp_photo_get_height (self->photo) };

  self->marks[self->mark] = pp_box_clamp (box, to);
  pp_picking_view_redraw (self);
}

static void
hover_cb (GtkEventControllerMotion *motion,
          double                    x,
          double                    y,
          PpPickingView            *self)
{
  self->pointer = (PpPoint) { x, y };
  if (self->is_dragging || self->tool == PP_TOOL_CHOOSE || pp_picking_view_is_photo (self))
    return;
  self->has_cross = FALSE;
  propose (self, pp_zoom_to_panel (&self->zoom, (PpPoint) { x, y }));
  pp_picking_view_redraw (self);
}

static void
leave_cb (GtkEventControllerMotion *motion,
          PpPickingView            *self)
{
  if (self->is_dragging || self->has_cross)
    return;
  self->has_stroke = FALSE;
  pp_picking_view_redraw (self);
}

/* Takes the nearest mark, if one is near. */
static gboolean
grasp (PpPickingView *self,
       PpPoint        px)
{
  double nearest = GRIP;
  gboolean is_near = FALSE;

  for (guint i = 0; i < self->n_marks; i++)
    {
      PpPoint mark = pp_zoom_to_widget (&self->zoom, self->marks[i]);
      double away = pp_point_distance (mark, px);

      if (away > nearest)
        continue;
      nearest = away;
      is_near = TRUE;
      self->mark = i;
      self->grip = (PpPoint) { px.x - mark.x, px.y - mark.y };
    }
  return is_near;
}

static void
drag_begin_cb (GtkGestureDrag *drag,
               double          x,
               double          y,
               PpPickingView  *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->area));
  self->held = self->zoom;
  self->is_panning = FALSE;
  if (self->photo == NULL)
    return;
  if (pp_picking_view_is_photo (self))
    self->is_dragging = grasp (self, (PpPoint) { x, y });
  pp_picking_view_redraw (self);
}

static void
drag_update_cb (GtkGestureDrag *drag,
                double          across,
                double          down,
                PpPickingView  *self)
{
  PpPoint px;

  gtk_gesture_drag_get_start_point (drag, &px.x, &px.y);
  if (self->photo == NULL)
    return;
  if (pp_picking_view_is_photo (self) && self->is_dragging)
    {
      move_mark (self, pp_zoom_to_panel (&self->zoom, (PpPoint) { px.x + across - self->grip.x,
                                                                  px.y + down - self->grip.y }));
      return;
    }
  if (hypot (across, down) < CLICK && !self->is_panning)
    return;
  if (pp_picking_view_is_photo (self) || self->tool == PP_TOOL_CHOOSE)
    {
      self->is_panning = TRUE;
      pp_picking_view_pan (self, &self->held, across, down);
      return;
    }
  self->is_dragging = TRUE;
  self->has_stroke = TRUE;
  self->stroke = (PpStroke) {
    pp_zoom_to_panel (&self->zoom, px),
    pp_zoom_to_panel (&self->zoom, (PpPoint) { px.x + across, px.y + down }),
    self->tool == PP_TOOL_JOIN,
  };
  pp_picking_view_redraw (self);
}

static void
drag_end_cb (GtkGestureDrag *drag,
             double          across,
             double          down,
             PpPickingView  *self)
{
  gboolean was_dragging = self->is_dragging;
  PpPoint px, at;
  guint piece;

  self->is_dragging = FALSE;
  if (self->photo == NULL || self->is_panning)
    return;
  gtk_gesture_drag_get_start_point (drag, &px.x, &px.y);
  at = pp_zoom_to_panel (&self->zoom, px);
  if (pp_picking_view_is_photo (self))
    {
      if (was_dragging && hypot (across, down) > 0)
        g_signal_emit (self, pp_picking_view_signals[PP_PICKING_MARKED], 0, FALSE);
    }
  else if (self->tool == PP_TOOL_CHOOSE)
    {
      if (self->found != NULL && pp_found_at (self->found, at, &piece))
        {
          choose (self, piece);
          g_signal_emit (self, pp_picking_view_signals[PP_PICKING_PRESSED], 0);
        }
    }
  else
    {
      if (!was_dragging)
        propose (self, at);
      do_stroke (self);
    }
  pp_picking_view_redraw (self);
}

static gboolean
key_to_mark (PpPickingView *self,
             guint          key,
             gboolean       is_far)
{
  double step = is_far ? FAR_PIXELS : STEP_PIXELS;
  PpPoint way;

  if (self->n_marks == 0)
    return FALSE;
  if (pp_nudge_find_way (key, &way))
    {
      move_mark (self, (PpPoint) { self->marks[self->mark].x + way.x * step,
                                   self->marks[self->mark].y + way.y * step });
      pp_picking_view_bring_in (self, self->marks[self->mark]);
      g_signal_emit (self, pp_picking_view_signals[PP_PICKING_MARKED], 0, TRUE);
      return TRUE;
    }
  if (key == GDK_KEY_Page_Down || key == GDK_KEY_space)
    self->mark = (self->mark + 1) % self->n_marks;
  else if (key == GDK_KEY_Page_Up)
    self->mark = (self->mark + self->n_marks - 1) % self->n_marks;
  else
    return FALSE;
  pp_picking_view_redraw (self);
  pp_picking_view_bring_in (self, self->marks[self->mark]);
  return TRUE;
}

static gboolean
key_to_choose (PpPickingView *self,
               guint          key)
{
  guint n = self->found != NULL ? self->found->n_pieces : 0;
  PpPoint way;

  if (n == 0)
    return FALSE;
  if (pp_nudge_find_way (key, &way))
    {
      choose (self, way.x + way.y > 0 ? (self->chosen + 1) % n : (self->chosen + n - 1) % n);
      pp_picking_view_bring_in (self, self->places[self->chosen]);
    }
  else if (key == GDK_KEY_Delete)
    g_signal_emit (self, pp_picking_view_signals[PP_PICKING_LEFT_OUT], 0, self->chosen);
  else
    return FALSE;
  return TRUE;
}

static gboolean
key_to_stroke (PpPickingView *self,
               guint          key,
               gboolean       is_far)
{
  double step = (self->units == PP_UNITS_INCH ? STEP_INCH : STEP_MM) * (is_far ? FAR_STEPS : 1);
  PpPoint way;

  if (pp_nudge_find_way (key, &way))
    {
      if (!self->has_cross)
        self->cross = self->found != NULL && self->chosen < self->found->n_pieces
                        ? self->places[self->chosen] : pp_box_middle (self->squared->box);
      else
        self->cross = pp_box_clamp (self->squared->box,
                                    (PpPoint) { self->cross.x + way.x * step,
                                                self->cross.y + way.y * step });
      self->has_cross = TRUE;
      propose (self, self->cross);
      pp_picking_view_bring_in (self, self->cross);
      pp_picking_view_redraw (self);
      return TRUE;
    }
  if (key != GDK_KEY_Return && key != GDK_KEY_KP_Enter && key != GDK_KEY_space)
    return FALSE;
  do_stroke (self);
  return TRUE;
}

static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state,
        PpPickingView      *self)
{
  gboolean is_far = (state & GDK_SHIFT_MASK) != 0;

  if (self->photo != NULL && (state & GDK_ALT_MASK) == 0
      && pp_picking_view_key_to_zoom (self, key))
    return GDK_EVENT_STOP;
  if (self->photo == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  if (self->tool != PP_TOOL_CHOOSE && key == GDK_KEY_Escape)
    {
      pp_picking_view_set_tool (self, PP_TOOL_CHOOSE);
      g_signal_emit (self, pp_picking_view_signals[PP_PICKING_TOOL], 0);
      return GDK_EVENT_STOP;
    }
  if (pp_picking_view_is_photo (self))
    return key_to_mark (self, key, is_far);
  return self->tool == PP_TOOL_CHOOSE ? key_to_choose (self, key)
                                      : key_to_stroke (self, key, is_far);
}

void
pp_picking_view_add_input (PpPickingView *self)
{
  GtkWidget *area = GTK_WIDGET (self->area);
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (hover_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (area, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (area, motion);
  gtk_widget_add_controller (area, keys);
}
