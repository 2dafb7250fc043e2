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
#include "desk/edit-acts.h"
#include "desk/tray-words.h"
#include "desk/tray.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/resize.h"
#include "shape/stand.h"

#define THRESHOLD 4.0   /* px before a press becomes a drag */
#define TURN_STEP 15.0  /* degrees, with Shift */
#define MERGE "drag"

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
    .start = pp_zoom_to_panel (&self->zoom, px),
    .now = pp_zoom_to_panel (&self->zoom, px),
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
    pp_canvas_press (self, px);
}

static void
refuse (PpCanvas   *self,
        const char *sentence)
{
  self->drag.meant = PP_DRAG_NONE;
  pp_document_refuse (self->document, sentence);
}

/* The press has become a drag. */
static void
decide (PpCanvas *self)
{
  gboolean edits = self->drag.meant == PP_DRAG_MOVE || self->drag.meant == PP_DRAG_TURN
                   || self->drag.meant == PP_DRAG_HOLE || self->drag.meant == PP_DRAG_FUSED;

  if (edits && pp_canvas_is_aslant (self))
    refuse (self, _("Look at the panel straight from the front to move what lies on it."));
  if (self->drag.meant == PP_DRAG_MOVE)
    {
      self->drag.movable = pp_edit_acts_list_movable (self->document);
      if (self->drag.movable == NULL)
        self->drag.meant = PP_DRAG_NONE;
    }
  self->drag.kind = self->drag.meant;
  if (self->drag.kind == PP_DRAG_MOVE || self->drag.kind == PP_DRAG_TURN)
    pp_canvas_drop_layers (self);
  if (self->drag.kind == PP_DRAG_MEASURE)
    self->measured[0] = self->drag.start;
}

void
pp_canvas_drag_take (PpCanvas   *self,
                     PpPanel    *next,
                     GError     *error,
                     const char *label)
{
  self->drag.is_editing = TRUE;
  pp_document_take (self->document, next, error, label, MERGE);
  self->drag.is_editing = FALSE;
}

static const char *
get_piece_name (PpCanvas   *self,
                const char *id)
{
  const PpPlacement *placement = pp_panel_find_placement (self->drag.panel, id, NULL);

  return pp_tray_words_name (pp_panel_get_piece_of (self->drag.panel, placement));
}

static void
move (PpCanvas *self)
{
  const char * const *ids = (const char * const *) self->drag.movable;
  g_autoptr (GError) error = NULL;
  PpPoint by = pp_canvas_drag_evenly (self, ids);
  PpPanel *next = pp_edit_move (self->drag.panel, ids, by.x, by.y, &error);
  guint n = g_strv_length (self->drag.movable);
  g_autofree char *label = NULL;

  if (n == 1)
    label = g_strdup_printf (_("Move %s"), get_piece_name (self, ids[0]));
  else
    label = g_strdup_printf (ngettext ("Move %u piece", "Move %u pieces", n), n);
  next = pp_stand_follow (next, ids, &error);
  pp_canvas_drag_take (self, next, g_steal_pointer (&error), label);
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
  next = pp_stand_follow (next, (const char *[]) { id, NULL }, &error);
  pp_canvas_drag_take (self, next, g_steal_pointer (&error), label);
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
    next = pp_edit_move_hole (self->drag.panel, moved, &error);
  pp_canvas_drag_take (self, next, g_steal_pointer (&error), _("Move the hole"));
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
  pp_canvas_drag_take (self, next, g_steal_pointer (&error), _("Resize glass"));
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
    self->drag.now = pp_zoom_to_panel (&self->zoom, px);
  switch (self->drag.kind)
    {
    case PP_DRAG_MOVE:
      self->drag.evenly = steps;
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
    case PP_DRAG_FUSED:
      pp_canvas_move_fused (self);
      break;
    case PP_DRAG_VASE:
      pp_canvas_reshape_vase (self);
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

/* A press that did not become a drag. On a piece that is chosen with others it means that piece
 * alone: so one of a group is taken out. */
static void
click (PpCanvas *self)
{
  if (self->drag.meant == PP_DRAG_MOVE && self->drag.was_chosen && !self->drag.adds)
    pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS,
                        (const char *[]) { self->drag.pressed, NULL });
  if (self->drag.meant == PP_DRAG_FRAME && !self->drag.adds)
    pp_document_choose (self->document,
                        pp_hit_glass (self->scene, self->drag.start) ? PP_CHOSEN_GLASS
                                                                     : PP_CHOSEN_NOTHING, NULL);
}

void
pp_canvas_drag_forget (PpCanvas *self)
{
  gboolean held = self->drag.kind == PP_DRAG_MOVE || self->drag.kind == PP_DRAG_TURN
                  || self->drag.kind == PP_DRAG_HOLE || self->drag.kind == PP_DRAG_GLASS
                  || self->drag.kind == PP_DRAG_FUSED || self->drag.kind == PP_DRAG_VASE;

  g_clear_pointer (&self->drag.panel, pp_panel_unref);
  g_free (self->drag.pressed);
  g_strfreev (self->drag.movable);
  g_free (self->drag.said);
  self->drag = (PpDrag) { 0 };
  if (held) /* what was put off while it went on */
    {
      pp_canvas_drop_layers (self);
      pp_canvas_describe_children (self);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
is_over_tray (PpCanvas *self)
{
  GtkWidget *root = GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self)));
  PpPoint px = pp_zoom_to_widget (&self->zoom, self->drag.now);
  double x, y;
  GtkWidget *under;

  if (!gtk_widget_translate_coordinates (GTK_WIDGET (self), root, px.x, px.y, &x, &y))
    return FALSE;
  under = gtk_widget_pick (root, x, y, GTK_PICK_DEFAULT);
  return under != NULL && gtk_widget_get_ancestor (under, PP_TYPE_TRAY) != NULL;
}

/* One step of undo with the move that led there. */
static void
put_into_tray (PpCanvas *self)
{
  GError *error = NULL;
  PpPanel *next = pp_edit_remove (self->drag.panel, (const char * const *) self->drag.movable,
                                  &error);

  pp_canvas_drag_take (self, next, error, _("Back into the tray"));
}

void
pp_canvas_drag_end (PpCanvas *self)
{
  if (self->drag.kind == PP_DRAG_NONE && self->drag.panel == NULL)
    return;
  if (self->drag.kind == PP_DRAG_MOVE && is_over_tray (self))
    put_into_tray (self);
  else if (self->drag.kind == PP_DRAG_FRAME)
    choose_framed (self);
  else if (self->drag.kind == PP_DRAG_UNDECIDED)
    {
      self->drag.kind = PP_DRAG_NONE;
      click (self);
    }
  pp_document_seal (self->document);
  pp_canvas_drag_forget (self);
}

void
pp_canvas_drag_cancel (PpCanvas *self)
{
  gboolean is_edited;

  if (self->drag.panel == NULL)
    return;
  is_edited = pp_document_get_panel (self->document) != self->drag.panel;
  pp_canvas_drag_forget (self);
  if (is_edited)
    pp_document_take_back (self->document);
  pp_document_seal (self->document);
}
