/* canvas-marks.c: what is chosen, marked; the frame and the ruler in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/ink.h"

#define HANDLE 5        /* px, half of a handle */
#define CHOSEN 1.5      /* px of the line round a chosen piece, outside it */
#define BELOW 24        /* px from the glass to its width */
#define BESIDE 42       /* px from the glass to its height */
#define TURN_REACH 26   /* px from the box of a piece to its turn handle */

void
pp_canvas_add_outline (PpCanvas        *self,
                       cairo_t         *cr,
                       const PpOutline *outline,
                       PpPoint          carried)
{
  cairo_save (cr);
  cairo_translate (cr, self->zoom.x, self->zoom.y);
  cairo_scale (cr, self->zoom.from_behind ? -self->zoom.scale : self->zoom.scale, self->zoom.scale);
  cairo_translate (cr, carried.x, carried.y);
  pp_draw_outline_path (cr, outline);
  cairo_restore (cr);
}

static void
draw_anchor (cairo_t         *cr,
             const PpPalette *palette,
             PpPoint          px)
{
  cairo_new_sub_path (cr);
  cairo_move_to (cr, px.x - HANDLE, px.y);
  cairo_line_to (cr, px.x + HANDLE, px.y);
  cairo_move_to (cr, px.x, px.y - HANDLE);
  cairo_line_to (cr, px.x, px.y + HANDLE);
  pp_ink_stroke (cr, palette, &palette->accent, 1);
}

/* Nothing of the piece itself is drawn over, however thin it is. */
static void
clip_outside (PpCanvas     *self,
              cairo_t      *cr,
              const PpBody *body,
              PpPoint       carried)
{
  double x0, y0, x1, y1;

  cairo_clip_extents (cr, &x0, &y0, &x1, &y1);
  cairo_rectangle (cr, x0, y0, x1 - x0, y1 - y0);
  pp_canvas_add_outline (self, cr, body->outline, carried);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_clip (cr);
}

void
pp_canvas_draw_chosen (PpCanvas        *self,
                       cairo_t         *cr,
                       const PpPalette *palette,
                       const PpBody    *body)
{
  PpPoint carried = pp_canvas_get_carried (self, body);

  cairo_save (cr);
  clip_outside (self, cr, body, carried);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  pp_canvas_add_outline (self, cr, body->outline, carried);
  if (body->placement->pinned)
    cairo_set_dash (cr, (double[]) { 5, 4 }, 2, 0);
  pp_ink_stroke (cr, palette, &palette->accent, 2 * CHOSEN);
  cairo_restore (cr);
  draw_anchor (cr, palette,
               pp_canvas_to_px (self, body->frame.x + carried.x, body->frame.y + carried.y));
}

gboolean
pp_canvas_get_turn_handle (PpCanvas *self,
                           PpPoint  *px)
{
  const char * const *ids = pp_document_get_chosen_ids (self->document);
  const PpBody *body;
  PpPoint a, b;

  if (pp_document_get_chosen (self->document) != PP_CHOSEN_PLACEMENTS || ids[1] != NULL
      || self->look.from_behind || self->look.sideways != 0)
    return FALSE;
  body = pp_canvas_find_body (self, ids[0]);
  if (body == NULL || body->placement->pinned)
    return FALSE;
  a = pp_canvas_to_px (self, body->box.x0, body->box.y0);
  b = pp_canvas_to_px (self, body->box.x1, body->box.y0);
  *px = (PpPoint) { (a.x + b.x) / 2, a.y - TURN_REACH };
  return TRUE;
}

static void
draw_turn_handle (PpCanvas        *self,
                  cairo_t         *cr,
                  const PpPalette *palette)
{
  PpPoint px;

  if (!pp_canvas_get_turn_handle (self, &px))
    return;
  cairo_move_to (cr, px.x, px.y + HANDLE);
  cairo_line_to (cr, px.x, px.y + TURN_REACH - 4);
  pp_ink_stroke (cr, palette, &palette->accent, 1);
  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, HANDLE + 1, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill_preserve (cr);
  pp_ink_stroke (cr, palette, &palette->accent, 2);
}

static void
draw_chosen_pieces (PpCanvas        *self,
                    cairo_t         *cr,
                    const PpPalette *palette)
{
  const char * const *ids = pp_document_get_chosen_ids (self->document);

  for (guint i = 0; ids[i] != NULL; i++)
    {
      const PpBody *body = pp_canvas_find_body (self, ids[i]);

      if (body != NULL && !pp_canvas_is_in_hand (self, ids[i]))
        pp_canvas_draw_chosen (self, cr, palette, body);
    }
  if (self->drag.kind != PP_DRAG_MOVE && self->drag.kind != PP_DRAG_TURN)
    draw_turn_handle (self, cr, palette);
}

/* From the middle of a hole to an edge, with the distance. */
static void
draw_distance (PpCanvas        *self,
               cairo_t         *cr,
               const PpPalette *palette,
               PpPoint          from,
               PpPoint          to)
{
  PpPoint a = pp_canvas_to_px (self, from.x, from.y), b = pp_canvas_to_px (self, to.x, to.y);

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  cairo_set_dash (cr, (double[]) { 3, 3 }, 2, 0);
  pp_ink_stroke (cr, palette, &palette->accent, 1);
  cairo_set_dash (cr, NULL, 0, 0);
  pp_canvas_draw_length (self, cr, palette, hypot (to.x - from.x, to.y - from.y),
                         (PpPoint) { (a.x + b.x) / 2, (a.y + b.y) / 2 });
}

static void
draw_chosen_hole (PpCanvas        *self,
                  cairo_t         *cr,
                  const PpPalette *palette)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  const PpHole *hole = pp_panel_find_hole (panel, pp_document_get_chosen_ids (self->document)[0],
                                           NULL);
  PpBox box = pp_canvas_get_glass_box (self);
  PpPoint middle = { hole->x, hole->y };
  PpPoint px = pp_canvas_to_px (self, hole->x, hole->y);
  double side = hole->x < (box.x0 + box.x1) / 2 ? box.x0 : box.x1;

  draw_distance (self, cr, palette, middle, (PpPoint) { side, hole->y });
  draw_distance (self, cr, palette, middle, (PpPoint) { hole->x, box.y0 });
  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, fmax (hole->diameter / 2 * self->zoom.scale, 4) + 3, 0, 2 * G_PI);
  pp_ink_stroke (cr, palette, &palette->accent, 2);
}

static void
draw_chosen_wire (PpCanvas        *self,
                  cairo_t         *cr,
                  const PpPalette *palette)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  const PpHole *from = pp_panel_find_hole (panel, panel->wire->from, NULL);
  const PpHole *to = pp_panel_find_hole (panel, panel->wire->to, NULL);
  PpPoint a = pp_canvas_to_px (self, from->x, from->y), b = pp_canvas_to_px (self, to->x, to->y);

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  pp_ink_stroke (cr, palette, &palette->accent, 2);
}

void
pp_canvas_draw_handle (cairo_t         *cr,
                       const PpPalette *palette,
                       PpPoint          px)
{
  cairo_rectangle (cr, px.x - HANDLE, px.y - HANDLE, 2 * HANDLE, 2 * HANDLE);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill_preserve (cr);
  pp_ink_stroke (cr, palette, &palette->accent, 1.5);
}

static void
draw_chosen_glass (PpCanvas        *self,
                   cairo_t         *cr,
                   const PpPalette *palette)
{
  PpBox box = pp_canvas_get_glass_box (self);
  PpPoint middle = pp_box_middle (box);
  PpPoint below = pp_canvas_to_px (self, middle.x, box.y1);
  PpPoint beside = pp_canvas_to_px (self, box.x0, middle.y);

  pp_canvas_add_outline (self, cr, self->scene->background_outline, (PpPoint) { 0, 0 });
  pp_ink_stroke (cr, palette, &palette->accent, 2);
  if (self->look.from_behind || self->look.sideways != 0)
    return;
  pp_canvas_draw_handle (cr, palette, pp_canvas_to_px (self, box.x1, middle.y));
  pp_canvas_draw_handle (cr, palette, pp_canvas_to_px (self, middle.x, box.y1));
  pp_canvas_draw_handle (cr, palette, pp_canvas_to_px (self, box.x1, box.y1));
  pp_canvas_draw_length (self, cr, palette, pp_box_width (box),
                         (PpPoint) { below.x, below.y + BELOW });
  pp_canvas_draw_length (self, cr, palette, pp_box_height (box),
                         (PpPoint) { beside.x - BESIDE, beside.y });
}

static void
draw_what_is_chosen (PpCanvas        *self,
                     cairo_t         *cr,
                     const PpPalette *palette)
{
  switch (pp_document_get_chosen (self->document))
    {
    case PP_CHOSEN_PLACEMENTS:
      draw_chosen_pieces (self, cr, palette);
      break;
    case PP_CHOSEN_HOLE:
      draw_chosen_hole (self, cr, palette);
      break;
    case PP_CHOSEN_WIRE:
      draw_chosen_wire (self, cr, palette);
      break;
    case PP_CHOSEN_GLASS:
      draw_chosen_glass (self, cr, palette);
      break;
    case PP_CHOSEN_FUSED:
      pp_canvas_draw_chosen_fused (self, cr, palette);
      break;
    case PP_CHOSEN_NOTHING:
      break;
    }
}

void
pp_canvas_draw_marks (PpCanvas        *self,
                      cairo_t         *cr,
                      const PpPalette *palette)
{
  pp_canvas_draw_answers (self, cr, palette);
  draw_what_is_chosen (self, cr, palette);
  pp_canvas_draw_pins (self, cr, palette);
}

void
pp_canvas_draw_frame (PpCanvas        *self,
                      cairo_t         *cr,
                      const PpPalette *palette)
{
  PpPoint a = pp_canvas_to_px (self, self->drag.start.x, self->drag.start.y);
  PpPoint b = pp_canvas_to_px (self, self->drag.now.x, self->drag.now.y);

  cairo_rectangle (cr, floor (fmin (a.x, b.x)) + 0.5, floor (fmin (a.y, b.y)) + 0.5,
                   floor (fabs (a.x - b.x)), floor (fabs (a.y - b.y)));
  pp_palette_set (cr, &palette->accent, 0.1);
  cairo_fill_preserve (cr);
  cairo_set_dash (cr, (double[]) { 6, 4 }, 2, 0);
  pp_ink_stroke (cr, palette, &palette->accent, 1);
  cairo_set_dash (cr, NULL, 0, 0);
}

void
pp_canvas_draw_measured (PpCanvas        *self,
                         cairo_t         *cr,
                         const PpPalette *palette)
{
  PpPoint a = pp_canvas_to_px (self, self->measured[0].x, self->measured[0].y);
  PpPoint b = pp_canvas_to_px (self, self->measured[1].x, self->measured[1].y);
  double length = pp_point_distance (a, b);
  PpPoint aside = { 0, 0 };

  if (length > 0)
    aside = (PpPoint) { -(b.y - a.y) / length * HANDLE, (b.x - a.x) / length * HANDLE };
  cairo_move_to (cr, a.x - aside.x, a.y - aside.y);
  cairo_line_to (cr, a.x + aside.x, a.y + aside.y);
  cairo_move_to (cr, b.x - aside.x, b.y - aside.y);
  cairo_line_to (cr, b.x + aside.x, b.y + aside.y);
  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  pp_ink_stroke (cr, palette, &palette->accent, 1.5);
  pp_canvas_draw_length (self, cr, palette,
                         pp_point_distance (self->measured[0], self->measured[1]),
                         (PpPoint) { (a.x + b.x) / 2, (a.y + b.y) / 2 - 18 });
}
