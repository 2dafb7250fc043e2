/* canvas-arrange.c: while pieces are in hand: over and under others, and evenly among them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The wheel, or O and U, takes the piece in hand past the next one that it overlaps. While Shift is
 * held it goes where it stands evenly: midway between two, one step on from two, opposite to one
 * across the middle of the glass, or on that middle; thin lines say which.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/ink.h"
#include "desk/placement-words.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "shape/over.h"

#define REACH 9.0 /* px within which a place draws the piece in hand */
#define TICK 5.0  /* px, half the length of a mark across a line */
#define ASIDE 26  /* px from the pointer to what is said beside it */

/* Where the other pieces are: those that do not move. (transfer full) */
static GArray *
list_others (PpCanvas           *self,
             const char * const *moving)
{
  const PpPanel *panel = self->drag.panel;
  GArray *others = g_array_new (FALSE, FALSE, sizeof (PpPoint));

  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *placed = pp_panel_placement (panel, i);
      PpPoint at = { placed->x, placed->y };

      if (!g_strv_contains (moving, placed->id))
        g_array_append_val (others, at);
    }
  return others;
}

PpPoint
pp_canvas_drag_evenly (PpCanvas           *self,
                       const char * const *moving)
{
  PpPoint by = { self->drag.now.x - self->drag.start.x, self->drag.now.y - self->drag.start.y };
  const PpPlacement *held = pp_panel_find_placement (self->drag.panel, self->drag.pressed, NULL);
  g_autoptr (GArray) others = NULL;
  PpPoint p;

  self->drag.even = (PpEven) { PP_EVEN_NONE, self->drag.now, self->drag.now, self->drag.now };
  if (!self->drag.evenly || held == NULL || !g_strv_contains (moving, held->id))
    return by;
  others = list_others (self, moving);
  p = (PpPoint) { held->x + by.x, held->y + by.y };
  self->drag.even = pp_even_find ((const PpPoint *) others->data, others->len, p,
                                  pp_box_middle (pp_canvas_get_glass_box (self)).x,
                                  REACH / self->zoom.scale);
  return (PpPoint) { by.x + self->drag.even.at.x - p.x, by.y + self->drag.even.at.y - p.y };
}

static void
draw_tick (cairo_t *cr,
           PpPoint  at,
           PpPoint  along)
{
  double length = hypot (along.x, along.y);
  PpPoint aside = { 0, TICK };

  if (length > 0)
    aside = (PpPoint) { -along.y / length * TICK, along.x / length * TICK };
  cairo_move_to (cr, at.x - aside.x, at.y - aside.y);
  cairo_line_to (cr, at.x + aside.x, at.y + aside.y);
}

/* A line through three places with a mark at each, and the distance that both halves have. */
static void
draw_halves (PpCanvas        *self,
             cairo_t         *cr,
             const PpPalette *palette,
             PpPoint          from,
             PpPoint          through,
             PpPoint          to)
{
  PpPoint a = pp_canvas_to_px (self, from.x, from.y);
  PpPoint m = pp_canvas_to_px (self, through.x, through.y);
  PpPoint b = pp_canvas_to_px (self, to.x, to.y);
  PpPoint along = { b.x - a.x, b.y - a.y };
  double half = pp_point_distance (from, through);

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  draw_tick (cr, a, along);
  draw_tick (cr, m, along);
  draw_tick (cr, b, along);
  pp_ink_stroke (cr, palette, &palette->accent, 1.5);
  pp_canvas_draw_length (self, cr, palette, half, (PpPoint) { (a.x + m.x) / 2, (a.y + m.y) / 2 });
  pp_canvas_draw_length (self, cr, palette, half, (PpPoint) { (m.x + b.x) / 2, (m.y + b.y) / 2 });
}

static void
draw_middle (PpCanvas        *self,
             cairo_t         *cr,
             const PpPalette *palette)
{
  PpBox box = pp_canvas_get_glass_box (self);
  double x = pp_box_middle (box).x;
  PpPoint a = pp_canvas_to_px (self, x, box.y0), b = pp_canvas_to_px (self, x, box.y1);

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  cairo_set_dash (cr, (double[]) { 7, 5 }, 2, 0);
  pp_ink_stroke (cr, palette, &palette->accent, self->drag.even.kind == PP_EVEN_MIDDLE ? 2 : 1);
  cairo_set_dash (cr, NULL, 0, 0);
}

void
pp_canvas_draw_evenly (PpCanvas        *self,
                       cairo_t         *cr,
                       const PpPalette *palette)
{
  const PpEven *even = &self->drag.even;
  double x = pp_box_middle (pp_canvas_get_glass_box (self)).x;

  draw_middle (self, cr, palette);
  switch (even->kind)
    {
    case PP_EVEN_BETWEEN:
      draw_halves (self, cr, palette, even->a, even->at, even->b);
      break;
    case PP_EVEN_ONWARD:
      draw_halves (self, cr, palette, even->a, even->b, even->at);
      break;
    case PP_EVEN_OPPOSITE:
      draw_halves (self, cr, palette, even->a, (PpPoint) { x, even->at.y }, even->at);
      break;
    case PP_EVEN_NONE:
    case PP_EVEN_MIDDLE:
      break;
    }
}

/* What the piece in hand lies over or under now, for the slip beside the pointer. */
static void
say (PpCanvas      *self,
     const PpPanel *panel,
     guint          other,
     gboolean       over)
{
  g_autofree char *name = pp_placement_words_piece (panel, other);

  g_free (self->drag.said);
  /* Translators: a piece that another is laid over or under in the stack. */
  self->drag.said = g_strdup_printf (over ? C_("in the stack", "over %s")
                                          : C_("in the stack", "under %s"), name);
}

gboolean
pp_canvas_drag_past (PpCanvas *self,
                     gboolean  over)
{
  PpScene *scene;
  PpPanel *restacked;
  guint index;
  int other;

  if (self->document == NULL || self->drag.kind != PP_DRAG_MOVE)
    return FALSE;
  scene = pp_document_get_scene (self->document);
  if (pp_panel_find_placement (scene->panel, self->drag.pressed, &index) == NULL)
    return TRUE;
  other = pp_over_next (scene, index, over);
  if (other == PP_NO_INDEX)
    return TRUE;
  say (self, scene->panel, (guint) other, over);
  restacked = pp_edit_restack (self->drag.panel, self->drag.pressed, (guint) other, NULL);
  g_return_val_if_fail (restacked != NULL, TRUE);
  pp_panel_unref (self->drag.panel);
  self->drag.panel = restacked;
  pp_canvas_drag_update (self, pp_zoom_to_widget (&self->zoom, self->drag.now), self->drag.evenly);
  pp_canvas_drop_layers (self);
  return TRUE;
}

void
pp_canvas_draw_said (PpCanvas        *self,
                     cairo_t         *cr,
                     const PpPalette *palette)
{
  PpPoint px = pp_zoom_to_widget (&self->zoom, self->drag.now);

  pp_canvas_draw_slip (self, cr, palette, self->drag.said, (PpPoint) { px.x, px.y + ASIDE });
}
