/* canvas-answers.c: what the check knows: wire and holes that show, heights, glue.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/ink.h"
#include "panel/measure.h"

#define HATCH 5.0      /* px between the strokes of a hatching */
#define HATCH_HALF 6.0 /* px, half its breadth */

/* Slanting strokes across a stretch of wire, a double edge along it, and its length. */
static void
draw_exposed (PpCanvas        *self,
              cairo_t         *cr,
              const PpPalette *palette,
              const PpExposed *exposed)
{
  PpPoint a = pp_canvas_to_px (self, exposed->from.x, exposed->from.y);
  PpPoint b = pp_canvas_to_px (self, exposed->to.x, exposed->to.y);
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
               const PpExposed *exposed,
               GArray          *taken)
{
  PpPoint a = pp_canvas_to_px (self, exposed->from.x, exposed->from.y);
  PpPoint b = pp_canvas_to_px (self, exposed->to.x, exposed->to.y);
  PpPoint below = { (a.x + b.x) / 2, fmax (a.y, b.y) + HATCH_HALF + 14 };

  pp_canvas_draw_length_clear (self, cr, palette, exposed->length, below, taken);
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
                      const PpPalette *palette,
                      GArray          *taken)
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
      label_exposed (self, cr, palette, &path->exposed[i], taken);
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
      PpPoint px = pp_canvas_to_px (self, hole->x, hole->y);

      if (check->conceal->holes[i].share > 1 - PP_TIE)
        continue;
      cairo_new_sub_path (cr);
      cairo_arc (cr, px.x, px.y, hole->diameter / 2 * self->zoom.scale + 6, 0, 2 * G_PI);
      cairo_set_dash (cr, (double[]) { 4, 3 }, 2, 0);
      pp_ink_stroke (cr, palette, &palette->note, 1.5);
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

  pp_canvas_draw_slip (self, cr, palette, text, px);
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
        draw_height (self, cr, palette, top,
                     pp_canvas_to_px (self, body->centroid.x, body->centroid.y));
    }
}

static void
draw_dab (PpCanvas        *self,
          cairo_t         *cr,
          const PpPalette *palette,
          const PpDab     *dab)
{
  PpPoint px = pp_canvas_to_px (self, dab->at.x, dab->at.y);

  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, fmax (dab->diameter / 2 * self->zoom.scale, 3), 0, 2 * G_PI);
  pp_palette_set (cr, &palette->paper, 0.6);
  cairo_fill_preserve (cr);
  pp_ink_stroke (cr, palette, &palette->ink, 1.5);
}

/* A prop is a small square with a cross in it and its height. */
static void
draw_prop (PpCanvas        *self,
           cairo_t         *cr,
           const PpPalette *palette,
           const PpRest    *rest)
{
  PpPoint px = pp_canvas_to_px (self, rest->prop.x, rest->prop.y);

  cairo_rectangle (cr, px.x - 6, px.y - 6, 12, 12);
  cairo_move_to (cr, px.x - 6, px.y - 6);
  cairo_line_to (cr, px.x + 6, px.y + 6);
  cairo_move_to (cr, px.x - 6, px.y + 6);
  cairo_line_to (cr, px.x + 6, px.y - 6);
  pp_ink_stroke (cr, palette, &palette->caution, 1.5);
  pp_canvas_draw_length (self, cr, palette, rest->prop_height, (PpPoint) { px.x, px.y + 20 });
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

void
pp_canvas_draw_answers (PpCanvas        *self,
                        cairo_t         *cr,
                        const PpPalette *palette)
{
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (PpBox));

  pp_canvas_add_pin_boxes (self, taken);
  if (!self->look.from_behind && self->look.sideways == 0)
    {
      draw_holes_that_show (self, cr, palette);
      draw_wire_that_shows (self, cr, palette, taken);
    }
  if (self->look.groups)
    pp_canvas_draw_groups (self, cr, palette, taken);
  if (self->look.glue)
    draw_glue (self, cr, palette);
  if (self->look.heights)
    draw_heights (self, cr, palette);
}
