/* order-plan.c: the picture of a mix: what lies there, what is placed now, glue and props.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/order-plan.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/bead.h"
#include "sheet/furniture.h"
#include "sheet/key.h"
#include "sheet/labels.h"
#include "sheet/map.h"
#include "sheet/marks.h"
#include "sheet/numbers.h"
#include "sheet/text.h"
#include "sheet/words.h"

#include <math.h>

#define CARD_WIDTH 52.0 /* mm */
#define CARD_SHARE 0.42 /* of the width at most */
#define CARD_PADDING 4.0
#define NUMBER_SIZE 18.0
#define CROWDED_SIZE 14.0 /* pt, of the numbers of a crowd */
#define CROWD 10
#define SMALL 13.0        /* mm on paper */

PpOrderRun
pp_order_run_of_mix (const PpPlan *plan,
                     guint         mix)
{
  PpOrderRun run = { 0, 0, 1 };

  while (run.first < plan->n_steps && plan->steps[run.first].mix != mix + 1)
    run.first++;
  for (run.end = run.first; run.end < plan->n_steps && plan->steps[run.end].mix == mix + 1;)
    run.end++;
  if (run.first < plan->n_steps)
    run.sitting = plan->steps[run.first].sitting;
  return run;
}

typedef enum
{
  LATER,
  DOWN,
  NOW,
} When;

/* When each job is done, as seen from the steps of `run`. What the plan leaves out is glued. */
static When *
make_whens (const PpSheetJob *job,
            PpOrderRun        run)
{
  const PpPlan *plan = job->plan;
  guint n_jobs = job->check->scene->n_knots + job->check->n;
  When *whens = g_new (When, MAX (n_jobs, 1));

  for (guint i = 0; i < n_jobs; i++)
    whens[i] = DOWN;
  for (guint i = 0; i < plan->n_steps; i++)
    whens[plan->steps[i].job] = i < run.first ? DOWN : i < run.end ? NOW : LATER;
  return whens;
}

static void
add_obstacle (GArray  *obstacles,
              PpPoint  at,
              double   radius)
{
  PpBox box = pp_box_grow ((PpBox) { at.x, at.y, at.x, at.y }, radius);

  g_array_append_val (obstacles, box);
}

static void
draw_knots (PpBook      *book,
            const PpMap *map,
            const When  *whens,
            When         when)
{
  const PpScene *scene = book->job->check->scene;

  for (guint i = 0; i < scene->n_knots; i++)
    if (whens[i] == when)
      pp_map_draw_knot (map, book, pp_scene_knot_hole (scene, i),
                        when == NOW ? PP_LOOK_NOW : PP_LOOK_DOWN);
}

static void
draw_outlines (PpBook       *book,
               const PpMap *map,
               const When   *whens)
{
  const PpScene *scene = book->job->check->scene;

  pp_map_draw_glass (map, book, scene);
  draw_knots (book, map, whens, DOWN);
  for (guint i = 0; i < scene->n_bodies; i++)
    if (whens[scene->n_knots + i] != LATER)
      pp_map_draw_body (map, book, scene->bodies[i],
                         whens[scene->n_knots + i] == NOW ? PP_LOOK_NOW : PP_LOOK_DOWN);
  /* A knot tied now is seen, also where a piece of this page will lie on it. */
  draw_knots (book, map, whens, NOW);
}

static PpPoint
get_knot_place (const PpMap   *map,
                const PpScene *scene,
                guint          knot)
{
  const PpHole *hole = pp_scene_knot_hole (scene, knot);

  return pp_map_to_page (map, (PpPoint) { hole->x, hole->y });
}

/* Whether a piece placed later on this page lies over a dab of the index-th. */
static gboolean
is_covered (const PpScene *scene,
            const When    *whens,
            guint          index,
            PpPoint        dab)
{
  for (guint i = index + 1; i < scene->n_bodies; i++)
    if (whens[scene->n_knots + i] == NOW && pp_region_contains (scene->bodies[i]->region, dab))
      return TRUE;
  return FALSE;
}

static void
draw_dabs (PpBook        *book,
           const PpMap   *map,
           const When    *whens,
           guint          index,
           GArray        *obstacles)
{
  const PpJoint *joint = book->job->check->joints[index];

  for (guint d = 0; d < joint->n_dabs; d++)
    {
      PpPoint at = pp_map_to_page (map, joint->places[d].at);
      double radius = joint->places[d].diameter / 2 * map->scale;

      if (is_covered (book->job->check->scene, whens, index, joint->places[d].at))
        {
          pp_dab_draw_covered (book, at, radius);
          continue;
        }
      pp_dab_draw (book, at, radius);
      add_obstacle (obstacles, at, fmax (radius, 1));
    }
}

/* A number would hide a small piece. */
static void
spare_small (const PpMap  *map,
             const PpBody *body,
             GArray       *obstacles)
{
  double size = fmax (pp_box_width (body->box), pp_box_height (body->box)) * map->scale;

  if (size < SMALL)
    add_obstacle (obstacles, pp_map_to_page (map, pp_box_middle (body->box)), size / 2);
}

/* Dabs and props of the pieces placed now; what they cover goes to `obstacles`, the knots too. */
static void
draw_glue (PpBook       *book,
           const PpMap  *map,
           const When   *whens,
           GArray       *obstacles)
{
  const PpCheck *check = book->job->check;
  const PpScene *scene = check->scene;

  for (guint i = 0; i < scene->n_knots; i++)
    if (whens[i] == NOW)
      add_obstacle (obstacles, get_knot_place (map, scene, i), 1.2);
  for (guint i = 0; i < check->n; i++)
    {
      const PpRest *rest = check->rests[i];

      if (whens[scene->n_knots + i] != NOW)
        continue;
      draw_dabs (book, map, whens, i, obstacles);
      spare_small (map, scene->bodies[i], obstacles);
      if (rest->hold && rest->has_prop && rest->prop_height >= PP_LEAST_PROP)
        {
          PpPoint at = pp_map_to_page (map, rest->prop);

          pp_prop_draw (book, at);
          add_obstacle (obstacles, at, 2);
        }
    }
}

static PpPoint
get_anchor (const PpScene *scene,
            const PpPoint *anchors,
            guint          job)
{
  if (job >= scene->n_knots)
    return anchors[job - scene->n_knots];
  return (PpPoint) { pp_scene_knot_hole (scene, job)->x, pp_scene_knot_hole (scene, job)->y };
}

static PpPoint *
make_anchors (const PpScene *scene,
              const When    *whens)
{
  g_autofree gboolean *is_there = g_new (gboolean, MAX (scene->n_bodies, 1));

  for (guint i = 0; i < scene->n_bodies; i++)
    is_there[i] = whens[scene->n_knots + i] != LATER;
  return pp_anchors_new (scene, is_there);
}

static void
draw_numbers (PpBook       *book,
              const PpMap *map,
              const When   *whens,
              PpOrderRun    run,
              PpBox         bounds,
              const GArray *obstacles)
{
  const PpScene *scene = book->job->check->scene;
  guint n = run.end - run.first;
  double size = n > CROWD ? CROWDED_SIZE : NUMBER_SIZE;
  g_autofree PpLabel *labels = g_new0 (PpLabel, n);
  g_autofree PpPoint *anchors = make_anchors (scene, whens);

  for (guint i = 0; i < n; i++)
    {
      PpPoint measure = pp_badge_measure (book, run.first + i + 1, size);
      PpPoint at = get_anchor (scene, anchors, book->job->plan->steps[run.first + i].job);

      labels[i].anchor = pp_map_to_page (map, at);
      labels[i].width = measure.x;
      labels[i].height = measure.y;
    }
  pp_labels_place (labels, n, bounds, (const PpBox *) obstacles->data, obstacles->len, 0.6);
  for (guint i = 0; i < n; i++)
    if (labels[i].placed)
      pp_map_draw_leader (map, book, scene, book->job->plan->steps[run.first + i].job, &labels[i]);
  for (guint i = 0; i < n; i++)
    if (labels[i].placed)
      pp_badge_draw (book, labels[i].at, run.first + i + 1, size, TRUE);
}

/* Returns the y below. */
static double
draw_picture (PpBook     *book,
              PpOrderRun  run,
              PpBox       area)
{
  g_autofree When *whens = make_whens (book->job, run);
  g_autoptr (GArray) obstacles = g_array_new (FALSE, FALSE, sizeof (PpBox));
  PpMap map = pp_map_fit (book->job->check->scene, area, TRUE);

  if (pp_book_is_counting (book))
    return map.place.y1;
  pp_map_draw_rulers (&map, book);
  draw_outlines (book, &map, whens);
  draw_glue (book, &map, whens, obstacles);
  draw_numbers (book, &map, whens, run,
                (PpBox) { map.place.x0, map.place.y0, area.x1, area.y1 }, obstacles);
  return map.place.y1;
}

static double
draw_pair (PpBook     *book,
           const char *label,
           const char *value,
           double      value_size,
           PpPoint     at,
           double      width)
{
  const PpTextStyle label_style = { .size = 9.5, .ink = PP_INK_SOFT };
  const PpTextStyle value_style = { .size = value_size, .bold = TRUE };
  double height = pp_text_draw (book, &label_style, label, at, width);

  at.y += height - 0.5;
  return height + pp_text_draw (book, &value_style, value, at, width) + 1;
}

/* Returns the y below. */
static double
draw_parts (PpBook      *book,
            const PpMix *mix,
            PpPoint      at,
            double       width)
{
  g_autofree char *a = pp_volume_format (mix->a);
  g_autofree char *b = pp_volume_format (mix->b);
  g_autofree char *words = g_strdup_printf (_("Measure %s of part A and %s of part B."), a, b);
  g_autofree char *bead_label = pp_bead_label_format (book->job->units);
  g_autofree char *bead = pp_bead_format (mix->a, mix->b, book->job->units);
  double left = draw_pair (book, _("part A"), a, 18, at, width / 2 - 1);
  double right = draw_pair (book, _("part B"), b, 18, (PpPoint) { at.x + width / 2, at.y },
                            width / 2);

  pp_book_say (book, words);
  at.y += fmax (left, right);
  return at.y + draw_pair (book, bead_label, bead, 11, at, width);
}

static double
draw_time (PpBook     *book,
           const char *label,
           double      minutes,
           PpPoint     at,
           double      width)
{
  g_autofree char *clock = pp_clock_format (minutes);
  g_autofree char *words = g_strdup_printf ("%s: %s.", label, clock);

  pp_book_say (book, words);
  return at.y + draw_pair (book, label, clock, 13, at, width);
}

/* When the last job of a mix is done, min. */
static double
get_end_of (const PpPlan *plan,
            guint         mix)
{
  const PpStep *last = &plan->steps[pp_order_run_of_mix (plan, mix).end - 1];

  return last->start + last->minutes;
}

/* What is needed to mix and to keep time; returns the y below. */
static double
draw_card_words (PpBook     *book,
                 guint       index,
                 PpOrderRun  run,
                 PpPoint     at,
                 double      width)
{
  const PpTextStyle sitting_style = { .size = 13, .bold = TRUE, .ink = PP_INK_ACCENT };
  const PpTextStyle wait_style = { .size = 10.5, .bold = TRUE, .ink = PP_INK_TEXT };
  const PpPlan *plan = book->job->plan;
  const PpMix *mix = &plan->mixes[index];
  const PpAdhesive *glue = book->panel->adhesive;
  PpOrderRun whole = pp_order_run_of_mix (plan, index);
  const PpStep *last = &plan->steps[whole.end - 1];
  double zero = pp_sitting_start (plan, run.sitting);

  if (plan->steps[plan->n_steps - 1].sitting > 1)
    {
      g_autofree char *sitting = g_strdup_printf (_("Sitting %u"), run.sitting);

      at.y += pp_text_draw (book, &sitting_style, sitting, at, width) + 1;
      pp_book_say (book, sitting);
    }
  at.y = draw_parts (book, mix, at, width);
  if (index > 0 && mix->start > get_end_of (plan, index - 1) + PP_TIE)
    at.y += pp_text_draw (book, &wait_style, _("Wait: what lies there must grab first."), at, width)
            + 1;
  at.y = draw_time (book, _("let the parts touch at"), mix->start - zero, at, width);
  at.y = draw_time (book, _("mixed: first piece at"), mix->start + glue->mixing - zero, at, width);
  at.y = draw_time (book, _("last piece down by"), mix->start + glue->working_life - zero, at,
                    width);
  return draw_time (book, _("trim the rims, while the glue cuts like rubber, from about"),
                    last->start + last->minutes + glue->grab - zero, at, width);
}

static double
get_card_width (double width)
{
  return fmin (CARD_WIDTH, width * CARD_SHARE);
}

/* Draws it unseen and unheard. */
static double
measure_card (PpBook     *book,
              guint       index,
              PpOrderRun  run,
              double      width)
{
  g_autofree char *words = g_strdup (book->words->str);
  PpPoint corner = { 0, CARD_PADDING - 1 };
  double bottom;

  cairo_push_group (book->cr);
  bottom = draw_card_words (book, index, run, corner, width - 2 * CARD_PADDING);
  cairo_pattern_destroy (cairo_pop_group (book->cr));
  g_string_assign (book->words, words);
  return bottom + CARD_PADDING - 1;
}

double
pp_order_plan_least_height (PpBook     *book,
                            guint       mix,
                            double      width)
{
  PpOrderRun run = pp_order_run_of_mix (book->job->plan, mix);

  return measure_card (book, mix, run, get_card_width (width));
}

/* Returns the y below. */
static double
draw_card (PpBook     *book,
           guint       index,
           PpOrderRun  run,
           PpBox       box)
{
  double width = pp_box_width (box);

  box.y1 = box.y0 + measure_card (book, index, run, width);
  pp_card_draw (book, box);
  draw_card_words (book, index, run,
                   (PpPoint) { box.x0 + CARD_PADDING, box.y0 + CARD_PADDING - 1 },
                   width - 2 * CARD_PADDING);
  return box.y1;
}

double
pp_order_plan_draw (PpBook     *book,
                    guint       mix,
                    PpOrderRun  run,
                    PpBox       area)
{
  double width = get_card_width (pp_box_width (area));
  PpBox card = { area.x1 - width, area.y0, area.x1, area.y1 };
  PpBox picture = { area.x0, area.y0, card.x0 - 2 * PP_GAP, area.y1 };

  card.y0 = draw_card (book, mix, run, card) + 2 * PP_GAP;
  card.x0 += CARD_PADDING;
  return fmax (pp_key_draw (book, card), draw_picture (book, run, picture));
}
