/* draw-plain.c: a piece that has no art: its outline in its colour, a rim, a few lines by its kind.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light and dark are symmetric in the piece, as it may be turned and mirrored.
 */
#include "config.h"

#include "art/colour.h"
#include "art/draw-private.h"

#define RIM 0.7          /* mm, at the most */
#define RIM_SHARE 0.04   /* of the piece's smaller side */
#define SIDE_VEINS 5     /* a side */
#define PETALS 8
#define LEAST_LINE 0.15  /* mm */

typedef struct
{
  cairo_t  *cr;
  PpPoint   middle;
  double    across; /* smaller side */
  double    along;  /* larger side */
  gboolean  upright;
  PpColour  dark;
  PpColour  light;
} Plain;

/* To a frame, mm, whose y runs along the piece and x across it, origin in its middle. */
static void
enter_own_axes (const Plain *self)
{
  cairo_save (self->cr);
  cairo_translate (self->cr, self->middle.x, self->middle.y);
  if (!self->upright)
    cairo_rotate (self->cr, G_PI / 2);
}

static void
stroke_line (const Plain *self,
             PpColour     colour,
             double       width,
             double       alpha)
{
  cairo_set_line_width (self->cr, fmax (width, LEAST_LINE));
  cairo_set_line_cap (self->cr, CAIRO_LINE_CAP_ROUND);
  pp_colour_set (self->cr, colour, alpha);
  cairo_stroke (self->cr);
}

static void
draw_leaf_lines (const Plain *self)
{
  double half = self->along / 2;
  double reach = self->across / 2;

  enter_own_axes (self);
  for (int side = -1; side <= 1; side += 2)
    for (int i = 0; i < SIDE_VEINS; i++)
      {
        double y = half * (0.75 - 1.35 * i / (SIDE_VEINS - 1));

        cairo_move_to (self->cr, 0, y);
        cairo_curve_to (self->cr, side * reach * 0.35, y - reach * 0.3, side * reach * 0.7,
                        y - reach * 0.55, side * reach * 0.95, y - reach * 0.95);
      }
  stroke_line (self, self->dark, self->across * 0.012, 0.35);
  cairo_move_to (self->cr, 0, half);
  cairo_line_to (self->cr, 0, -half * 0.92);
  stroke_line (self, self->light, self->across * 0.03, 0.75);
  cairo_restore (self->cr);
}

static void
draw_petal_lines (const Plain *self)
{
  double reach = self->along / 2;

  cairo_save (self->cr);
  cairo_translate (self->cr, self->middle.x, self->middle.y);
  for (int i = 0; i < PETALS; i++)
    {
      cairo_move_to (self->cr, 0, -reach * 0.18);
      cairo_line_to (self->cr, 0, -reach * 0.72);
      cairo_rotate (self->cr, 2 * G_PI / PETALS);
    }
  stroke_line (self, self->dark, self->across * 0.012, 0.4);
  cairo_arc (self->cr, 0, 0, self->across * 0.12, 0, 2 * G_PI);
  pp_colour_set (self->cr, self->dark, 0.55);
  cairo_fill_preserve (self->cr);
  stroke_line (self, self->light, self->across * 0.012, 0.6);
  cairo_restore (self->cr);
}

static void
draw_bud_lines (const Plain *self)
{
  double half = self->along / 2;
  double reach = self->across / 2;

  enter_own_axes (self);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (self->cr, 0, half * 0.9);
      cairo_curve_to (self->cr, side * reach * 0.7, half * 0.4, side * reach * 0.6, -half * 0.3,
                      side * reach * 0.1, -half * 0.9);
    }
  stroke_line (self, self->dark, self->across * 0.025, 0.45);
  cairo_restore (self->cr);
}

static void
draw_stem_light (const Plain *self)
{
  enter_own_axes (self);
  cairo_move_to (self->cr, 0, -self->along / 2);
  cairo_line_to (self->cr, 0, self->along / 2);
  stroke_line (self, self->light, self->across * 0.22, 0.55);
  cairo_restore (self->cr);
}

static void
draw_lines (const Plain *self,
            PpKind       kind)
{
  switch (kind)
    {
    case PP_KIND_FLOWER:
      draw_petal_lines (self);
      break;
    case PP_KIND_BUD:
      draw_bud_lines (self);
      break;
    case PP_KIND_LEAF:
      draw_leaf_lines (self);
      break;
    case PP_KIND_STEM:
      draw_stem_light (self);
      break;
    case PP_KIND_FILLER:
      break;
    }
}

/* Lighter in the middle, as thick glass is. */
static void
fill_body (const Plain *self,
           PpColour     colour,
           double       alpha)
{
  cairo_pattern_t *gradient
    = cairo_pattern_create_radial (self->middle.x, self->middle.y, 0, self->middle.x,
                                   self->middle.y, fmax (self->along / 2, LEAST_LINE));

  pp_colour_add_stop (gradient, 0, pp_colour_mix (colour, PP_COLOUR_WHITE, 0.16), alpha);
  pp_colour_add_stop (gradient, 0.75, colour, alpha);
  pp_colour_add_stop (gradient, 1, pp_colour_darken (colour, 0.12), alpha);
  cairo_set_source (self->cr, gradient);
  cairo_pattern_destroy (gradient);
  cairo_fill_preserve (self->cr);
}

void
pp_draw_plain (cairo_t       *cr,
               const PpPiece *piece)
{
  PpColour colour = pp_colour_parse (piece->colour);
  PpBox box = pp_outline_get_box (piece->outline);
  double width = pp_box_width (box);
  double height = pp_box_height (box);
  Plain self = { .cr = cr,
                 .middle = pp_box_middle (box),
                 .across = fmin (width, height),
                 .along = fmax (width, height),
                 .upright = height >= width,
                 .dark = pp_colour_darken (colour, 0.45),
                 .light = pp_colour_mix (colour, PP_COLOUR_WHITE, 0.55) };
  double rim = fmin (RIM, RIM_SHARE * self.across);

  cairo_save (cr);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  pp_draw_outline_path (cr, piece->outline);
  fill_body (&self, colour, 1 - 0.6 * piece->transmittance);
  cairo_clip (cr);
  draw_lines (&self, piece->kind);
  /* Twice as wide as it shows: the clip keeps it inside. */
  pp_draw_outline_path (cr, piece->outline);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, 2 * rim);
  pp_colour_set (cr, self.dark, 0.8);
  cairo_stroke (cr);
  cairo_restore (cr);
}
