/* order-plan.c: the picture of a mix: what lies there, what is placed now, glue and props.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/order-plan.h"

#include "panel/i18n.h"
#include "sheet/key.h"
#include "sheet/labels.h"
#include "sheet/map.h"
#include "sheet/marks.h"
#include "sheet/numbers.h"
#include "sheet/signs.h"
#include "sheet/words.h"

#include <math.h>

#define CARD_WIDTH 52.0 /* mm */
#define CARD_SHARE 0.42 /* of the width at most */
#define KEY_INDENT 4.0  /* mm, to stand under the words of the card */
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
draw_outlines (PpBook      *book,
               const PpMap *map,
               const When  *whens)
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
      add_obstacle (obstacles, pp_map_to_page (map, pp_scene_knot_place (scene, i)), 1.2);
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
  return pp_scene_knot_place (scene, job);
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
              const PpMap  *map,
              const When   *whens,
              PpOrderRun    run,
              PpBox         bounds,
              const GArray *obstacles)
{
  const PpScene *scene = book->job->check->scene;
  guint n = run.end - run.first;
  double size = n > CROWD ? CROWDED_SIZE : NUMBER_SIZE;
  g_autofree PpSheetLabel *labels = g_new0 (PpSheetLabel, n);
  g_autofree PpPoint *anchors = make_anchors (scene, whens);

  for (guint i = 0; i < n; i++)
    {
      PpPoint measure = pp_signs_measure_badge (book, run.first + i + 1, size);
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
      pp_signs_draw_badge (book, labels[i].at, run.first + i + 1, size, TRUE);
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
get_card_width (double width)
{
  return fmin (CARD_WIDTH, width * CARD_SHARE);
}

double
pp_order_plan_least_height (PpBook     *book,
                            guint       mix,
                            double      width)
{
  PpOrderRun run = pp_order_run_of_mix (book->job->plan, mix);

  return pp_order_card_measure (book, mix, run, get_card_width (width));
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

  card.y0 = pp_order_card_draw (book, mix, run, card) + 2 * PP_GAP;
  card.x0 += KEY_INDENT;
  return fmax (pp_key_draw (book, card), draw_picture (book, run, picture));
}
