/* map.c: the panel drawn to scale on part of a page, as it lies on the bench or from behind.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/map.h"

#include "art/draw.h"
#include "panel/measure.h"
#include "sheet/marks.h"
#include "sheet/text.h"

#define RULER_SIZE 9.0 /* pt */
#define HOLE_LEAST 0.6
#define LANDING 1.2     /* mm, how far a leader comes onto its piece */
#define LANDING_STEP 0.3

PpBox
pp_map_get_extent (const PpScene *scene)
{
  PpBox box = pp_outline_get_box (scene->background_outline);

  for (guint i = 0; i < scene->n_bodies; i++)
    box = pp_box_union (box, scene->bodies[i]->box);
  return box;
}

PpMap
pp_map_fit (const PpScene *scene,
            PpBox          area,
            gboolean       with_rulers)
{
  PpMap self = { .box = pp_map_get_extent (scene) };
  double width = pp_box_width (self.box);
  double height = pp_box_height (self.box);
  double left;

  if (with_rulers)
    {
      area.x0 += PP_RULER;
      area.y0 += PP_RULER;
    }
  self.scale = fmin (fmax (pp_box_width (area), 1) / width,
                     fmax (pp_box_height (area), 1) / height);
  self.scale = fmin (self.scale, 1);
  left = (area.x0 + area.x1 - width * self.scale) / 2;
  self.place = (PpBox) { left, area.y0, left + width * self.scale, area.y0 + height * self.scale };
  return self;
}

PpPoint
pp_map_to_page (const PpMap *self,
                PpPoint      in_panel)
{
  double x = (in_panel.x - self->box.x0) * self->scale;

  return (PpPoint) { self->is_mirrored ? self->place.x1 - x : self->place.x0 + x,
                     self->place.y0 + (in_panel.y - self->box.y0) * self->scale };
}

void
pp_map_apply (const PpMap *self,
              cairo_t     *cr)
{
  cairo_translate (cr, self->is_mirrored ? self->place.x1 : self->place.x0, self->place.y0);
  cairo_scale (cr, self->is_mirrored ? -self->scale : self->scale, self->scale);
  cairo_translate (cr, -self->box.x0, -self->box.y0);
}

void
pp_map_add_outline (const PpMap     *self,
                    cairo_t         *cr,
                    const PpOutline *outline)
{
  cairo_save (cr);
  pp_map_apply (self, cr);
  pp_draw_outline_path (cr, outline);
  cairo_restore (cr);
}

/* The least step of a maker's ruler whose figures stand clear of one another. */
static double
get_ruler_step (PpUnits units,
                double  scale)
{
  static const double mm[] = { 10, 20, 50, 100, 200, 500, 1000 };
  static const double inches[] = { 1, 2, 4, 6, 12, 24, 48 };
  const double *steps = units == PP_UNITS_INCH ? inches : mm;
  double unit = units == PP_UNITS_INCH ? PP_MM_PER_INCH : 1;

  for (guint i = 0; i < G_N_ELEMENTS (mm); i++)
    if (steps[i] * unit * scale >= 13)
      return steps[i] * unit;
  return steps[G_N_ELEMENTS (mm) - 1] * unit;
}

static void
draw_ticks (PpBook  *book,
            PpPoint  start,
            double   length,
            double   step,
            gboolean is_across,
            double   reach)
{
  cairo_t *cr = book->cr;

  for (int i = 0; i * step <= length + PP_TIE; i++)
    {
      double x = start.x + (is_across ? i * step : 0);
      double y = start.y + (is_across ? 0 : i * step);

      cairo_move_to (cr, x, y);
      cairo_line_to (cr, is_across ? x : x - reach, is_across ? y - reach : y);
    }
  cairo_stroke (cr);
}

static void
draw_ruler_figures (PpBook  *book,
                    PpPoint  start,
                    double   length,
                    double   step,
                    double   step_mm,
                    gboolean is_across)
{
  const PpTextStyle style = { .size = RULER_SIZE, .ink = PP_INK_SOFT };

  for (int i = 0; i * step <= length + PP_TIE; i++)
    {
      g_autofree char *text = pp_length_format_bare (i * step_mm, book->job->units);
      double x, y, width;

      /* Both rulers begin at one corner: the upper one says 0 for the two. */
      if (i == 0 && !is_across)
        continue;
      pp_text_measure (book, &style, text, PP_NO_WIDTH, &width, NULL);
      x = is_across ? start.x + i * step : start.x - 2.6 - width / 2;
      y = is_across ? start.y - 4.2 : start.y + i * step;
      pp_text_draw_centred (book, &style, text, (PpPoint) { x, y });
    }
}

void
pp_map_draw_rulers (const PpMap *self,
                    PpBook      *book)
{
  PpBox glass = pp_background_get_box (book->panel->background);
  PpPoint corner = pp_map_to_page (self, (PpPoint) { glass.x0, glass.y0 });
  double step = get_ruler_step (book->job->units, self->scale);
  double width = pp_box_width (glass) * self->scale;
  double height = pp_box_height (glass) * self->scale;
  PpPoint top = { corner.x, self->place.y0 - 0.8 };
  PpPoint left = { self->place.x0 - 0.8, corner.y };

  pp_book_set_ink (book, PP_INK_SOFT);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  draw_ticks (book, top, width, step * self->scale, TRUE, 1.8);
  draw_ticks (book, top, width, step * self->scale / 2, TRUE, 1);
  draw_ticks (book, left, height, step * self->scale, FALSE, 1.8);
  draw_ticks (book, left, height, step * self->scale / 2, FALSE, 1);
  draw_ruler_figures (book, top, width, step * self->scale, step, TRUE);
  draw_ruler_figures (book, left, height, step * self->scale, step, FALSE);
}

static void
draw_fused (const PpMap   *self,
            PpBook        *book,
            const PpFused *fused)
{
  cairo_t *cr = book->cr;

  pp_map_add_outline (self, cr, fused->outline);
  cairo_save (cr);
  cairo_clip_preserve (cr);
  if (book->job->mono)
    {
      cairo_new_path (cr);
      pp_book_set_ink (book, PP_INK_DOWN);
      cairo_set_line_width (cr, 0.13);
      pp_ink_hatch (cr, 2.2, 90);
    }
  else
    {
      pp_colour_set (cr, pp_colour_parse (fused->glass.colour), 0.18);
      cairo_paint (cr);
    }
  cairo_restore (cr);
  cairo_new_path (cr);
  pp_map_add_outline (self, cr, fused->outline);
  pp_book_set_ink (book, PP_INK_DOWN);
  cairo_set_line_width (cr, PP_LINE_MIDDLE);
  cairo_stroke (cr);
}

void
pp_map_draw_wire (const PpMap   *self,
                  PpBook        *book,
                  const PpScene *scene)
{
  const double dashes[] = { 1.6, 1.2 };
  PpPoint ends[2];

  if (scene->n_knots == 0)
    return;
  for (guint i = 0; i < 2; i++)
    ends[i] = pp_map_to_page (self, pp_scene_knot_place (scene, i));
  pp_book_set_ink (book, PP_INK_DOWN);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  cairo_set_dash (book->cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_move_to (book->cr, ends[0].x, ends[0].y);
  cairo_line_to (book->cr, ends[1].x, ends[1].y);
  cairo_stroke (book->cr);
  cairo_set_dash (book->cr, NULL, 0, 0);
}

void
pp_map_draw_glass (const PpMap   *self,
                   PpBook        *book,
                   const PpScene *scene)
{
  cairo_t *cr = book->cr;

  pp_map_add_outline (self, cr, scene->background_outline);
  pp_book_set_ink (book, PP_INK_GLASS);
  cairo_fill_preserve (cr);
  pp_book_set_ink (book, PP_INK_TEXT);
  cairo_set_line_width (cr, PP_LINE_STRONG);
  cairo_stroke (cr);
  for (guint i = 0; i < scene->n_parts; i++)
    draw_fused (self, book, scene->parts[i].fused);
  pp_book_set_ink (book, PP_INK_DOWN);
  cairo_set_line_width (cr, PP_LINE_THIN);
  pp_map_draw_wire (self, book, scene);
  for (guint i = 0; i < scene->panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (scene->panel, i);
      PpPoint at = pp_map_to_page (self, (PpPoint) { hole->x, hole->y });

      cairo_new_sub_path (cr);
      cairo_arc (cr, at.x, at.y, fmax (hole->diameter / 2 * self->scale, HOLE_LEAST), 0, 2 * G_PI);
      cairo_stroke (cr);
    }
}

/* A pale shade of the piece's own colour tells it from its neighbours where there is colour. */
static void
fill_body (PpBook       *book,
           const PpBody *body,
           PpMapLook     look)
{
  PpColour own = pp_colour_parse (body->piece->colour);

  if (book->job->mono || look == PP_LOOK_DOWN || look == PP_LOOK_PLAIN)
    pp_book_set_ink (book, PP_INK_PAPER);
  else
    pp_colour_set (book->cr, pp_colour_mix (own, PP_COLOUR_WHITE, 0.62), 1);
  cairo_fill_preserve (book->cr);
}

static gboolean
is_hatched (const PpBody *body)
{
  return body->piece->kind == PP_KIND_LEAF || body->piece->kind == PP_KIND_STEM;
}

void
pp_map_draw_body (const PpMap  *self,
                  PpBook       *book,
                  const PpBody *body,
                  PpMapLook     look)
{
  static const double widths[] = { PP_LINE_THIN, PP_LINE_HEAVY, PP_LINE_MIDDLE, PP_LINE_MIDDLE };
  cairo_t *cr = book->cr;

  pp_map_add_outline (self, cr, body->outline);
  fill_body (book, body, look);
  if (look == PP_LOOK_RECORD && book->job->mono && is_hatched (body))
    {
      cairo_save (cr);
      cairo_clip (cr);
      pp_book_set_ink (book, PP_INK_TEXT);
      cairo_set_line_width (cr, 0.13);
      pp_ink_hatch (cr, 1.2, 45);
      cairo_restore (cr);
      pp_map_add_outline (self, cr, body->outline);
    }
  pp_book_set_ink (book, look == PP_LOOK_DOWN ? PP_INK_DOWN : PP_INK_TEXT);
  cairo_set_line_width (cr, widths[look]);
  cairo_stroke (cr);
}

void
pp_map_draw_knot (const PpMap  *self,
                  PpBook       *book,
                  const PpHole *hole,
                  PpMapLook     look)
{
  pp_knot_draw (book, pp_map_to_page (self, (PpPoint) { hole->x, hole->y }),
                book->panel->wire->knot_diameter / 2 * self->scale, look == PP_LOOK_NOW,
                look == PP_LOOK_DOWN ? PP_INK_DOWN : PP_INK_TEXT);
}

static PpPoint
to_panel (const PpMap *self,
          PpPoint      on_page)
{
  double x = self->is_mirrored ? self->place.x1 - on_page.x : on_page.x - self->place.x0;

  return (PpPoint) { self->box.x0 + x / self->scale,
                     self->box.y0 + (on_page.y - self->place.y0) / self->scale };
}

static gboolean
is_on (const PpMap   *self,
       const PpScene *scene,
       guint          job,
       PpPoint        on_page)
{
  PpPoint p = to_panel (self, on_page);

  if (job >= scene->n_knots)
    return pp_cells_contain (scene->bodies[job - scene->n_knots]->cells, pp_cell_at (p.x),
                             pp_cell_at (p.y));
  return pp_point_distance (p, pp_scene_knot_place (scene, job))
         <= scene->panel->wire->knot_diameter / 2;
}

/* Where the way from the number to the anchor comes onto the piece, and a little farther. */
static PpPoint
find_landing (const PpMap        *self,
              const PpScene      *scene,
              guint               job,
              const PpSheetLabel *label)
{
  double length = pp_point_distance (label->at, label->anchor);

  for (double way = LANDING_STEP; way < length; way += LANDING_STEP)
    {
      double share = fmin (1, (way + LANDING) / length);
      PpPoint p = { label->at.x + (label->anchor.x - label->at.x) * way / length,
                    label->at.y + (label->anchor.y - label->at.y) * way / length };

      if (is_on (self, scene, job, p))
        return (PpPoint) { label->at.x + (label->anchor.x - label->at.x) * share,
                           label->at.y + (label->anchor.y - label->at.y) * share };
    }
  return label->anchor;
}

void
pp_map_draw_leader (const PpMap        *self,
                    PpBook             *book,
                    const PpScene      *scene,
                    guint               job,
                    const PpSheetLabel *label)
{
  PpPoint to;

  if (pp_point_distance (label->at, label->anchor) <= 0 || is_on (self, scene, job, label->at))
    return;
  to = find_landing (self, scene, job, label);
  pp_book_set_ink (book, PP_INK_TEXT);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  cairo_move_to (book->cr, label->at.x, label->at.y);
  cairo_line_to (book->cr, to.x, to.y);
  cairo_stroke (book->cr);
  cairo_arc (book->cr, to.x, to.y, 0.55, 0, 2 * G_PI);
  cairo_fill (book->cr);
}
