/* canvas-drag.c: what a drag does to the panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain functions of widget px, told by the gestures. Each update edits the panel as it was when
 * the drag began, under one merge key, so that a drag is one step of undo and can be taken back
 * whole, and no error adds up.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/pin.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/resize.h"

#define THRESHOLD 4.0   /* px before a press becomes a drag */
#define REACH 5.0       /* px within which thin things are met */
#define HANDLE_REACH 9.0
#define TURN_STEP 15.0  /* degrees, with Shift */
#define MERGE "drag"

static PpPoint
to_mm (PpCanvas *self,
       PpPoint   px)
{
  return pp_zoom_to_panel (&self->zoom, px);
}

static gboolean
is_aslant (PpCanvas *self)
{
  return self->look.from_behind || self->look.sideways != 0;
}

/* The edges of the glass whose handle is at `px`. */
static gboolean
hit_glass_handle (PpCanvas *self,
                  PpPoint   px,
                  gboolean *right,
                  gboolean *bottom)
{
  PpBox box = pp_canvas_get_glass_box (self);
  PpPoint middle = pp_box_middle (box);
  PpPoint on_right = pp_zoom_to_widget (&self->zoom, (PpPoint) { box.x1, middle.y });
  PpPoint on_bottom = pp_zoom_to_widget (&self->zoom, (PpPoint) { middle.x, box.y1 });
  PpPoint corner = pp_zoom_to_widget (&self->zoom, (PpPoint) { box.x1, box.y1 });

  if (pp_document_get_chosen (self->document) != PP_CHOSEN_GLASS || is_aslant (self)
      || pp_document_get_panel (self->document)->background->shape == PP_SHAPE_FREE)
    return FALSE;
  *right = pp_point_distance (px, on_right) <= HANDLE_REACH
           || pp_point_distance (px, corner) <= HANDLE_REACH;
  *bottom = pp_point_distance (px, on_bottom) <= HANDLE_REACH
            || pp_point_distance (px, corner) <= HANDLE_REACH;
  return *right || *bottom;
}

static gboolean
hit_turn_handle (PpCanvas *self,
                 PpPoint   px)
{
  PpPoint handle;

  return pp_canvas_get_turn_handle (self, &handle)
         && pp_point_distance (px, handle) <= HANDLE_REACH;
}

const char *
pp_canvas_get_cursor (PpCanvas *self,
                      PpPoint   px)
{
  gboolean right, bottom;
  PpScene *scene = self->scene;
  PpPoint mm = to_mm (self, px);
  double reach = REACH / self->zoom.scale;

  if (self->panning)
    return "grab";
  if (self->measuring)
    return "crosshair";
  if (scene == NULL)
    return NULL;
  if (pp_canvas_hit_pin (self, px) >= 0)
    return "pointer";
  if (hit_turn_handle (self, px))
    return "alias";
  if (hit_glass_handle (self, px, &right, &bottom))
    return right && bottom ? "nwse-resize" : right ? "ew-resize" : "ns-resize";
  if (pp_hit_body (scene, mm, reach) != PP_NO_INDEX || pp_hit_hole (scene, mm, reach) != PP_NO_INDEX)
    return "grab";
  return pp_hit_wire (scene, mm, reach) ? "pointer" : NULL;
}

/* Adds the pressed piece to what is chosen, or takes it out. */
static void
toggle_pressed (PpCanvas *self)
{
  const char * const *ids = pp_document_get_chosen_ids (self->document);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) next = NULL;

  if (pp_document_get_chosen (self->document) == PP_CHOSEN_PLACEMENTS)
    for (guint i = 0; ids[i] != NULL; i++)
      if (!g_str_equal (ids[i], self->drag.pressed))
        g_strv_builder_add (builder, ids[i]);
  if (!self->drag.was_chosen)
    g_strv_builder_add (builder, self->drag.pressed);
  next = g_strv_builder_end (builder);
  pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char * const *) next);
}

static void
press_piece (PpCanvas *self,
             int       index)
{
  const char *id = self->scene->bodies[index]->placement->id;

  self->drag.pressed = g_strdup (id);
  self->drag.was_chosen = pp_document_get_chosen (self->document) == PP_CHOSEN_PLACEMENTS
                          && pp_document_is_chosen (self->document, id);
  self->drag.meant = PP_DRAG_MOVE;
  if (self->drag.adds)
    toggle_pressed (self);
  else if (!self->drag.was_chosen)
    {
      pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char *[]) { id, NULL });
      pp_document_choose_groups (self->document);
    }
  pp_canvas_focus_piece (self, self->drag.pressed);
}

static void
press_hole (PpCanvas *self,
            int       index)
{
  const char *id = pp_panel_hole (self->scene->panel, (guint) index)->id;

  self->drag.pressed = g_strdup (id);
  self->drag.meant = PP_DRAG_HOLE;
  pp_document_choose (self->document, PP_CHOSEN_HOLE, (const char *[]) { id, NULL });
}

/* What a press means, from the smallest thing to the largest. */
static void
press (PpCanvas *self,
       PpPoint   px)
{
  double reach = REACH / self->zoom.scale;
  PpPoint mm = self->drag.start;
  int pin = pp_canvas_hit_pin (self, px);
  int index;

  if (pin >= 0)
    {
      self->drag.meant = PP_DRAG_NONE;
      g_signal_emit_by_name (self, "pin", (guint) pin);
    }
  else if (hit_turn_handle (self, px))
    self->drag.meant = PP_DRAG_TURN;
  else if (hit_glass_handle (self, px, &self->drag.right, &self->drag.bottom))
    self->drag.meant = PP_DRAG_GLASS;
  else if ((index = pp_hit_body (self->scene, mm, reach)) != PP_NO_INDEX)
    press_piece (self, index);
  else if ((index = pp_hit_hole (self->scene, mm, reach)) != PP_NO_INDEX)
    press_hole (self, index);
  else if (pp_hit_wire (self->scene, mm, reach))
    {
      pp_document_choose (self->document, PP_CHOSEN_WIRE, NULL);
      self->drag.meant = PP_DRAG_NONE;
    }
  else
    self->drag.meant = PP_DRAG_FRAME;
}

void
pp_canvas_drag_begin (PpCanvas *self,
                      PpPoint   px,
                      gboolean  adds,
                      gboolean  pan)
{
  pp_canvas_drag_cancel (self);
  if (self->scene == NULL)
    return;
  self->drag = (PpDrag) {
    .kind = PP_DRAG_UNDECIDED,
    .start_px = px,
    .start = to_mm (self, px),
    .now = to_mm (self, px),
    .zoom = self->zoom,
    .adds = adds,
  };
  self->drag.panel = pp_panel_ref (pp_document_get_panel (self->document));
  pp_document_seal (self->document);
  if (pan || self->panning)
    self->drag.meant = PP_DRAG_PAN;
  else if (self->measuring)
    self->drag.meant = PP_DRAG_MEASURE;
  else
    press (self, px);
}

static void
refuse (PpCanvas   *self,
        const char *sentence)
{
  self->drag.meant = PP_DRAG_NONE;
  g_signal_emit_by_name (self->document, "refused", sentence);
}

/* Those of the chosen that do not stay put. (transfer full) */
static char **
get_movable (PpCanvas *self)
{
  const char * const *ids = pp_document_get_chosen_ids (self->document);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; ids[i] != NULL; i++)
    if (!pp_panel_find_placement (self->drag.panel, ids[i], NULL)->pinned)
      g_strv_builder_add (builder, ids[i]);
  return g_strv_builder_end (builder);
}

/* The press has become a drag. */
static void
decide (PpCanvas *self)
{
  gboolean edits = self->drag.meant == PP_DRAG_MOVE || self->drag.meant == PP_DRAG_TURN
                   || self->drag.meant == PP_DRAG_HOLE;

  if (edits && is_aslant (self))
    refuse (self, _("Look at the panel straight from the front to move what lies on it."));
  if (self->drag.meant == PP_DRAG_MOVE)
    {
      g_auto (GStrv) movable = get_movable (self);

      if (movable[0] == NULL)
        refuse (self, _("That piece stays put. Let it go with its card to move it."));
    }
  self->drag.kind = self->drag.meant;
  if (self->drag.kind == PP_DRAG_MOVE || self->drag.kind == PP_DRAG_TURN)
    pp_canvas_drop_layers (self);
  if (self->drag.kind == PP_DRAG_MEASURE)
    self->measured[0] = self->drag.start;
}

static const char *
get_piece_name (PpCanvas   *self,
                const char *id)
{
  const PpPlacement *placement = pp_panel_find_placement (self->drag.panel, id, NULL);

  return pp_panel_get_piece_of (self->drag.panel, placement)->name;
}

static void
move (PpCanvas *self)
{
  g_auto (GStrv) ids = get_movable (self);
  g_autoptr (GError) error = NULL;
  PpPanel *next = pp_edit_move (self->drag.panel, (const char * const *) ids,
                                self->drag.now.x - self->drag.start.x,
                                self->drag.now.y - self->drag.start.y, &error);
  guint n = g_strv_length (ids);
  g_autofree char *label = NULL;

  if (n == 1)
    label = g_strdup_printf (_("Move %s"), get_piece_name (self, ids[0]));
  else
    label = g_strdup_printf (ngettext ("Move %u piece", "Move %u pieces", n), n);
  pp_document_take (self->document, next, g_steal_pointer (&error), label, MERGE);
}

static double
get_bearing (PpPoint from,
             PpPoint to)
{
  return atan2 (to.y - from.y, to.x - from.x) * 180 / G_PI;
}

static void
turn (PpCanvas *self,
      gboolean  steps)
{
  const char *id = pp_document_get_chosen_ids (self->document)[0];
  const PpPlacement *placement = pp_panel_find_placement (self->drag.panel, id, NULL);
  PpPoint middle = { placement->x, placement->y };
  double by = get_bearing (middle, self->drag.now) - get_bearing (middle, self->drag.start);
  double rotation = placement->rotation + by;
  g_autofree char *label = g_strdup_printf (_("Turn %s"), get_piece_name (self, id));
  g_autoptr (GError) error = NULL;
  PpPanel *next;

  rotation = steps ? round (rotation / TURN_STEP) * TURN_STEP : round (rotation);
  rotation -= 360 * floor (rotation / 360);
  next = pp_edit_set_pose (self->drag.panel, id,
                           (PpPose) { placement->x, placement->y, rotation, placement->mirrored },
                           &error);
  pp_document_take (self->document, next, g_steal_pointer (&error), label, MERGE);
}

static void
move_hole (PpCanvas *self)
{
  PpHole draft = *pp_panel_find_hole (self->drag.panel, self->drag.pressed, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpHole) moved = NULL;
  PpPanel *next = NULL;

  draft.x += self->drag.now.x - self->drag.start.x;
  draft.y += self->drag.now.y - self->drag.start.y;
  moved = pp_hole_new (&draft, &error);
  if (moved != NULL)
    next = pp_edit_set_hole (self->drag.panel, moved, &error);
  pp_document_take (self->document, next, g_steal_pointer (&error), _("Move hole"), MERGE);
}

static void
resize (PpCanvas *self)
{
  const PpBackground *background = self->drag.panel->background;
  double width = background->width, height = background->height;
  g_autoptr (GError) error = NULL;
  PpPanel *next;

  if (self->drag.right)
    width = fmax (round (width + self->drag.now.x - self->drag.start.x), 1);
  if (self->drag.bottom)
    height = fmax (round (height + self->drag.now.y - self->drag.start.y), 1);
  next = pp_edit_resize (self->drag.panel, width, height, &error);
  pp_document_take (self->document, next, g_steal_pointer (&error), _("Resize glass"), MERGE);
}

static void
pan (PpCanvas *self,
     PpPoint   px)
{
  PpZoom zoom = self->drag.zoom;

  zoom.x += px.x - self->drag.start_px.x;
  zoom.y += px.y - self->drag.start_px.y;
  pp_canvas_set_zoom (self, zoom, FALSE);
}

void
pp_canvas_drag_update (PpCanvas *self,
                       PpPoint   px,
                       gboolean  steps)
{
  if (self->drag.kind == PP_DRAG_NONE)
    return;
  if (self->drag.kind == PP_DRAG_UNDECIDED)
    {
      if (pp_point_distance (px, self->drag.start_px) < THRESHOLD)
        return;
      decide (self);
    }
  if (self->drag.kind != PP_DRAG_PAN)
    self->drag.now = to_mm (self, px);
  switch (self->drag.kind)
    {
    case PP_DRAG_MOVE:
      move (self);
      break;
    case PP_DRAG_TURN:
      turn (self, steps);
      break;
    case PP_DRAG_HOLE:
      move_hole (self);
      break;
    case PP_DRAG_GLASS:
      resize (self);
      break;
    case PP_DRAG_PAN:
      pan (self, px);
      break;
    case PP_DRAG_MEASURE:
      self->measured[1] = self->drag.now;
      self->has_measured = TRUE;
      break;
    case PP_DRAG_NONE:
    case PP_DRAG_UNDECIDED:
    case PP_DRAG_FRAME:
      break;
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
choose_framed (PpCanvas *self)
{
  PpPoint a = self->drag.start, b = self->drag.now;
  PpBox frame = { fmin (a.x, b.x), fmin (a.y, b.y), fmax (a.x, b.x), fmax (a.y, b.y) };
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) ids = NULL;

  for (guint i = 0; i < self->scene->n_bodies; i++)
    {
      const char *id = self->scene->bodies[i]->placement->id;
      gboolean kept = self->drag.adds && pp_document_is_chosen (self->document, id);

      if (kept || pp_hit_is_framed (self->scene, i, frame))
        g_strv_builder_add (builder, id);
    }
  ids = g_strv_builder_end (builder);
  pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char * const *) ids);
}

/* A press that did not become a drag. */
static void
click (PpCanvas *self)
{
  if (self->drag.meant == PP_DRAG_FRAME && !self->drag.adds)
    pp_document_choose (self->document,
                        pp_hit_glass (self->scene, self->drag.start) ? PP_CHOSEN_GLASS
                                                                     : PP_CHOSEN_NOTHING, NULL);
}

static void
clear_drag (PpCanvas *self)
{
  gboolean held = self->drag.kind == PP_DRAG_MOVE || self->drag.kind == PP_DRAG_TURN
                  || self->drag.kind == PP_DRAG_HOLE || self->drag.kind == PP_DRAG_GLASS;

  g_clear_pointer (&self->drag.panel, pp_panel_unref);
  g_free (self->drag.pressed);
  self->drag = (PpDrag) { 0 };
  if (held)
    pp_canvas_drop_layers (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
pp_canvas_drag_end (PpCanvas *self)
{
  if (self->drag.kind == PP_DRAG_NONE && self->drag.panel == NULL)
    return;
  if (self->drag.kind == PP_DRAG_FRAME)
    choose_framed (self);
  else if (self->drag.kind == PP_DRAG_UNDECIDED)
    click (self);
  pp_document_seal (self->document);
  clear_drag (self);
}

void
pp_canvas_drag_cancel (PpCanvas *self)
{
  if (self->drag.panel == NULL)
    return;
  if (pp_document_get_panel (self->document) != self->drag.panel
      && self->drag.kind != PP_DRAG_NONE && self->drag.kind != PP_DRAG_UNDECIDED)
    pp_document_undo (self->document);
  pp_document_seal (self->document);
  clear_drag (self);
}
