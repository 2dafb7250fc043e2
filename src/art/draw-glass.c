/* draw-glass.c: the background: glass, fused parts, holes, wire and knots.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Clear glass hardly shows but at its edge, where one looks through its whole breadth: a breath
 * of its colour, a dark green edge, and the light caught by the bevel just inside it.
 */
#include "config.h"

#include "art/colour.h"
#include "art/draw-private.h"

#define EDGE 1.4      /* mm */
#define BEVEL 0.7     /* mm, light line inside the edge */
#define RIM 2.6       /* mm, soft rim of a fused part */
#define RIM_STEPS 5
/* How much of what lies behind shows through glass of transmittance 1. */
#define SHEET_CLEAR 0.5
#define FUSED_CLEAR 0.6
#define TURNS 4       /* of the wire in a knot */

/* Clear glass #eef4f2 has the edge #5e8a7d; other glass darkens in the same proportion. */
static PpColour
get_edge_colour (PpColour glass)
{
  return (PpColour) { glass.red * 0x5e / 0xee, glass.green * 0x8a / 0xf4,
                      glass.blue * 0x7d / 0xf2 };
}

static void
stroke_inside (cairo_t         *cr,
               const PpOutline *outline,
               double           width)
{
  pp_draw_outline_path (cr, outline);
  cairo_set_line_width (cr, 2 * width);
  cairo_stroke (cr);
}

static void
clip_to (cairo_t         *cr,
         const PpOutline *outline)
{
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  pp_draw_outline_path (cr, outline);
  cairo_clip (cr);
}

/* Light from the upper left lies on the face as a faint slope. */
static void
paint_face (cairo_t  *cr,
            PpBox     box,
            PpColour  colour,
            double    alpha)
{
  cairo_pattern_t *slope = cairo_pattern_create_linear (box.x0, box.y0, box.x1, box.y1);

  pp_colour_add_stop (slope, 0, pp_colour_mix (colour, PP_COLOUR_WHITE, 0.45), alpha);
  pp_colour_add_stop (slope, 0.5, colour, alpha);
  pp_colour_add_stop (slope, 1, pp_colour_darken (colour, 0.04), alpha);
  cairo_set_source (cr, slope);
  cairo_pattern_destroy (slope);
  cairo_paint (cr);
}

static void
draw_sheet (cairo_t       *cr,
            const PpScene *scene,
            double         veil)
{
  const PpGlass *glass = &scene->panel->background->glass;
  const PpOutline *outline = scene->background_outline;
  PpColour colour = pp_colour_parse (glass->colour);

  cairo_save (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  clip_to (cr, outline);
  paint_face (cr, pp_outline_get_box (outline), colour,
              veil * (1 - SHEET_CLEAR * glass->transmittance));
  pp_colour_set (cr, PP_COLOUR_WHITE, 0.75);
  stroke_inside (cr, outline, EDGE + BEVEL);
  pp_colour_set (cr, get_edge_colour (colour), 0.35);
  stroke_inside (cr, outline, EDGE);
  stroke_inside (cr, outline, EDGE * 0.55);
  pp_colour_set (cr, get_edge_colour (colour), 0.9);
  stroke_inside (cr, outline, EDGE * 0.3);
  cairo_restore (cr);
}

static void
draw_pocket (cairo_t         *cr,
             const PpOutline *insert)
{
  cairo_save (cr);
  clip_to (cr, insert);
  pp_colour_set (cr, PP_COLOUR_WHITE, 0.2);
  cairo_paint (cr);
  pp_colour_set (cr, PP_COLOUR_WHITE, 0.35);
  stroke_inside (cr, insert, 0.4);
  cairo_restore (cr);
}

static void
draw_fused (cairo_t       *cr,
            const PpFused *fused,
            double         veil)
{
  PpColour colour = pp_colour_parse (fused->glass.colour);
  PpBox box = pp_outline_get_box (fused->outline);

  cairo_save (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  clip_to (cr, fused->outline);
  paint_face (cr, box, colour, veil * (1 - FUSED_CLEAR * fused->glass.transmittance));
  if (fused->has_pocket)
    draw_pocket (cr, fused->pocket.insert);
  pp_colour_set (cr, pp_colour_darken (colour, 0.4), 0.11);
  for (int i = RIM_STEPS; i >= 1; i--)
    stroke_inside (cr, fused->outline, RIM * i * i / (RIM_STEPS * RIM_STEPS));
  /* The rounded rim catches the light on its upper left. */
  cairo_translate (cr, 1, 1.3);
  pp_colour_set (cr, pp_colour_mix (colour, PP_COLOUR_WHITE, 0.7), 0.4);
  stroke_inside (cr, fused->outline, 0.3);
  cairo_restore (cr);
}

/* Thinner than it is, so that the maker still finds the stem. */
#define VEIL_OVER_STEM 0.6

void
pp_draw_pocket_glass (cairo_t       *cr,
                      const PpFused *fused,
                      const PpBody  *stem,
                      PpPoint        shift)
{
  cairo_save (cr);
  cairo_translate (cr, shift.x, shift.y);
  clip_to (cr, stem->outline);
  cairo_translate (cr, -shift.x, -shift.y);
  draw_fused (cr, fused, VEIL_OVER_STEM);
  cairo_restore (cr);
}

/* A drilled hole shows its ground wall as a ring; one still to drill is a broken line. */
static void
draw_hole (cairo_t      *cr,
           const PpHole *hole,
           PpColour      edge)
{
  const double dash[] = { 1.2, 0.9 };
  double radius = hole->diameter / 2;

  cairo_save (cr);
  cairo_arc (cr, hole->x, hole->y, radius, 0, 2 * G_PI);
  pp_colour_set (cr, PP_COLOUR_WHITE, 0.55);
  cairo_fill (cr);
  cairo_arc (cr, hole->x, hole->y, fmax (radius - 0.25, radius / 2), 0, 2 * G_PI);
  cairo_set_line_width (cr, 0.5);
  if (!hole->drilled)
    cairo_set_dash (cr, dash, G_N_ELEMENTS (dash), 0);
  pp_colour_set (cr, edge, 0.95);
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
pp_draw_glass (cairo_t       *cr,
               const PpScene *scene,
               double         veil)
{
  const PpPanel *panel = scene->panel;
  PpColour edge = get_edge_colour (pp_colour_parse (panel->background->glass.colour));

  draw_sheet (cr, scene, veil);
  for (guint i = 0; i < panel->fused->len; i++)
    draw_fused (cr, pp_panel_fused (panel, i), veil);
  for (guint i = 0; i < panel->holes->len; i++)
    draw_hole (cr, pp_panel_hole (panel, i), edge);
}

static const PpColour steel = { 0x5b / 255.0, 0x64 / 255.0, 0x6b / 255.0 };
static const PpColour steel_light = { 0xdd / 255.0, 0xe2 / 255.0, 0xe6 / 255.0 };

static void
stroke_wire (cairo_t *cr,
             double   diameter)
{
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  pp_colour_set (cr, steel, 1);
  cairo_set_line_width (cr, diameter);
  cairo_stroke_preserve (cr);
  cairo_translate (cr, -diameter * 0.1, -diameter * 0.16);
  pp_colour_set (cr, steel_light, 0.9);
  cairo_set_line_width (cr, diameter * 0.28);
  cairo_stroke (cr);
}

void
pp_draw_wire (cairo_t       *cr,
              const PpScene *scene)
{
  PpPoint from, to;

  if (scene->n_knots == 0)
    return;
  from = pp_scene_knot_place (scene, 0);
  to = pp_scene_knot_place (scene, 1);
  cairo_save (cr);
  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  stroke_wire (cr, scene->panel->wire->diameter);
  cairo_restore (cr);
}

/* The wire wound round itself: slanting turns side by side within the knot's disc. */
static void
draw_knot (cairo_t      *cr,
           const PpWire *wire,
           const PpHole *hole)
{
  double radius = (wire->knot_diameter - wire->diameter) / 2;

  cairo_save (cr);
  cairo_translate (cr, hole->x, hole->y);
  cairo_arc (cr, 0, 0, wire->knot_diameter / 2, 0, 2 * G_PI);
  cairo_clip (cr);
  for (int turn = 0; turn < TURNS; turn++)
    {
      double x = radius * (2.0 * turn / (TURNS - 1) - 1) * 0.72;
      double half = sqrt (fmax (radius * radius - x * x, 0)) * 0.92;

      cairo_save (cr);
      cairo_move_to (cr, x - radius * 0.16, half);
      cairo_curve_to (cr, x - radius * 0.34, half * 0.3, x + radius * 0.34, -half * 0.3,
                      x + radius * 0.16, -half);
      stroke_wire (cr, fmin (wire->diameter, radius * 0.45));
      cairo_restore (cr);
    }
  cairo_restore (cr);
}

void
pp_draw_knots (cairo_t       *cr,
               const PpScene *scene)
{
  for (guint i = 0; i < scene->n_knots; i++)
    draw_knot (cr, scene->panel->wire, pp_scene_knot_hole (scene, i));
}
