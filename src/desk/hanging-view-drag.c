/* hanging-view-drag.c: hook and holes moved by pointer and keys.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drag edits the panel as it was when the drag began, so that no rounding adds up, and all its
 * edits are one step of undo.
 */
#include "config.h"

#include "desk/hanging-view-private.h"

#include "desk/canvas-piece.h"
#include "desk/nudge.h"
#include "panel/edit.h"
#include "panel/i18n.h"

#include <math.h>

#define REACH 14.0 /* px */

/* `thing`: the id of what is moved, by which moves of it in a row are one step. */
static void
take (PpHangingView *self,
      PpPanel       *next,
      GError        *error,
      const char    *label,
      const char    *thing)
{
  gboolean is_other = next != NULL && next != pp_document_get_panel (self->document);
  g_autofree char *key = g_strconcat ("hang ", thing, NULL);

  self->drag.is_editing = TRUE;
  if (pp_document_take (self->document, next, error, label, key) && is_other)
    self->drag.has_edit = self->drag.is_on;
  self->drag.is_editing = FALSE;
}

static void
set_length (PpHangingView *self,
            const PpPanel *panel,
            double         length)
{
  PpWire draft = *panel->wire;
  GError *error = NULL;
  g_autoptr (PpWire) wire = NULL;

  draft.length = length;
  wire = pp_wire_new (&draft, &error);
  take (self, wire != NULL ? pp_edit_set_wire (panel, wire, &error) : NULL, error,
        _("Length of the wire"), "wire");
}

static void
move_hole (PpHangingView *self,
           const PpPanel *panel,
           const char    *id,
           PpPoint        to)
{
  PpBox glass = pp_background_get_box (panel->background);
  PpHole draft = *pp_panel_find_hole (panel, id, NULL);
  GError *error = NULL;
  g_autoptr (PpHole) hole = NULL;

  draft.x = CLAMP (to.x, glass.x0, glass.x1);
  draft.y = CLAMP (to.y, glass.y0, glass.y1);
  hole = pp_hole_new (&draft, &error);
  take (self, hole != NULL ? pp_edit_move_hole (panel, hole, &error) : NULL, error,
        _("Move the hole"), id);
}

/* Why it cannot be moved, or NULL. */
static const char *
get_hold (const PpPanel *panel,
          const char    *hole)
{
  if (panel->wire != NULL && panel->wire->knotted_at != NULL
      && (hole == NULL || g_str_equal (panel->wire->from, hole)
          || g_str_equal (panel->wire->to, hole)))
    return _("The wire is knotted already: its holes and its length stay.");
  if (hole != NULL && pp_panel_find_hole (panel, hole, NULL)->drilled)
    return _("That hole is drilled already: it stays where it is.");
  return NULL;
}

/* The way a hook can go: straight up where the panel hangs level, else up from its holes. */
static PpPoint
pull_hook (PpHangingView *self,
           PpScene       *scene,
           PpPoint        from,
           PpPoint        by)
{
  PpPoint middle, up = pp_hung_find_up (scene, &self->mass, &middle);
  double far;

  if (self->is_hung && self->hung.tilt == 0)
    up = (PpPoint) { 0, -1 };
  far = by.x * up.x + by.y * up.y;
  return (PpPoint) { from.x + far * up.x, from.y + far * up.y };
}

static int
find_hole (PpHangingView *self,
           PpPoint        px)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  double nearest = INFINITY;
  int found = -1;

  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, i);
      PpPoint at = pp_hanging_map_to_px (&self->map, (PpPoint) { hole->x, hole->y });
      double far = pp_point_distance (at, px);

      if (far <= MAX (REACH, pp_hanging_view_get_hole_px (self, hole)) && far < nearest)
        {
          nearest = far;
          found = (int) i;
        }
    }
  return found;
}

static gboolean
is_on_hook (PpHangingView *self,
            PpPoint        px)
{
  PpPoint hook;

  return pp_hanging_view_get_hook (self, &hook)
         && pp_point_distance (pp_hanging_map_to_px (&self->map, hook), px) <= REACH;
}

void
pp_hanging_view_forget_drag (PpHangingView *self)
{
  g_free (self->drag.hole);
  g_clear_pointer (&self->drag.panel, pp_panel_unref);
  g_clear_pointer (&self->drag.scene, pp_scene_unref);
  self->drag = (PpHangingDrag) { 0 };
}

static void
begin (PpHangingView *self,
       PpPoint        start)
{
  pp_document_seal (self->document);
  self->drag.is_on = TRUE;
  self->drag.start = start;
  self->drag.panel = pp_panel_ref (pp_document_get_panel (self->document));
  self->drag.scene = pp_scene_ref (pp_document_get_scene (self->document));
}

static void
begin_cb (GtkGestureDrag *gesture,
          double          x,
          double          y,
          PpHangingView  *self)
{
  PpPoint px = { x, y }, hook;
  int index;

  pp_hanging_view_forget_drag (self);
  if (self->document == NULL)
    return;
  index = find_hole (self, px);
  if (index >= 0)
    {
      const PpHole *hole = pp_panel_hole (pp_document_get_panel (self->document), (guint) index);

      begin (self, (PpPoint) { hole->x, hole->y });
      self->drag.hole = g_strdup (hole->id);
      gtk_widget_grab_focus (pp_hanging_view_find_child (self, hole->id, NULL));
    }
  else if (is_on_hook (self, px) && pp_hanging_view_get_hook (self, &hook))
    {
      begin (self, hook);
      self->drag.is_hook = TRUE;
      gtk_widget_grab_focus (self->hook);
    }
}

static void
update_cb (GtkGestureDrag *gesture,
           double          dx,
           double          dy,
           PpHangingView  *self)
{
  PpHangingDrag *drag = &self->drag;
  PpPoint by = pp_hanging_map_turn_back (&self->map, (PpPoint) { dx, dy });
  const char *hold;

  if (!drag->is_on)
    return;
  hold = get_hold (drag->panel, drag->hole);
  if (hold != NULL)
    {
      pp_document_refuse (self->document, hold);
      pp_hanging_view_forget_drag (self);
    }
  else if (drag->is_hook)
    set_length (self, drag->panel,
                pp_hung_wire_length (drag->scene, &self->mass,
                                     pull_hook (self, drag->scene, drag->start, by)));
  else
    move_hole (self, drag->panel, drag->hole,
               (PpPoint) { drag->start.x + by.x, drag->start.y + by.y });
}

/* The picture fits anew, and the letters follow the holes. */
static void
end (PpHangingView *self)
{
  if (!self->drag.is_on)
    return;
  pp_hanging_view_forget_drag (self);
  pp_document_seal (self->document);
  pp_hanging_view_follow (self);
}

static void
end_cb (GtkGestureDrag *gesture,
        double          dx,
        double          dy,
        PpHangingView  *self)
{
  end (self);
}

static void
cancel (PpHangingView *self)
{
  if (self->drag.has_edit)
    pp_document_take_back (self->document);
  end (self);
}

static void
cancel_cb (GtkGesture       *gesture,
           GdkEventSequence *sequence,
           PpHangingView    *self)
{
  if (self->drag.is_on)
    cancel (self);
}

static void
motion_cb (GtkEventControllerMotion *motion,
           double                    x,
           double                    y,
           PpHangingView            *self)
{
  PpPoint px = { x, y };
  gboolean is_held = self->drag.is_on;
  gboolean is_near = self->document != NULL && (is_on_hook (self, px) || find_hole (self, px) >= 0);

  gtk_widget_set_cursor_from_name (GTK_WIDGET (self),
                                   is_held ? "grabbing" : is_near ? "grab" : NULL);
}

/* Up and Down alone do something. */
static void
nudge_hook (PpHangingView *self,
            PpPoint        by)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  PpScene *scene = pp_document_get_scene (self->document);
  PpPoint hook;

  if (pp_hanging_view_get_hook (self, &hook) && by.y != 0)
    set_length (self, panel, pp_hung_wire_length (scene, &self->mass,
                                                  pull_hook (self, scene, hook, by)));
}

static void
nudge_hole (PpHangingView *self,
            const char    *id,
            PpPoint        by)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  const PpHole *hole = pp_panel_find_hole (panel, id, NULL);

  if (hole != NULL)
    move_hole (self, panel, id, (PpPoint) { hole->x + by.x, hole->y + by.y });
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        PpHangingView         *self)
{
  GtkWidget *child = gtk_widget_get_focus_child (GTK_WIDGET (self));
  const char *hole, *hold;
  PpPoint way;
  double step;

  if (key == GDK_KEY_Escape && self->drag.is_on)
    {
      cancel (self);
      return GDK_EVENT_STOP;
    }
  if (self->document == NULL || child == NULL || self->drag.is_on || !pp_nudge_find_way (key, &way))
    return GDK_EVENT_PROPAGATE;
  step = pp_nudge_step (pp_document_get_panel (self->document)->units,
                        (state & GDK_SHIFT_MASK) != 0);
  way = (PpPoint) { way.x * step, way.y * step };
  hole = child == self->hook ? NULL : pp_canvas_piece_get_id (PP_CANVAS_PIECE (child));
  hold = get_hold (pp_document_get_panel (self->document), hole);
  if (hold != NULL)
    pp_document_refuse (self->document, hold);
  else if (hole == NULL)
    nudge_hook (self, way);
  else
    nudge_hole (self, hole, way);
  return GDK_EVENT_STOP;
}

/* What was nudged is a step. */
static void
seal (PpHangingView *self)
{
  if (self->document != NULL && !self->drag.is_on)
    pp_document_seal (self->document);
}

/* All that one key does while it is held is one step of undo. */
static void
released_cb (GtkEventControllerKey *controller,
             guint                  key,
             guint                  code,
             GdkModifierType        state,
             PpHangingView         *self)
{
  PpPoint way;

  if (pp_nudge_find_way (key, &way))
    seal (self);
}

void
pp_hanging_view_add_pointer (PpHangingView *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (drag, "drag-begin", G_CALLBACK (begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (end_cb), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (cancel_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (keys, "key-released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (seal), self); /* a key let go elsewhere */
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}
