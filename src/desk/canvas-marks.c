/* canvas-marks.c: what is drawn over the pieces.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In widget px. Lines about what is chosen are drawn twice, a broad one in the colour of the paper
 * under a thin one in the accent, so that they are seen on glass of any colour.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/pin.h"
#include "panel/measure.h"

#define HALO 2.5        /* px added to each side of a line */
#define HANDLE 5        /* px, half of a handle */
#define TURN_REACH 26   /* px from the box of a piece to its turn handle */
#define HATCH 5.0       /* px between the strokes of a hatching */
#define HATCH_HALF 6.0  /* px, half its breadth */
#define PIN_STEP 0.8    /* of a pin's size, between pins that would lie on one another */
#define PIN_STEM 1.25   /* of a pin's size, from the place it marks up to its middle */
#define PINS 9          /* the worst stand as pins with their numbers, the rest as small marks */
#define SMALL 0.45      /* of a pin's size */

static PpPoint
to_px (PpCanvas *self,
       double    x,
       double    y)
{
  return pp_zoom_to_widget (&self->zoom, (PpPoint) { x, y });
}

static void
stroke_seen (cairo_t         *cr,
             const PpPalette *palette,
             const GdkRGBA   *colour,
             double           width)
{
  pp_palette_set (cr, &palette->paper, 0.9);
  cairo_set_line_width (cr, width + 2 * HALO);
  cairo_stroke_preserve (cr);
  pp_palette_set (cr, colour, 1);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
}

/* `text` on a slip of paper with its middle at `px`. */
static void
draw_slip (PpCanvas        *self,
           cairo_t         *cr,
           const PpPalette *palette,
           const char      *text,
           PpPoint          px)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  int width, height;
  double x, y;

  pango_layout_get_pixel_size (layout, &width, &height);
  x = round (px.x - width / 2.0);
  y = round (px.y - height / 2.0);
  cairo_new_sub_path (cr);
  cairo_rectangle (cr, x - 4, y - 1, width + 8, height + 2);
  pp_palette_set (cr, &palette->paper, 0.94);
  cairo_fill (cr);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_length (PpCanvas        *self,
             cairo_t         *cr,
             const PpPalette *palette,
             double           mm,
             PpPoint          px)
{
  g_autofree char *text = pp_length_format (mm, pp_document_get_panel (self->document)->units);

  draw_slip (self, cr, palette, text, px);
}

static void
add_outline (PpCanvas        *self,
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
  stroke_seen (cr, palette, &palette->accent, 1);
}

void
pp_canvas_draw_chosen (PpCanvas        *self,
                       cairo_t         *cr,
                       const PpPalette *palette,
                       const PpBody    *body)
{
  PpPoint carried = pp_canvas_get_carried (self, body);

  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  add_outline (self, cr, body->outline, carried);
  if (body->placement->pinned)
    cairo_set_dash (cr, (double[]) { 5, 4 }, 2, 0);
  stroke_seen (cr, palette, &palette->accent, 1.5);
  cairo_set_dash (cr, NULL, 0, 0);
  draw_anchor (cr, palette, to_px (self, body->frame.x + carried.x, body->frame.y + carried.y));
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
  a = to_px (self, body->box.x0, body->box.y0);
  b = to_px (self, body->box.x1, body->box.y0);
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
  stroke_seen (cr, palette, &palette->accent, 1);
  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, HANDLE + 1, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill_preserve (cr);
  stroke_seen (cr, palette, &palette->accent, 2);
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
  PpPoint a = to_px (self, from.x, from.y), b = to_px (self, to.x, to.y);

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  cairo_set_dash (cr, (double[]) { 3, 3 }, 2, 0);
  stroke_seen (cr, palette, &palette->accent, 1);
  cairo_set_dash (cr, NULL, 0, 0);
  draw_length (self, cr, palette, hypot (to.x - from.x, to.y - from.y),
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
  PpPoint px = to_px (self, hole->x, hole->y);
  double side = hole->x < (box.x0 + box.x1) / 2 ? box.x0 : box.x1;

  draw_distance (self, cr, palette, middle, (PpPoint) { side, hole->y });
  draw_distance (self, cr, palette, middle, (PpPoint) { hole->x, box.y0 });
  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, fmax (hole->diameter / 2 * self->zoom.scale, 4) + 3, 0, 2 * G_PI);
  stroke_seen (cr, palette, &palette->accent, 2);
}

static void
draw_chosen_wire (PpCanvas        *self,
                  cairo_t         *cr,
                  const PpPalette *palette)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  const PpHole *from = pp_panel_find_hole (panel, panel->wire->from, NULL);
  const PpHole *to = pp_panel_find_hole (panel, panel->wire->to, NULL);
  PpPoint a = to_px (self, from->x, from->y), b = to_px (self, to->x, to->y);

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  stroke_seen (cr, palette, &palette->accent, 2);
}

static void
draw_handle (cairo_t         *cr,
             const PpPalette *palette,
             PpPoint          px)
{
  cairo_rectangle (cr, px.x - HANDLE, px.y - HANDLE, 2 * HANDLE, 2 * HANDLE);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill_preserve (cr);
  stroke_seen (cr, palette, &palette->accent, 1.5);
}

static void
draw_chosen_glass (PpCanvas        *self,
                   cairo_t         *cr,
                   const PpPalette *palette)
{
  PpBox box = pp_canvas_get_glass_box (self);
  PpPoint middle = pp_box_middle (box);

  add_outline (self, cr, self->scene->background_outline, (PpPoint) { 0, 0 });
  stroke_seen (cr, palette, &palette->accent, 2);
  if (self->look.from_behind || self->look.sideways != 0)
    return;
  draw_handle (cr, palette, to_px (self, box.x1, middle.y));
  draw_handle (cr, palette, to_px (self, middle.x, box.y1));
  draw_handle (cr, palette, to_px (self, box.x1, box.y1));
  draw_length (self, cr, palette, pp_box_width (box),
               (PpPoint) { to_px (self, middle.x, 0).x, to_px (self, 0, box.y1).y + 24 });
  draw_length (self, cr, palette, pp_box_height (box),
               (PpPoint) { to_px (self, box.x0, 0).x - 42, to_px (self, 0, middle.y).y });
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
    case PP_CHOSEN_NOTHING:
      break;
    }
}

/* Slanting strokes across a stretch of wire, a double edge along it, and its length. */
static void
draw_exposed (PpCanvas        *self,
              cairo_t         *cr,
              const PpPalette *palette,
              const PpExposed *exposed)
{
  PpPoint a = to_px (self, exposed->from.x, exposed->from.y);
  PpPoint b = to_px (self, exposed->to.x, exposed->to.y);
  double length = pp_point_distance (a, b);

  cairo_save (cr);
  cairo_translate (cr, a.x, a.y);
  cairo_rotate (cr, atan2 (b.y - a.y, b.x - a.x));
  cairo_rectangle (cr, 0, -HATCH_HALF, length, 2 * HATCH_HALF);
  pp_palette_set (cr, &palette->paper, 0.55);
  cairo_fill_preserve (cr);
  cairo_save (cr);
  cairo_clip (cr);
  for (double x = -2 * HATCH_HALF; x < length + 2 * HATCH_HALF; x += HATCH)
    {
      cairo_move_to (cr, x, HATCH_HALF);
      cairo_line_to (cr, x + 2 * HATCH_HALF, -HATCH_HALF);
    }
  pp_palette_set (cr, &palette->fault, 1);
  cairo_set_line_width (cr, 1.2);
  cairo_stroke (cr);
  cairo_restore (cr);
  cairo_rectangle (cr, 0, -HATCH_HALF, length, 2 * HATCH_HALF);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
label_exposed (PpCanvas        *self,
               cairo_t         *cr,
               const PpPalette *palette,
               const PpExposed *exposed)
{
  PpPoint a = to_px (self, exposed->from.x, exposed->from.y);
  PpPoint b = to_px (self, exposed->to.x, exposed->to.y);

  draw_length (self, cr, palette, exposed->length,
               (PpPoint) { (a.x + b.x) / 2, fmax (a.y, b.y) + HATCH_HALF + 14 });
}

/* Not the hair's breadth that no finding speaks of. */
static gboolean
is_worth_showing (const PpPanel   *panel,
                  const PpExposed *exposed)
{
  return !exposed->beyond
         && exposed->length >= pp_panel_get_limit (panel, PP_LIMIT_EXPOSED_CAUTION);
}

/* The wire as it is drawn: from hole to hole. */
static void
draw_wire_that_shows (PpCanvas        *self,
                      cairo_t         *cr,
                      const PpPalette *palette)
{
  const PpCheck *check = pp_document_get_check (self->document);
  const PpPath *path;

  if (check == NULL || check->conceal == NULL || !check->conceal->has_wire
      || check->panel->placements->len == 0 || pp_document_get_panel (self->document)->wire == NULL)
    return;
  path = &check->conceal->lying;
  for (guint i = 0; i < path->n_exposed; i++)
    if (is_worth_showing (check->panel, &path->exposed[i]))
      draw_exposed (self, cr, palette, &path->exposed[i]);
  for (guint i = 0; i < path->n_exposed; i++)
    if (is_worth_showing (check->panel, &path->exposed[i]))
      label_exposed (self, cr, palette, &path->exposed[i]);
}

static void
draw_holes_that_show (PpCanvas        *self,
                      cairo_t         *cr,
                      const PpPalette *palette)
{
  const PpCheck *check = pp_document_get_check (self->document);

  if (check == NULL || check->conceal == NULL || check->panel->placements->len == 0)
    return;
  for (guint i = 0; i < MIN (check->conceal->n_holes, check->panel->holes->len); i++)
    {
      const PpHole *hole = pp_panel_hole (check->panel, i);
      PpPoint px = to_px (self, hole->x, hole->y);

      if (check->conceal->holes[i].share > 1 - PP_TIE)
        continue;
      cairo_new_sub_path (cr);
      cairo_arc (cr, px.x, px.y, hole->diameter / 2 * self->zoom.scale + 6, 0, 2 * G_PI);
      cairo_set_dash (cr, (double[]) { 4, 3 }, 2, 0);
      stroke_seen (cr, palette, &palette->note, 1.5);
      cairo_set_dash (cr, NULL, 0, 0);
    }
}

/* The figure alone, for there are many of them close together. */
static void
draw_height (PpCanvas        *self,
             cairo_t         *cr,
             const PpPalette *palette,
             double           mm,
             PpPoint          px)
{
  PpUnits units = pp_document_get_panel (self->document)->units;
  g_autofree char *text = pp_length_format_bare (mm, units);

  draw_slip (self, cr, palette, text, px);
}

static void
draw_heights (PpCanvas        *self,
              cairo_t         *cr,
              const PpPalette *palette)
{
  for (guint i = 0; i < self->scene->n_bodies; i++)
    {
      const PpBody *body = self->scene->bodies[i];
      double top = pp_document_get_top (self->document, body->placement->id);

      if (!isnan (top) && !pp_canvas_is_in_hand (self, body->placement->id))
        draw_height (self, cr, palette, top, to_px (self, body->centroid.x, body->centroid.y));
    }
}

static void
draw_dab (PpCanvas        *self,
          cairo_t         *cr,
          const PpPalette *palette,
          const PpDab     *dab)
{
  PpPoint px = to_px (self, dab->at.x, dab->at.y);

  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, fmax (dab->diameter / 2 * self->zoom.scale, 3), 0, 2 * G_PI);
  pp_palette_set (cr, &palette->paper, 0.6);
  cairo_fill_preserve (cr);
  stroke_seen (cr, palette, &palette->ink, 1.5);
}

/* A prop is a small square with a cross in it and its height. */
static void
draw_prop (PpCanvas        *self,
           cairo_t         *cr,
           const PpPalette *palette,
           const PpRest    *rest)
{
  PpPoint px = to_px (self, rest->prop.x, rest->prop.y);

  cairo_rectangle (cr, px.x - 6, px.y - 6, 12, 12);
  cairo_move_to (cr, px.x - 6, px.y - 6);
  cairo_line_to (cr, px.x + 6, px.y + 6);
  cairo_move_to (cr, px.x - 6, px.y + 6);
  cairo_line_to (cr, px.x + 6, px.y - 6);
  stroke_seen (cr, palette, &palette->caution, 1.5);
  draw_length (self, cr, palette, rest->prop_height, (PpPoint) { px.x, px.y + 20 });
}

static void
draw_glue (PpCanvas        *self,
           cairo_t         *cr,
           const PpPalette *palette)
{
  const PpCheck *check = pp_document_get_check (self->document);

  for (guint i = 0; check != NULL && i < check->n; i++)
    {
      if (pp_canvas_is_in_hand (self, pp_panel_placement (check->panel, i)->id))
        continue;
      for (guint d = 0; d < check->joints[i]->n_dabs; d++)
        draw_dab (self, cr, palette, &check->joints[i]->places[d]);
      if (check->rests[i]->has_prop)
        draw_prop (self, cr, palette, check->rests[i]);
    }
}

static gboolean
is_pin (PpCanvas *self,
        guint     index)
{
  return index < PINS || (int) index == self->lit;
}

/* A pin stands above its place, so that what is there can be seen and pressed; pins of one place
 * stand in a row. A small mark stands on its place. */
PpPoint
pp_canvas_get_pin (PpCanvas *self,
                   guint     index)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  const PpFinding *finding = g_ptr_array_index (findings, index);
  double size = pp_pin_get_size (gtk_widget_get_pango_context (GTK_WIDGET (self)));
  double width = gtk_widget_get_width (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  PpPoint px = to_px (self, finding->at.x, finding->at.y);
  guint before = 0;

  if (!is_pin (self, index))
    return px;
  for (guint i = 0; i < MIN (index, PINS); i++)
    {
      const PpFinding *other = g_ptr_array_index (findings, i);
      PpPoint there = to_px (self, other->at.x, other->at.y);

      before += pp_point_distance (there, px) < size * PIN_STEP;
    }
  px.x += before * size;
  px.y -= PIN_STEM * size;
  px.x = CLAMP (px.x, size / 2 + 2, fmax (width - size / 2 - 2, size));
  px.y = CLAMP (px.y, size / 2 + 2, fmax (height - size / 2 - 2, size));
  return px;
}

int
pp_canvas_hit_pin (PpCanvas *self,
                   PpPoint   px)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  double size = pp_pin_get_size (gtk_widget_get_pango_context (GTK_WIDGET (self)));

  for (guint i = 0; i < findings->len; i++)
    if (pp_point_distance (pp_canvas_get_pin (self, i), px)
        <= (is_pin (self, i) ? size : SMALL * size) / 2)
      return (int) i;
  return -1;
}

static void
draw_stem (PpCanvas        *self,
           cairo_t         *cr,
           const PpPalette *palette,
           const PpFinding *finding,
           PpPoint          pin)
{
  PpPoint px = to_px (self, finding->at.x, finding->at.y);

  cairo_new_sub_path (cr);
  cairo_move_to (cr, pin.x, pin.y);
  cairo_line_to (cr, px.x, px.y);
  stroke_seen (cr, palette, &palette->ink, 1);
  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, 2.5, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_fill (cr);
}

/* The shape of the level alone. */
static void
draw_small (PpCanvas        *self,
            cairo_t         *cr,
            const PpPalette *palette,
            const PpFinding *finding,
            double           size)
{
  PpPoint px = to_px (self, finding->at.x, finding->at.y);

  pp_pin_draw (cr, NULL, palette, finding->level, 0, px.x, px.y, SMALL * size, FALSE);
}

static void
draw_pins (PpCanvas        *self,
           cairo_t         *cr,
           const PpPalette *palette)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  PangoContext *pango = gtk_widget_get_pango_context (GTK_WIDGET (self));
  double size = pp_pin_get_size (pango);

  for (guint i = findings->len; i-- > 0;)
    if (!is_pin (self, i))
      draw_small (self, cr, palette, g_ptr_array_index (findings, i), size);
  for (guint i = findings->len; i-- > 0;)
    if (is_pin (self, i))
      draw_stem (self, cr, palette, g_ptr_array_index (findings, i), pp_canvas_get_pin (self, i));
  for (guint i = findings->len; i-- > 0;)
    if (is_pin (self, i))
      {
        const PpFinding *finding = g_ptr_array_index (findings, i);
        PpPoint px = pp_canvas_get_pin (self, i);

        pp_pin_draw (cr, pango, palette, finding->level, i + 1, px.x, px.y, size,
                     (int) i == self->lit);
      }
}

void
pp_canvas_draw_marks (PpCanvas        *self,
                      cairo_t         *cr,
                      const PpPalette *palette)
{
  if (!self->look.from_behind && self->look.sideways == 0)
    {
      draw_holes_that_show (self, cr, palette);
      draw_wire_that_shows (self, cr, palette);
    }
  if (self->look.glue)
    draw_glue (self, cr, palette);
  if (self->look.heights)
    draw_heights (self, cr, palette);
  draw_what_is_chosen (self, cr, palette);
  draw_pins (self, cr, palette);
}

void
pp_canvas_draw_frame (PpCanvas        *self,
                      cairo_t         *cr,
                      const PpPalette *palette)
{
  PpPoint a = to_px (self, self->drag.start.x, self->drag.start.y);
  PpPoint b = to_px (self, self->drag.now.x, self->drag.now.y);

  cairo_rectangle (cr, floor (fmin (a.x, b.x)) + 0.5, floor (fmin (a.y, b.y)) + 0.5,
                   floor (fabs (a.x - b.x)), floor (fabs (a.y - b.y)));
  pp_palette_set (cr, &palette->accent, 0.1);
  cairo_fill_preserve (cr);
  cairo_set_dash (cr, (double[]) { 6, 4 }, 2, 0);
  stroke_seen (cr, palette, &palette->accent, 1);
  cairo_set_dash (cr, NULL, 0, 0);
}

void
pp_canvas_draw_measured (PpCanvas        *self,
                         cairo_t         *cr,
                         const PpPalette *palette)
{
  PpPoint a = to_px (self, self->measured[0].x, self->measured[0].y);
  PpPoint b = to_px (self, self->measured[1].x, self->measured[1].y);
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
  stroke_seen (cr, palette, &palette->accent, 1.5);
  draw_length (self, cr, palette, pp_point_distance (self->measured[0], self->measured[1]),
               (PpPoint) { (a.x + b.x) / 2, (a.y + b.y) / 2 - 18 });
}
