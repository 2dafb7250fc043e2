/* pattern.c: the panel full size, as the tiles of the pattern show it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/pattern.h"

#include "panel/i18n.h"
#include "sheet/ink.h"
#include "sheet/labels.h"
#include "sheet/signs.h"

#include <math.h>

#define NUMBER_SIZE 16.0 /* pt */
#define SMALL_SIZE 11.0  /* pt, of numbers on small pieces */
#define SMALL 16.0       /* mm: a piece this small has them */
#define AROUND 3.0       /* mm of paper around the outermost line */
#define CROSS 1.5        /* mm, half a cross */

PpBox
pp_pattern_get_box (const PpPattern *self)
{
  return pp_box_grow (self->what.box, -AROUND);
}

PpMap
pp_pattern_get_map (const PpPattern *self,
                    PpPoint          shift)
{
  PpBox box = pp_pattern_get_box (self);

  return (PpMap) { .box = box, .place = pp_box_move (box, shift), .scale = 1,
                   .is_mirrored = self->book->job->behind };
}

/* Tiles lie where the paper shows them: from behind, in the mirrored frame. */
static PpBox
to_panel_box (const PpPattern *self,
              PpBox            window)
{
  double sum = self->what.box.x0 + self->what.box.x1;

  if (!self->book->job->behind)
    return window;
  return (PpBox) { sum - window.x1, window.y0, sum - window.x0, window.y1 };
}

static gboolean
is_blank (PpBox    window,
          gpointer data)
{
  const PpPattern *self = data;
  const PpScene *scene = self->book->job->check->scene;
  PpBox seen = to_panel_box (self, window);
  g_autoptr (PpRegion) region = pp_region_new_box (seen);

  if (pp_region_overlap (region, scene->background) > 0)
    return FALSE;
  for (guint i = 0; i < scene->n_bodies; i++)
    if (pp_box_meets (seen, scene->bodies[i]->box)
        && pp_region_overlap (region, scene->bodies[i]->region) > 0)
      return FALSE;
  return TRUE;
}

/* No outline goes through it. */
static gboolean
is_clear (PpBox    box,
          gpointer data)
{
  const PpPattern *self = data;
  const PpScene *scene = self->book->job->check->scene;
  PpBox seen = to_panel_box (self, box);
  g_autoptr (PpRegion) region = pp_region_new_box (seen);
  double least = PP_TIE;
  double most = pp_box_width (seen) * pp_box_height (seen) - PP_TIE;
  double glass = pp_region_overlap (region, scene->background);

  if (glass > least && glass < most)
    return FALSE;
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      double common = pp_box_meets (seen, scene->bodies[i]->box)
                      ? pp_region_overlap (region, scene->bodies[i]->region) : 0;

      if (common > least && common < most)
        return FALSE;
    }
  return TRUE;
}

static void
draw_crosses (PpBook      *book,
              const PpMap *map)
{
  PpBox glass = pp_background_get_box (book->panel->background);
  double step = book->job->units == PP_UNITS_INCH ? 2 * PP_MM_PER_INCH : 50;
  cairo_t *cr = book->cr;

  for (double y = glass.y0 + step; y < glass.y1; y += step)
    for (double x = glass.x0 + step; x < glass.x1; x += step)
      {
        PpPoint at = pp_map_to_page (map, (PpPoint) { x, y });

        cairo_move_to (cr, at.x - CROSS, at.y);
        cairo_line_to (cr, at.x + CROSS, at.y);
        cairo_move_to (cr, at.x, at.y - CROSS);
        cairo_line_to (cr, at.x, at.y + CROSS);
      }
  pp_book_set_ink (book, PP_INK_DOWN);
  cairo_set_line_width (cr, PP_LINE_THIN);
  cairo_stroke (cr);
}

/* Of `lower`, what `upper` lies over. */
static void
draw_hidden (PpBook       *book,
             const PpMap  *map,
             const PpBody *lower,
             const PpBody *upper)
{
  const double dashes[] = { 1.4, 1 };
  cairo_t *cr = book->cr;

  if (!pp_box_meets (lower->box, upper->box))
    return;
  cairo_save (cr);
  pp_map_add_outline (map, cr, upper->outline);
  cairo_clip (cr);
  pp_map_add_outline (map, cr, lower->outline);
  pp_book_set_ink (book, PP_INK_SOFT);
  cairo_set_line_width (cr, PP_LINE_THIN);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* Bodies that are seen in the window in the order in which they hide one another. */
static GPtrArray *
find_bodies (const PpPattern *self,
             PpBox            seen)
{
  const PpScene *scene = self->book->job->check->scene;
  GPtrArray *bodies = g_ptr_array_new ();

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      PpBody *body = scene->bodies[self->book->job->behind ? scene->n_bodies - 1 - i : i];

      if (pp_box_meets (seen, body->box))
        g_ptr_array_add (bodies, body);
    }
  return bodies;
}

static void
draw_bodies (const PpPattern *self,
             const PpMap     *map,
             PpBox            seen)
{
  g_autoptr (GPtrArray) bodies = find_bodies (self, seen);

  for (guint i = 0; i < bodies->len; i++)
    pp_map_draw_body (map, self->book, g_ptr_array_index (bodies, i), PP_LOOK_PLAIN);
  for (guint i = 0; i < bodies->len; i++)
    for (guint upper = i + 1; upper < bodies->len; upper++)
      draw_hidden (self->book, map, g_ptr_array_index (bodies, i),
                   g_ptr_array_index (bodies, upper));
}

static void
draw_knots (PpBook      *book,
            const PpMap *map)
{
  const PpScene *scene = book->job->check->scene;

  for (guint i = 0; i < scene->n_knots; i++)
    pp_map_draw_knot (map, book, pp_scene_knot_hole (scene, i), PP_LOOK_PLAIN);
}

static double
get_number_size (const PpScene *scene,
                 guint          job)
{
  const PpBody *body = job >= scene->n_knots ? scene->bodies[job - scene->n_knots] : NULL;

  return body == NULL || fmax (pp_box_width (body->box), pp_box_height (body->box)) < SMALL
         ? SMALL_SIZE : NUMBER_SIZE;
}

/* The numbers of all that is seen in the window; those of `labels` in the order of `jobs`. */
static GArray *
make_labels (const PpPattern *self,
             const PpMap     *map,
             PpBox            seen,
             GArray          *jobs)
{
  const PpScene *scene = self->book->job->check->scene;
  GArray *labels = g_array_new (FALSE, TRUE, sizeof (PpSheetLabel));

  for (guint i = 0; i < self->numbers->n_jobs; i++)
    {
      guint job = self->numbers->jobs[i];
      PpPoint measure = pp_signs_measure_badge (self->book, i + 1, get_number_size (scene, job));
      PpSheetLabel label = { .width = measure.x, .height = measure.y };
      PpPoint at;

      if (!pp_anchor_find (scene, job, seen, &at))
        continue;
      label.anchor = pp_map_to_page (map, at);
      g_array_append_val (labels, label);
      g_array_append_val (jobs, job);
    }
  return labels;
}

static GArray *
find_obstacles (const PpPattern *self,
                const PpMap     *map,
                const PpTile    *tile)
{
  const PpScene *scene = self->book->job->check->scene;
  GArray *obstacles = g_array_new (FALSE, FALSE, sizeof (PpBox));

  g_array_append_vals (obstacles, tile->marks, tile->n_marks);
  for (guint i = 0; i < scene->n_knots; i++)
    {
      const PpHole *hole = pp_scene_knot_hole (scene, i);
      PpPoint at = pp_map_to_page (map, pp_scene_knot_place (scene, i));
      PpBox box = pp_box_grow ((PpBox) { at.x, at.y, at.x, at.y },
                               fmax (hole->diameter, scene->panel->wire->knot_diameter) / 2);

      g_array_append_val (obstacles, box);
    }
  return obstacles;
}

static void
draw_numbers (const PpPattern *self,
              const PpMap     *map,
              const PpTile    *tile)
{
  const PpScene *scene = self->book->job->check->scene;
  g_autoptr (GArray) jobs = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) array = make_labels (self, map, to_panel_box (self, tile->clear), jobs);
  g_autoptr (GArray) obstacles = find_obstacles (self, map, tile);
  PpBox bounds = pp_box_grow (pp_box_move (tile->clear, tile->shift), -1);
  PpSheetLabel *labels = (PpSheetLabel *) (void *) array->data;

  pp_labels_place (labels, array->len, bounds, (const PpBox *) (void *) obstacles->data,
                   obstacles->len, 0.8);
  for (guint i = 0; i < array->len; i++)
    if (labels[i].placed)
      pp_map_draw_leader (map, self->book, scene, g_array_index (jobs, guint, i), &labels[i]);
  for (guint i = 0; i < array->len; i++)
    {
      guint job = g_array_index (jobs, guint, i);

      if (labels[i].placed)
        pp_signs_draw_badge (self->book, labels[i].at, self->numbers->of_job[job],
                       get_number_size (scene, job), FALSE);
    }
}

static void
draw (PpBook       *book,
      const PpTile *tile,
      gpointer      data)
{
  const PpPattern *self = data;
  PpMap map = pp_pattern_get_map (self, tile->shift);

  if (pp_book_is_counting (book))
    return;
  pp_map_draw_glass (&map, book, book->job->check->scene);
  draw_crosses (book, &map);
  draw_bodies (self, &map, to_panel_box (self, tile->window));
  pp_map_draw_wire (&map, book, book->job->check->scene);
  draw_knots (book, &map);
  draw_numbers (self, &map, tile);
}

void
pp_pattern_init (PpPattern *self,
                 PpBook    *book,
                 PpNumbers *numbers)
{
  PpBox extent = pp_map_get_extent (book->job->check->scene);

  *self = (PpPattern) { book, numbers,
                        { pp_box_grow (extent, AROUND), is_blank, is_clear, draw, self } };
}
