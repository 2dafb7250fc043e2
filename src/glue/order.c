/* order.c: what must be glued before what.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every edge leads from a lower job number to a higher one, since knots come first and then the
 * stack from its bottom; so one walk upwards finds edges, stages and the reduction together.
 */
#include "glue/order.h"

#include "glue/clearance.h"
#include "glue/closure.h"

/* The order while it is found. */
typedef struct
{
  const PpCheck *check;
  const PpCheck *before; /* nullable, with the order it had */
  const PpOrder *known;
  guint          n_knots;
  PpRegion      *discs[2];
  PpStage       *stages;
  PpClosure     *closure;
  GArray        *hard;  /* PpEdge */
  GArray        *drawn; /* PpEdge */
  GArray        *tucks; /* PpEdge */
} Work;

static gboolean
rests_on (const Work *work,
          guint       upper,
          PpOwner     owner)
{
  return pp_rest_rests_on (work->check->rests[upper], owner);
}

static gboolean
overlaps (const Work *work,
          guint       placement,
          PpRegion   *other)
{
  const double limit = pp_panel_get_limit (work->check->panel, PP_LIMIT_OVERLAP);

  return pp_is_over (pp_region_overlap (work->check->scene->bodies[placement]->region, other),
                     limit);
}

/* Both are what they were, so they overlap as they did. */
static gboolean
are_known (const Work *work,
           guint       lower,
           guint       upper)
{
  PpBody **now = work->check->scene->bodies, **then;

  if (work->known == NULL || upper >= work->before->n)
    return FALSE;
  then = work->before->scene->bodies;
  return now[lower] == then[lower] && now[upper] == then[upper]
         && pp_panel_get_limit (work->check->panel, PP_LIMIT_OVERLAP)
                == pp_panel_get_limit (work->before->panel, PP_LIMIT_OVERLAP);
}

static gboolean
is_listed (const PpOrder *order,
           guint          lower,
           guint          upper)
{
  for (guint i = 0; i < order->n_below[upper]; i++)
    if (order->below[upper][i] == lower)
      return TRUE;
  return FALSE;
}

static gboolean
lies_over (const Work *work,
           guint       upper,
           guint       lower)
{
  if (are_known (work, lower, upper))
    return is_listed (work->known, lower, upper);
  return overlaps (work, upper, work->check->scene->bodies[lower]->region);
}

static gboolean
floats (const Work *work,
        guint       placement)
{
  return work->check->rests[placement]->state == PP_STATE_FLOATS;
}

/* Whether one that overlaps another above it could not be slid in under that later. */
static gboolean
is_too_close (const Work *work,
              guint       lower,
              guint       upper)
{
  const double tuck = pp_panel_get_limit (work->check->panel, PP_LIMIT_TUCK);

  if (floats (work, lower) || floats (work, upper))
    return FALSE;
  /* Apart as a whole: base and top are the least and the greatest over all cells. */
  if (work->check->rests[upper]->base - work->check->rests[lower]->top >= tuck)
    return FALSE;

  return pp_is_under (pp_clearance_between (work->check, lower, upper, tuck - PP_TIE), tuck);
}

static void
add_edge (GArray *edges,
          guint   first,
          guint   second)
{
  const PpEdge edge = { first, second };

  g_array_append_val (edges, edge);
}

static void
look_at_knots (Work  *work,
               guint  placement)
{
  for (guint knot = 0; knot < work->n_knots; knot++)
    if (rests_on (work, placement, PP_OWNER (PP_OWNER_KNOT, knot))
        || overlaps (work, placement, work->discs[knot]))
      add_edge (work->hard, knot, work->n_knots + placement);
}

static void
look_below (Work   *work,
            guint   upper,
            GArray *below)
{
  PpBody **bodies = work->check->scene->bodies;

  for (guint lower = 0; lower < upper; lower++)
    {
      if (!pp_box_meets (bodies[lower]->box, bodies[upper]->box))
        continue;

      const gboolean rests = rests_on (work, upper, PP_OWNER (PP_OWNER_PLACEMENT, lower));
      const gboolean over = lies_over (work, upper, lower);

      if (over)
        g_array_append_val (below, lower);
      if (rests || (over && is_too_close (work, lower, upper)))
        add_edge (work->hard, work->n_knots + lower, work->n_knots + upper);
      else if (over)
        add_edge (work->tucks, work->n_knots + lower, work->n_knots + upper);
    }
}

static PpStage
own_stage (const PpScene *scene,
           guint          placement)
{
  if (scene->pockets[placement] != PP_NO_INDEX)
    return PP_STAGE_STEMS;
  return pp_body_is_flat (scene->bodies[placement]) ? PP_STAGE_FLAT : PP_STAGE_SHAPED;
}

/* Edges into `job` stand from `from` on, by rising first; a longer way is known by the time that
 * its shortcut comes. */
static void
close_edges (Work  *work,
             guint  job,
             guint  from)
{
  for (guint i = work->hard->len; i-- > from;)
    {
      const PpEdge edge = g_array_index (work->hard, PpEdge, i);

      work->stages[job] = MAX (work->stages[job], work->stages[edge.first]);
      if (pp_closure_add (work->closure, edge.first, edge.second))
        g_array_append_val (work->drawn, edge);
    }
}

/* All that stands below a placement has been looked at. */
static void
look_at_placement (Work    *work,
                   PpOrder *self,
                   guint    placement)
{
  const guint job = work->n_knots + placement;
  const guint from = work->hard->len;
  GArray *below = g_array_new (FALSE, FALSE, sizeof (guint));

  look_at_knots (work, placement);
  look_below (work, placement, below);
  work->stages[job] = own_stage (work->check->scene, placement);
  close_edges (work, job, from);
  self->depth[job] = work->check->scene->bodies[placement]->centroid.y;
  self->n_below[placement] = below->len;
  self->below[placement] = (guint *) (gpointer) g_array_free (below, FALSE);
}

static void
look_at_wire (Work    *work,
              PpOrder *self)
{
  const PpScene *scene = work->check->scene;

  for (guint knot = 0; knot < work->n_knots; knot++)
    {
      const PpPoint centre = pp_scene_knot_place (scene, knot);

      work->discs[knot] = pp_region_new_disc (centre, scene->panel->wire->knot_diameter / 2);
      work->stages[knot] = PP_STAGE_KNOTS;
      self->depth[knot] = centre.y;
    }
}

static PpEdge *
take_edges (GArray *edges,
            guint  *n)
{
  *n = edges->len;
  return (PpEdge *) (gpointer) g_array_free (edges, FALSE);
}

PpOrder *
pp_order_new (const PpCheck *check)
{
  return pp_order_new_after (check, NULL, NULL);
}

PpOrder *
pp_order_new_after (const PpCheck *check,
                    const PpCheck *before,
                    const PpOrder *known)
{
  PpOrder *self;

  g_return_val_if_fail (check != NULL && (before != NULL) == (known != NULL), NULL);

  self = g_atomic_rc_box_new0 (PpOrder);
  self->n_knots = check->scene->n_knots;
  self->n_jobs = self->n_knots + check->n;
  self->stages = g_new (PpStage, self->n_jobs);
  self->depth = g_new (double, self->n_jobs);
  self->n_below = g_new (guint, check->n);
  self->below = g_new (guint *, check->n);

  Work work = {
    .check = check,
    .before = before,
    .known = known,
    .n_knots = self->n_knots,
    .stages = self->stages,
    .closure = pp_closure_new (self->n_jobs),
    .hard = g_array_new (FALSE, FALSE, sizeof (PpEdge)),
    .drawn = g_array_new (FALSE, FALSE, sizeof (PpEdge)),
    .tucks = g_array_new (FALSE, FALSE, sizeof (PpEdge)),
  };

  look_at_wire (&work, self);
  for (guint placement = 0; placement < check->n; placement++)
    look_at_placement (&work, self, placement);

  for (guint knot = 0; knot < self->n_knots; knot++)
    pp_region_unref (work.discs[knot]);
  pp_closure_free (work.closure);
  self->hard = take_edges (work.hard, &self->n_hard);
  self->drawn = take_edges (work.drawn, &self->n_drawn);
  self->tucks = take_edges (work.tucks, &self->n_tucks);

  return self;
}

PpOrder *
pp_order_ref (PpOrder *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
order_clear (gpointer data)
{
  PpOrder *self = data;

  for (guint placement = 0; placement < self->n_jobs - self->n_knots; placement++)
    g_free (self->below[placement]);
  g_free (self->below);
  g_free (self->n_below);
  g_free (self->stages);
  g_free (self->depth);
  g_free (self->hard);
  g_free (self->drawn);
  g_free (self->tucks);
}

void
pp_order_unref (PpOrder *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, order_clear);
}

gboolean *
pp_order_find_followers (const PpOrder *self,
                         guint          job)
{
  gboolean *follows = g_new0 (gboolean, self->n_jobs);

  /* All edges into a job come before those out of it. */
  for (guint i = 0; i < self->n_hard; i++)
    if (self->hard[i].first == job || follows[self->hard[i].first])
      follows[self->hard[i].second] = TRUE;

  return follows;
}

char *
pp_job_dup_id (const PpPanel *panel,
               guint          n_knots,
               guint          job)
{
  g_return_val_if_fail (job < n_knots + panel->placements->len, NULL);

  if (job < n_knots)
    return pp_owner_dup_id (panel, PP_OWNER (PP_OWNER_KNOT, job));
  return pp_owner_dup_id (panel, PP_OWNER (PP_OWNER_PLACEMENT, job - n_knots));
}
