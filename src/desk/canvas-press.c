/* canvas-press.c: what a press on the canvas takes hold of.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"

#define REACH 5.0 /* px within which thin things are met */
#define HANDLE_REACH 9.0

gboolean
pp_canvas_is_aslant (PpCanvas *self)
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

  if (pp_document_get_chosen (self->document) != PP_CHOSEN_GLASS || pp_canvas_is_aslant (self)
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

static int
find_pin (PpCanvas *self,
          PpPoint   px,
          PpPoint   mm)
{
  double reach = REACH / self->zoom.scale;

  return pp_canvas_hit_pin (self, px, pp_hit_body (self->scene, mm, reach) != PP_NO_INDEX);
}

const char *
pp_canvas_get_cursor (PpCanvas *self,
                      PpPoint   px)
{
  gboolean right, bottom, top;
  PpScene *scene = self->scene;
  PpPoint mm = pp_zoom_to_panel (&self->zoom, px);
  double reach = REACH / self->zoom.scale;

  if (self->panning)
    return "grab";
  if (self->measuring)
    return "crosshair";
  if (scene == NULL)
    return NULL;
  if (find_pin (self, px, mm) >= 0)
    return "pointer";
  if (hit_turn_handle (self, px))
    return "alias";
  if (hit_glass_handle (self, px, &right, &bottom))
    return right && bottom ? "nwse-resize" : right ? "ew-resize" : "ns-resize";
  if (pp_canvas_hit_vase_handle (self, px, &right, &top))
    return right && top ? "nesw-resize" : right ? "ew-resize" : "ns-resize";
  if (pp_hit_body (scene, mm, reach) != PP_NO_INDEX
      || pp_hit_hole (scene, mm, reach) != PP_NO_INDEX)
    return "grab";
  if (pp_hit_wire (scene, mm, reach))
    return "pointer";
  return pp_hit_part (scene, mm) != PP_NO_INDEX ? "grab" : NULL;
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
  if (self->drag.adds)
    toggle_pressed (self);
  else if (!self->drag.was_chosen)
    {
      pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char *[]) { id, NULL });
      pp_document_choose_groups (self->document);
    }
  pp_canvas_focus_piece (self, self->drag.pressed);
  /* From here on, whoever chooses something else takes it away. What a press let go stays. */
  self->drag.meant = self->drag.adds && self->drag.was_chosen ? PP_DRAG_NONE : PP_DRAG_MOVE;
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

static void
press_part (PpCanvas *self,
            int       index)
{
  const char *id = pp_panel_fused (self->scene->panel, (guint) index)->id;

  self->drag.pressed = g_strdup (id);
  self->drag.meant = PP_DRAG_FUSED;
  pp_document_choose (self->document, PP_CHOSEN_FUSED, (const char *[]) { id, NULL });
}

/* Where no piece lies: what is fused on, so that the menu is about it. */
static void
choose_part_for_menu (PpCanvas *self,
                      PpPoint   mm)
{
  int index = self->scene != NULL ? pp_hit_part (self->scene, mm) : PP_NO_INDEX;

  if (index != PP_NO_INDEX)
    pp_document_choose (self->document, PP_CHOSEN_FUSED,
                        (const char *[]) { pp_panel_fused (self->scene->panel, (guint) index)->id,
                                           NULL });
}

void
pp_canvas_press_for_menu (PpCanvas *self,
                          PpPoint   px)
{
  PpPoint mm = pp_zoom_to_panel (&self->zoom, px);
  int index = self->scene != NULL ? pp_hit_body (self->scene, mm, REACH / self->zoom.scale)
                                  : PP_NO_INDEX;
  const char *id;

  if (index == PP_NO_INDEX)
    {
      choose_part_for_menu (self, mm);
      return;
    }
  id = self->scene->bodies[index]->placement->id;
  if (!pp_document_is_chosen (self->document, id))
    pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char *[]) { id, NULL });
  pp_canvas_focus_piece (self, id);
}

/* What a press means, from the smallest thing to the largest. */
void
pp_canvas_press (PpCanvas *self,
                 PpPoint   px)
{
  double reach = REACH / self->zoom.scale;
  PpPoint mm = self->drag.start;
  int pin = find_pin (self, px, mm);
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
  else if (pp_canvas_hit_vase_handle (self, px, &self->drag.right, &self->drag.top))
    self->drag.meant = PP_DRAG_VASE;
  else if ((index = pp_hit_body (self->scene, mm, reach)) != PP_NO_INDEX)
    press_piece (self, index);
  else if ((index = pp_hit_hole (self->scene, mm, reach)) != PP_NO_INDEX)
    press_hole (self, index);
  else if (pp_hit_wire (self->scene, mm, reach))
    {
      pp_document_choose (self->document, PP_CHOSEN_WIRE, NULL);
      self->drag.meant = PP_DRAG_NONE;
    }
  else if ((index = pp_hit_part (self->scene, mm)) != PP_NO_INDEX && !self->drag.adds)
    press_part (self, index);
  else
    self->drag.meant = PP_DRAG_FRAME;
}
