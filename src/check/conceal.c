/* conceal.c: how much of the wire is hidden, straight on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exact: the wire's centre line and its two edges are cut wherever one of them meets an outline.
 * Between two cuts nothing changes on any of the three, so one look at the middle settles it.
 */
#include "check/conceal-private.h"

#include "check/cover.h"
#include "check/finding.h"

/* What lies before the wire. */
typedef struct
{
  PpCover background;
  GArray *covers; /* PpCover: fused parts and pieces */
  double  opaque;
  double  radius; /* mm, of the wire */
} Sight;

PpRun
pp_run_lying (const PpScene *scene)
{
  const PpHole *from = pp_scene_knot_hole (scene, 0), *to = pp_scene_knot_hole (scene, 1);

  return (PpRun) { .points = { { from->x, from->y }, { to->x, to->y } }, .n_legs = 1 };
}

PpRun
pp_run_hung (const PpScene *scene,
             const PpHang  *hang)
{
  PpRun run = pp_run_lying (scene);

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
add_cover (GArray *covers,
           PpCover cover,
           PpBox   reach)
{
  if (pp_box_meets (cover.box, reach))
    g_array_append_val (covers, cover);
}

/* `drawn_in`: mm by which pieces are. */
static void
sight_init (Sight         *self,
            const PpScene *scene,
            PpRest       **rests,
            const PpRun   *run,
            double         drawn_in)
{
  const PpPanel *panel = scene->panel;
  double radius = panel->wire->diameter / 2;
  PpBox reach = pp_run_get_box (run, radius);

  *self = (Sight) {
    .background = pp_cover_of_background (scene),
    .covers = g_array_new (FALSE, FALSE, sizeof (PpCover)),
    .opaque = pp_panel_get_limit (panel, PP_LIMIT_OPAQUE),
    .radius = radius,
  };
  for (guint i = 0; i < scene->n_parts; i++)
    add_cover (self->covers, pp_cover_of_part (&scene->parts[i]), reach);
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];
      PpCover cover = pp_cover_of_body (body);

      cover.drawn_in = drawn_in;
      if (pp_conceal_counts (rests, i))
        add_cover (self->covers, cover, reach);
    }
}

static void
sight_clear (Sight *self)
{
  g_array_unref (self->covers);
}

/* `room`: as far as this from a point that is hidden all are. */
static gboolean
is_hidden_at (const Sight *self,
              PpPoint      p,
              double      *room)
{
  double through = 1;

  *room = INFINITY;
  if (pp_cover_contains (&self->background, p))
    {
      through *= self->background.transmittance;
      *room = pp_cover_distance (&self->background, p);
    }
  for (guint i = 0; i < self->covers->len && pp_is_over (through, self->opaque); i++)
    {
      const PpCover *cover = &g_array_index (self->covers, PpCover, i);

      if (!pp_cover_contains (cover, p))
        continue;
      through *= cover->transmittance;
      *room = fmin (*room, pp_cover_distance (cover, p) - cover->drawn_in);
    }
  *room -= 2 * PP_TIE;
  return !pp_is_over (through, self->opaque);
}

/* One of the three lines of a leg, looked at from its start on. */
typedef struct
{
  double aside;
  double hidden_to; /* mm along, known to be hidden up to there */
} Strand;

static gboolean
is_hidden_along (const Sight *self,
                 const PpLeg *leg,
                 Strand      *strand,
                 double       along)
{
  double room;

  if (along < strand->hidden_to)
    return TRUE;
  if (!is_hidden_at (self, pp_leg_point (leg, along, strand->aside), &room))
    return FALSE;
  strand->hidden_to = along + room;
  return TRUE;
}

static int
compare_doubles (gconstpointer a,
                 gconstpointer b)
{
  double p = *(const double *) a, q = *(const double *) b;

  return p < q ? -1 : p > q;
}

/* Where anything changes on the centre line or an edge, from 0 to its length, rising. (transfer
 * full) */
static GArray *
cut_leg (const Sight *self,
         const PpLeg *leg)
{
  GArray *cuts = g_array_new (FALSE, TRUE, sizeof (double));
  double start = 0;

  g_array_append_val (cuts, start);
  g_array_append_val (cuts, leg->length);
  pp_cover_cut (&self->background, leg->from, leg->direction, leg->length, self->radius, cuts);
  for (guint i = 0; i < self->covers->len; i++)
    pp_cover_cut (&g_array_index (self->covers, PpCover, i), leg->from, leg->direction, leg->length,
                  self->radius, cuts);
  g_array_sort (cuts, compare_doubles);
  return cuts;
}

/* Adds an exposed stretch, or makes the last one longer where `runs_on` from it. */
static void
expose (GArray      *exposed,
        const PpLeg *leg,
        double       start,
        double       end,
        gboolean     beyond,
        gboolean     runs_on)
{
  PpExposed *last = exposed->len > 0 ? &g_array_index (exposed, PpExposed, exposed->len - 1) : NULL;
  PpExposed stretch = { .from = pp_leg_point (leg, start, 0), .to = pp_leg_point (leg, end, 0),
                        .length = end - start, .beyond = beyond };

  if (runs_on && last != NULL && last->beyond == beyond)
    {
      last->to = stretch.to;
      last->length += stretch.length;
    }
  else
    g_array_append_val (exposed, stretch);
}

/* `runs_on` is TRUE while the wire right before is exposed. */
static void
look_at_leg (const Sight *self,
             const PpLeg *leg,
             GArray      *exposed,
             double      *hidden,
             gboolean    *runs_on)
{
  g_autoptr (GArray) cuts = cut_leg (self, leg);
  Strand strands[] = { { 0, -1 }, { -self->radius, -1 }, { self->radius, -1 } };

  for (guint i = 0; i + 1 < cuts->len; i++)
    {
      double start = g_array_index (cuts, double, i), end = g_array_index (cuts, double, i + 1);
      double middle = (start + end) / 2;
      PpPoint centre = pp_leg_point (leg, middle, 0);

      if (end - start <= PP_NO_LENGTH)
        continue;
      if (is_hidden_along (self, leg, &strands[0], middle)
          && is_hidden_along (self, leg, &strands[1], middle)
          && is_hidden_along (self, leg, &strands[2], middle))
        {
          *hidden += end - start;
          *runs_on = FALSE;
          continue;
        }
      expose (exposed, leg, start, end, !pp_cover_contains (&self->background, centre), *runs_on);
      *runs_on = TRUE;
    }
}

/* A wire without an exposed stretch is hidden to the last figure, one without length too. */
static void
path_init (PpPath      *self,
           const Sight *sight,
           const PpRun *run)
{
  GArray *exposed = g_array_new (FALSE, FALSE, sizeof (PpExposed));
  gboolean runs_on = FALSE;

  *self = (PpPath) { 0 };
  for (guint i = 0; i < run->n_legs; i++)
    {
      PpLeg leg = pp_run_get_leg (run, i);

      self->length += leg.length;
      look_at_leg (sight, &leg, exposed, &self->hidden, &runs_on);
    }
  for (guint i = 0; i < exposed->len; i++)
    if (g_array_index (exposed, PpExposed, i).beyond)
      self->beyond += g_array_index (exposed, PpExposed, i).length;
  if (exposed->len == 0)
    self->hidden = self->length;
  self->share = self->length > 0 ? self->hidden / self->length : 1;
  self->n_exposed = exposed->len;
  self->exposed = (PpExposed *) (gpointer) g_array_free (exposed, FALSE);
}

static void
look_along (PpPath        *path,
            const PpScene *scene,
            PpRest       **rests,
            PpRun          run,
            double         drawn_in)
{
  Sight sight;

  sight_init (&sight, scene, rests, &run, drawn_in);
  path_init (path, &sight, &run);
  sight_clear (&sight);
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
  PpRun run = pp_run_lying (scene);
  PpBox box = pp_run_get_box (&run, scene->panel->wire->diameter / 2);

  if (previous != NULL && !pp_changes_meet (changes, box))
    path_copy (&self->lying, &previous->lying);
  else
    look_along (&self->lying, scene, rests, run, 0);
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
  look_along (&self->hung, scene, settled->rests, hung, 0);
  look_along (&barely, scene, settled->rests, hung,
              pp_panel_get_limit (scene->panel, PP_LIMIT_PLACE));
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
  pp_sights_free (self->sights);
  g_free (self->holes);
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
