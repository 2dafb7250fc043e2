/* numbers.c: the number of each knot and piece, the same on every sheet.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/numbers.h"

#define EVERY 4 /* cells: what is seen of a piece is looked for this often, each way */
#define LEAST_SEEN 8 /* such looks: less is no piece to a reader */

static void
give (PpNumbers *self,
      guint      job,
      guint     *n_given)
{
  if (self->of_job[job] != 0)
    return;
  self->jobs[*n_given] = job;
  self->of_job[job] = ++*n_given;
}

PpNumbers *
pp_numbers_new (const PpSheetJob *job)
{
  PpNumbers *self = g_new0 (PpNumbers, 1);
  guint n_given = 0;

  self->n_knots = job->check->scene->n_knots;
  self->n_jobs = self->n_knots + job->check->n;
  self->of_job = g_new0 (guint, self->n_jobs);
  self->jobs = g_new0 (guint, self->n_jobs);
  for (guint i = 0; job->plan != NULL && i < job->plan->n_steps; i++)
    give (self, job->plan->steps[i].job, &n_given);
  for (guint i = 0; i < self->n_jobs; i++)
    give (self, i, &n_given);
  return self;
}

void
pp_numbers_free (PpNumbers *self)
{
  if (self == NULL)
    return;
  g_free (self->of_job);
  g_free (self->jobs);
  g_free (self);
}

static gboolean
is_covered (const PpScene  *scene,
            const gboolean *is_there,
            guint           index,
            int             i,
            int             j)
{
  PpPoint p = { pp_cell_centre (i), pp_cell_centre (j) };

  for (guint upper = index + 1; upper < scene->n_bodies; upper++)
    {
      const PpBody *body = scene->bodies[upper];

      if ((is_there == NULL || is_there[upper]) && pp_box_contains (body->box, p)
          && pp_cells_contain (body->cells, i, j))
        return TRUE;
    }
  return FALSE;
}

static GArray *
find_seen (const PpScene  *scene,
           const gboolean *is_there,
           guint           index,
           PpBox           window)
{
  const PpCells *cells = scene->bodies[index]->cells;
  GArray *seen = g_array_new (FALSE, FALSE, sizeof (PpPoint));

  for (guint s = 0; s < cells->n_spans; s++)
    {
      const PpSpan *span = &cells->spans[s];

      if (span->j % EVERY != 0)
        continue;
      for (int i = span->i0 + EVERY / 2; i < span->i1; i += EVERY)
        {
          PpPoint p = { pp_cell_centre (i), pp_cell_centre (span->j) };

          if (pp_box_contains (window, p) && !is_covered (scene, is_there, index, i, span->j))
            g_array_append_val (seen, p);
        }
    }
  return seen;
}

static PpPoint
get_mean (const GArray *points)
{
  PpPoint sum = { 0, 0 };

  for (guint i = 0; i < points->len; i++)
    {
      sum.x += g_array_index (points, PpPoint, i).x;
      sum.y += g_array_index (points, PpPoint, i).y;
    }
  return (PpPoint) { sum.x / points->len, sum.y / points->len };
}

/* The one nearest to their mean. */
static PpPoint
find_middle (const GArray *points)
{
  PpPoint mean = get_mean (points);
  PpPoint best = g_array_index (points, PpPoint, 0);

  for (guint i = 1; i < points->len; i++)
    if (pp_point_distance (g_array_index (points, PpPoint, i), mean)
        < pp_point_distance (best, mean))
      best = g_array_index (points, PpPoint, i);
  return best;
}

static PpPoint
find_anchor (const PpScene  *scene,
             const gboolean *is_there,
             guint           index)
{
  g_autoptr (GArray) seen = find_seen (scene, is_there, index, scene->bodies[index]->box);

  return seen->len > 0 ? find_middle (seen) : scene->bodies[index]->centroid;
}

PpPoint *
pp_anchors_new (const PpScene  *scene,
                const gboolean *is_there)
{
  PpPoint *anchors = g_new (PpPoint, MAX (scene->n_bodies, 1));

  for (guint i = 0; i < scene->n_bodies; i++)
    anchors[i] = find_anchor (scene, is_there, i);
  return anchors;
}

gboolean
pp_anchor_find (const PpScene *scene,
                guint          job,
                PpBox          window,
                PpPoint       *at)
{
  g_autoptr (GArray) seen = NULL;
  guint index = job - scene->n_knots;

  if (job < scene->n_knots)
    *at = pp_scene_knot_place (scene, job);
  else if (pp_box_meets (window, scene->bodies[index]->box))
    {
      seen = find_seen (scene, NULL, index, window);
      if (seen->len < LEAST_SEEN && !pp_box_holds (window, scene->bodies[index]->box))
        return FALSE;
      *at = seen->len > 0 ? find_middle (seen) : scene->bodies[index]->centroid;
    }
  else
    return FALSE;
  return pp_box_contains (window, *at);
}
