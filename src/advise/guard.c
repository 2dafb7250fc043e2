/* guard.c: what a search must leave alone.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/guard.h"

#include "check/overhang.h"

/* Of each job: a way of hard edges leads from it to a glued placement, or it is one. Every edge
 * leads to a higher job, so one walk down finds all. (transfer full) */
static gboolean *
find_carriers (const PpPanel *panel,
               const PpOrder *order)
{
  gboolean *carries = g_new0 (gboolean, order->n_jobs + 1);

  for (guint job = order->n_jobs; job-- > 0;)
    {
      if (job >= order->n_knots)
        carries[job] = pp_panel_placement (panel, job - order->n_knots)->glued_at != NULL;
      for (guint i = 0; i < order->n_hard && !carries[job]; i++)
        carries[job] = order->hard[i].first == job && carries[order->hard[i].second];
    }
  return carries;
}

/* A piece glued over a knot's disc, by however little, lies on it. */
static gboolean
is_under_glue (const PpCheck *check,
               guint          knot)
{
  const PpHole *hole = pp_scene_knot_hole (check->scene, knot);
  g_autoptr (PpRegion) disc = pp_region_new_disc ((PpPoint) { hole->x, hole->y },
                                                  check->panel->wire->knot_diameter / 2);

  for (guint i = 0; i < check->n; i++)
    if (check->scene->bodies[i]->placement->glued_at != NULL
        && pp_region_overlap (check->scene->bodies[i]->region, disc) > 0)
      return TRUE;
  return FALSE;
}

PpGuard *
pp_guard_new (const PpCheck *given)
{
  PpGuard *self = g_new0 (PpGuard, 1);
  const PpPanel *panel = given->panel;
  g_autoptr (PpOrder) order = pp_order_new (given);
  g_autofree gboolean *carries = find_carriers (panel, order);

  self->panel = pp_panel_ref (panel);
  self->placements = g_new0 (gboolean, given->n + 1);
  self->holes = g_new0 (gboolean, panel->holes->len + 1);
  self->overhang = g_memdup2 (given->composition->overhang, given->n * sizeof (double));
  self->wire = panel->wire == NULL || panel->wire->knotted_at != NULL;
  for (guint i = 0; i < given->n; i++)
    self->placements[i] = carries[order->n_knots + i] || pp_panel_placement (panel, i)->pinned;
  for (guint i = 0; i < panel->holes->len; i++)
    self->holes[i] = pp_panel_hole (panel, i)->drilled;
  for (guint k = 0; k < order->n_knots; k++)
    if (panel->wire->knotted_at != NULL || carries[k] || is_under_glue (given, k))
      self->holes[given->scene->knots[k]] = TRUE;
  return self;
}

void
pp_guard_free (PpGuard *self)
{
  if (self == NULL)
    return;
  pp_panel_unref (self->panel);
  g_free (self->placements);
  g_free (self->holes);
  g_free (self->overhang);
  g_free (self);
}

gboolean
pp_guard_holds (const PpGuard *self,
                const char    *placement)
{
  guint index;

  return pp_panel_find_placement (self->panel, placement, &index) != NULL
         && self->placements[index];
}

gboolean
pp_guard_holds_hole (const PpGuard *self,
                     const char    *hole)
{
  guint index;

  return pp_panel_find_hole (self->panel, hole, &index) != NULL && self->holes[index];
}

static guint
count_glued (const PpPanel *panel,
             guint          end)
{
  guint n = 0;

  for (guint i = 0; i < end; i++)
    n += pp_panel_placement (panel, i)->glued_at != NULL;
  return n;
}

/* Glued placements keep their order among themselves, so it is enough to count for each other one
 * how many lie below it: it may only get more. */
gboolean
pp_guard_allows (const PpGuard *self,
                 const PpPanel *panel)
{
  const guint n_glued = count_glued (self->panel, self->panel->placements->len);
  guint below = 0;

  if (n_glued == 0)
    return TRUE;
  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *placement = pp_panel_placement (panel, i);
      guint index;
      gboolean known = pp_panel_find_placement (self->panel, placement->id, &index) != NULL;

      if (below < (known ? count_glued (self->panel, index) : n_glued))
        return FALSE;
      below += placement->glued_at != NULL;
    }
  return below == n_glued;
}

gboolean
pp_guard_pushes_over_edge (const PpGuard *self,
                           const PpCheck *check)
{
  for (guint i = 0; i < check->n; i++)
    {
      const char *id = pp_panel_placement (check->panel, i)->id;
      guint index;
      gboolean known = pp_panel_find_placement (self->panel, id, &index) != NULL;
      double before = known ? self->overhang[index] : PP_NO_OVERHANG;

      if (pp_is_over (check->composition->overhang[i], before))
        return TRUE;
    }
  return FALSE;
}
