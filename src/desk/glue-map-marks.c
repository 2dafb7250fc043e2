/* glue-map-marks.c: the numbers of steps, and the distances of the piece in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/glue-map-private.h"

#include "art/hit.h"
#include "panel/measure.h"
#include "sheet/numbers.h"
#include "sheet/words.h"

#include <math.h>

#define BADGE_EM 1.75  /* across a number */
#define FIGURE_SCALE 1.2
#define GAP 4.0        /* px */
#define APART 2.0      /* px between numbers */

/* px */
static void
place_numbers (PpGlueMap     *self,
               const PpScene *scene)
{
  guint n = self->plan->n_steps;
  double size = BADGE_EM * pp_em_of (GTK_WIDGET (self));
  g_autofree PpPoint *anchors = pp_anchors_new (scene, NULL);
  PpBox bounds = { 0, 0, gtk_widget_get_width (GTK_WIDGET (self)),
                   gtk_widget_get_height (GTK_WIDGET (self)) };

  self->labels = g_new0 (PpSheetLabel, MAX (n, 1));
  for (guint i = 0; i < n; i++)
    {
      guint job = self->plan->steps[i].job;
      PpPoint anchor;

      if (job < scene->n_knots)
        anchor = pp_scene_knot_place (scene, job);
      else
        anchor = anchors[job - scene->n_knots];
      self->labels[i] = (PpSheetLabel) { .anchor = pp_glue_map_to_px (self, anchor),
                                         .width = i < 99 ? size : 1.3 * size, .height = size };
    }
  pp_labels_place (self->labels, n, bounds, NULL, 0, APART);
}

static gboolean
stands_at (const PpSheetLabel *label,
           PpPoint             px)
{
  return fabs (px.x - label->at.x) <= label->width / 2
         && fabs (px.y - label->at.y) <= label->height / 2;
}

static void
draw_leader (cairo_t            *cr,
             const PpPalette    *palette,
             const PpSheetLabel *label)
{
  if (stands_at (label, label->anchor))
    return;
  cairo_move_to (cr, label->at.x, label->at.y);
  cairo_line_to (cr, label->anchor.x, label->anchor.y);
  pp_palette_set (cr, &palette->paper, 0.9);
  cairo_set_line_width (cr, 3.5);
  cairo_stroke_preserve (cr);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
  cairo_arc (cr, label->anchor.x, label->anchor.y, 2.5, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
draw_badge (cairo_t            *cr,
            const PpPalette    *palette,
            PangoLayout        *layout,
            const PpSheetLabel *label,
            gboolean            is_lit)
{
  double radius = label->height / 2;
  double inner = label->width / 2 - radius;
  int width, height;

  cairo_new_path (cr);
  cairo_arc (cr, label->at.x - inner, label->at.y, radius - 1, G_PI / 2, 3 * G_PI / 2);
  cairo_arc (cr, label->at.x + inner, label->at.y, radius - 1, -G_PI / 2, G_PI / 2);
  cairo_close_path (cr);
  pp_palette_set (cr, is_lit ? &palette->accent : &palette->paper, 1);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, is_lit ? &palette->paper : &palette->ink, 1);
  cairo_set_line_width (cr, is_lit ? 2.5 : 1.2);
  cairo_stroke (cr);
  pango_layout_get_pixel_size (layout, &width, &height);
  pp_palette_set (cr, is_lit ? &palette->paper : &palette->ink, 1);
  cairo_move_to (cr, round (label->at.x - width / 2.0), round (label->at.y - height / 2.0));
  pango_cairo_show_layout (cr, layout);
}

static PangoLayout *
make_layout (PpGlueMap *self,
             double     scale)
{
  PangoLayout *layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), NULL);
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_weight_new (PANGO_WEIGHT_SEMIBOLD));
  pango_attr_list_insert (attributes, pango_attr_scale_new (scale));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  return layout;
}

void
pp_glue_map_draw_numbers (PpGlueMap     *self,
                          cairo_t       *cr,
                          const PpScene *scene)
{
  PpPalette palette = pp_palette_of (GTK_WIDGET (self));
  g_autoptr (PangoLayout) layout = make_layout (self, 1);

  if (self->labels == NULL)
    place_numbers (self, scene);
  for (guint i = 0; i < self->plan->n_steps; i++)
    draw_leader (cr, &palette, &self->labels[i]);
  for (guint i = 0; i <= self->plan->n_steps; i++)
    {
      /* the lit one last, over the others */
      guint step = i < self->plan->n_steps ? i : (guint) self->step;
      g_autofree char *number = g_strdup_printf ("%u", step + 1);

      if ((int) step == self->step && i < self->plan->n_steps)
        continue;
      if (step >= self->plan->n_steps)
        break;
      pango_layout_set_text (layout, number, -1);
      draw_badge (cr, &palette, layout, &self->labels[step], (int) step == self->step);
    }
}

static void
draw_ray (cairo_t         *cr,
          const PpPalette *palette,
          PpPoint          from,
          PpPoint          to)
{
  const double dashes[] = { 7, 5 };

  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  pp_palette_set (cr, &palette->paper, 0.85);
  cairo_set_line_width (cr, 5);
  cairo_stroke_preserve (cr);
  pp_palette_set (cr, &palette->accent, 1);
  cairo_set_line_width (cr, 2);
  cairo_set_dash (cr, dashes, 2, 0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
draw_dot (cairo_t         *cr,
          const PpPalette *palette,
          PpPoint          at)
{
  cairo_arc (cr, at.x, at.y, 7, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill (cr);
  cairo_arc (cr, at.x, at.y, 4.5, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->accent, 1);
  cairo_fill (cr);
}

/* A place with its two distances, and the px where their figures stand. */
typedef struct
{
  PpPoint at;   /* px */
  char   *left; /* "120 mm" */
  char   *top;
  double  left_y;
  double  top_x;
} Mark;

static Mark
mark_of (PpGlueMap *self,
         PpPoint    mm)
{
  const PpPanel *panel = self->panel;
  PpBox glass = pp_background_get_box (panel->background);
  Mark mark = { .at = pp_glue_map_to_px (self, mm) };

  mark.left = pp_length_format (mm.x - glass.x0, panel->units);
  mark.top = pp_length_format (mm.y - glass.y0, panel->units);
  mark.left_y = mark.at.y;
  mark.top_x = mark.at.x;
  return mark;
}

static void
draw_text (cairo_t         *cr,
           const PpPalette *palette,
           PangoLayout     *layout,
           double           x,
           double           y)
{
  pp_palette_set (cr, &palette->ink, 1);
  cairo_move_to (cr, round (x), round (y));
  pango_cairo_show_layout (cr, layout);
}

static void
draw_left (PpGlueMap       *self,
           cairo_t         *cr,
           const PpPalette *palette,
           PangoLayout     *layout,
           const Mark      *mark)
{
  double edge = pp_glue_map_to_px (self, (PpPoint) { pp_background_get_box (
      self->panel->background).x0, 0 }).x;
  int width, height;

  pango_layout_set_text (layout, mark->left, -1);
  pango_layout_get_pixel_size (layout, &width, &height);
  draw_ray (cr, palette, (PpPoint) { edge, mark->at.y }, mark->at);
  draw_text (cr, palette, layout, fmax (edge - width - 2 * GAP, 0), mark->left_y - height / 2.0);
}

static void
draw_top (PpGlueMap       *self,
          cairo_t         *cr,
          const PpPalette *palette,
          PangoLayout     *layout,
          const Mark      *mark)
{
  double edge = pp_glue_map_to_px (self, (PpPoint) { 0, pp_background_get_box (
      self->panel->background).y0 }).y;
  int width, height;

  pango_layout_set_text (layout, mark->top, -1);
  pango_layout_get_pixel_size (layout, &width, &height);
  draw_ray (cr, palette, (PpPoint) { mark->at.x, edge }, mark->at);
  draw_text (cr, palette, layout,
             CLAMP (mark->top_x - width / 2.0, 0,
                    MAX (0, gtk_widget_get_width (GTK_WIDGET (self)) - width)),
             fmax (edge - height - GAP, 0));
}

/* Two figures that would lie on one another step aside. */
static void
part (double *a,
      double *b,
      double  room)
{
  double lack = room - fabs (*a - *b);
  double way = *a <= *b ? -1 : 1;

  if (lack <= 0)
    return;
  *a += way * lack / 2;
  *b -= way * lack / 2;
}

static void
part_marks (Mark        *marks,
            PangoLayout *layout)
{
  int widths[2], height;

  for (guint i = 0; i < 2; i++)
    {
      pango_layout_set_text (layout, marks[i].top, -1);
      pango_layout_get_pixel_size (layout, &widths[i], &height);
    }
  part (&marks[0].left_y, &marks[1].left_y, height);
  part (&marks[0].top_x, &marks[1].top_x, (widths[0] + widths[1]) / 2.0 + 5 * GAP);
}

void
pp_glue_map_draw_figures (PpGlueMap     *self,
                          cairo_t       *cr,
                          const PpScene *scene)
{
  PpPalette palette = pp_palette_of (GTK_WIDGET (self));
  g_autoptr (PangoLayout) layout = make_layout (self, FIGURE_SCALE);
  guint job = self->plan->steps[self->step].job;
  Mark marks[2];
  guint n = 1;

  if (job < scene->n_knots)
    marks[0] = mark_of (self, pp_scene_knot_place (scene, job));
  else
    {
      PpLie lie = pp_lie_of (scene->bodies[job - scene->n_knots]);

      n = lie.is_long ? 2 : 1;
      marks[0] = mark_of (self, lie.is_long ? lie.tip : lie.middle);
      if (lie.is_long)
        marks[1] = mark_of (self, lie.base);
    }
  if (n == 2)
    part_marks (marks, layout);
  for (guint i = 0; i < n; i++)
    {
      draw_left (self, cr, &palette, layout, &marks[i]);
      draw_top (self, cr, &palette, layout, &marks[i]);
    }
  for (guint i = 0; i < n; i++)
    {
      draw_dot (cr, &palette, marks[i].at);
      g_free (marks[i].left);
      g_free (marks[i].top);
    }
}

static int
find_step_of_job (const PpPlan *plan,
                  guint         job)
{
  for (guint i = 0; i < plan->n_steps; i++)
    if (plan->steps[i].job == job)
      return (int) i;
  return PP_NO_STEP;
}

int
pp_glue_map_find_step (PpGlueMap *self,
                       PpPoint    px)
{
  PpScene *scene = pp_document_get_scene (self->document);
  PpPoint mm = { (px.x - self->at.x) / self->scale, (px.y - self->at.y) / self->scale };
  int body;

  for (guint i = 0; self->labels != NULL && i < self->plan->n_steps; i++)
    if (stands_at (&self->labels[i], px))
      return (int) i;
  body = pp_hit_body (scene, mm, 0);
  return body != PP_NO_INDEX ? find_step_of_job (self->plan, scene->n_knots + (guint) body)
                             : PP_NO_STEP;
}
