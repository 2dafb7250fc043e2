/* conceal.c: how much of the wire, of its knots and of the holes is hidden.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/conceal-private.h"

static PpRun
run_lying (const PpScene *scene)
{
  const PpHole *from = pp_scene_knot_hole (scene, 0), *to = pp_scene_knot_hole (scene, 1);

  return (PpRun) { .points = { { from->x, from->y }, { to->x, to->y } }, .n_legs = 1 };
}

PpRun
pp_run_hung (const PpScene *scene,
             const PpHang  *hang)
{
  PpRun run = run_lying (scene);

  if (hang->is_taut)
    return run;
  run.points[2] = run.points[1];
  run.points[1] = hang->hook;
  run.n_legs = 2;
  return run;
}

PpLeg
pp_run_get_leg (const PpRun *self,
                guint        leg)
{
  PpPoint a = self->points[leg], b = self->points[leg + 1];
  PpLeg result = { .from = a, .length = pp_point_distance (a, b) };

  if (result.length <= PP_NO_LENGTH)
    return (PpLeg) { .from = a };
  result.direction = (PpPoint) { (b.x - a.x) / result.length, (b.y - a.y) / result.length };
  result.normal = (PpPoint) { -result.direction.y, result.direction.x };
  return result;
}

PpPoint
pp_leg_point (const PpLeg *self,
              double       along,
              double       aside)
{
  return (PpPoint) { self->from.x + along * self->direction.x + aside * self->normal.x,
                     self->from.y + along * self->direction.y + aside * self->normal.y };
}

PpBox
pp_run_get_box (const PpRun *self,
                double       radius)
{
  PpBox box = pp_box_empty ();

  for (guint i = 0; i <= self->n_legs; i++)
    box = pp_box_add_point (box, self->points[i]);
  return pp_box_grow (box, radius + PP_TIE);
}

gboolean
pp_conceal_counts (PpRest **rests,
                   guint    index)
{
  return rests[index]->state != PP_STATE_FLOATS;
}

static void
path_clear (PpPath *self)
{
  g_clear_pointer (&self->exposed, g_free);
}

static void
path_copy (PpPath       *self,
           const PpPath *other)
{
  *self = *other;
  self->exposed = g_memdup2 (other->exposed, other->n_exposed * sizeof (PpExposed));
}

/* The same whatever the hook does. */
static void
look_at_lying (PpConceal       *self,
               const PpScene   *scene,
               PpRest         **rests,
               const PpConceal *previous,
               GArray          *changes)
{
  PpRun run = run_lying (scene);
  PpBox box = pp_run_get_box (&run, scene->panel->wire->diameter / 2);

  if (previous != NULL && !pp_changes_meet (changes, box))
    path_copy (&self->lying, &previous->lying);
  else
    pp_path_kept_free (pp_path_look (&self->lying, scene, rests, &run, 0, NULL));
}

static void
look_at_wire (PpConceal       *self,
              const PpSettled *settled,
              const PpHang    *hang,
              const PpConceal *previous,
              const PpSettled *before,
              GArray          *changes)
{
  const PpScene *scene = settled->scene;
  PpRun hung = pp_run_hung (scene, hang);
  PpPath barely;

  look_at_lying (self, scene, settled->rests, previous, changes);
  self->kept[0] = pp_path_look (&self->hung, scene, settled->rests, &hung, 0,
                                previous != NULL ? previous->kept[0] : NULL);
  self->kept[1] = pp_path_look (&barely, scene, settled->rests, &hung,
                                pp_panel_get_limit (scene->panel, PP_LIMIT_PLACE),
                                previous != NULL ? previous->kept[1] : NULL);
  self->barely = pp_path_get_exposed (&barely);
  path_clear (&barely);
  pp_conceal_look_aslant (self, settled, hang, previous, before);
}

PpConceal *
pp_conceal_new (const PpSettled *settled,
                const PpHang    *hang,
                const PpConceal *previous,
                const PpSettled *before)
{
  PpConceal *self = g_new0 (PpConceal, 1);
  g_autoptr (GArray) changes = previous != NULL ? pp_changes_find (before, settled) : NULL;

  g_return_val_if_fail ((hang != NULL) == (settled->scene->n_knots > 0), self);
  self->has_wire = hang != NULL;
  if (self->has_wire)
    look_at_wire (self, settled, hang, previous, before, changes);
  pp_conceal_share_discs (self, settled->scene, settled->rests, previous, changes);
  return self;
}

void
pp_conceal_free (PpConceal *self)
{
  if (self == NULL)
    return;
  path_clear (&self->lying);
  path_clear (&self->hung);
  g_free (self->holes);
  g_clear_pointer (&self->glass, g_ptr_array_unref);
  g_clear_pointer (&self->pieces, g_ptr_array_unref);
  for (guint i = 0; i < PP_MOST_LEGS; i++)
    pp_sight_leg_free (self->legs[i]);
  for (guint i = 0; i < G_N_ELEMENTS (self->kept); i++)
    pp_path_kept_free (self->kept[i]);
  g_free (self);
}

double
pp_path_get_exposed (const PpPath *self)
{
  double sum = 0;

  for (guint i = 0; i < self->n_exposed; i++)
    if (!self->exposed[i].beyond)
      sum += self->exposed[i].length;
  return sum;
}
