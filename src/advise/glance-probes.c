/* glance-probes.c: where a glance looks.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/glance-private.h"

#include "panel/tolerance.h"
#include "shape/refraction.h"

#define STEP 1.0        /* mm along the wire, straight on */
#define STEP_ASLANT 3.0
#define RINGS 3         /* of probes in a disc, and its middle */
#define MOST_STEPS 400  /* along the wire */

/* What the probes are made from. */
typedef struct
{
  const PpScene *scene;
  double         radius; /* mm, of the wire */
  double         place;  /* mm by which pieces may land off */
  double         opaque;
  GArray        *probes;
} Making;

static gint32
bare_dark (const Making *self,
           PpPoint       p)
{
  const PpPanel *panel = self->scene->panel;
  PpCover background = pp_cover_of_background (self->scene);
  gint32 dark = 0;

  /* Beyond the glass it is in plain view whatever lies there, and no search is to mind. */
  if (!pp_cover_contains (&background, p))
    return PP_DARK;
  dark += pp_dark_of (panel->background->glass.transmittance, self->opaque);
  for (guint i = 0; i < self->scene->n_parts; i++)
    {
      PpCover part = pp_cover_of_part (&self->scene->parts[i]);

      if (pp_cover_contains (&part, p))
        dark += pp_dark_of (self->scene->parts[i].fused->glass.transmittance, self->opaque);
    }
  return dark;
}

/* A straight part of the wire as it hangs. */
typedef struct
{
  PpPoint from;
  PpPoint along; /* unit vector */
  double  length;
} Leg;

/* `along` mm from its start, `aside` mm from its middle. */
static PpPoint
point_on (const Leg *leg,
          double     along,
          double     aside)
{
  return (PpPoint) { leg->from.x + along * leg->along.x - aside * leg->along.y,
                     leg->from.y + along * leg->along.y + aside * leg->along.x };
}

/* About a point: itself, and `around` mm on four sides. */
static PpProbe
probe_about (PpPoint at,
             PpPoint along,
             double  around)
{
  PpPoint aside = { -along.y, along.x };

  return (PpProbe) { .n = 5, .points = {
    at,
    { at.x + around * along.x, at.y + around * along.y },
    { at.x - around * along.x, at.y - around * along.y },
    { at.x + around * aside.x, at.y + around * aside.y },
    { at.x - around * aside.x, at.y - around * aside.y } } };
}

static void
add_wire_probe (Making    *self,
                const Leg *leg,
                double     along,
                double     length)
{
  PpPoint at = point_on (leg, along, 0);
  PpProbe wire = { .kind = PP_PROBE_WIRE, .n = 3, .length = length, .bare = bare_dark (self, at),
                   .points = { at, point_on (leg, along, self->radius),
                               point_on (leg, along, -self->radius) } };
  PpProbe barely = probe_about (at, leg->along, self->place + self->radius);

  barely.kind = PP_PROBE_BARELY;
  barely.length = length;
  barely.bare = wire.bare;
  g_array_append_val (self->probes, wire);
  g_array_append_val (self->probes, barely);
}

static void
add_view_probe (Making       *self,
                const Leg    *leg,
                double        along,
                double        length,
                guint         view,
                const PpView *from)
{
  const PpBackground *glass = self->scene->panel->background;
  PpPoint at = point_on (leg, along, 0);
  PpPoint slant = { tan (from->sideways * G_PI / 180), -tan (from->updown * G_PI / 180) };
  double slope = hypot (slant.x, slant.y);
  double bent = pp_refraction_shift (glass->thickness, slope, glass->glass.refractive_index);
  double shift = (self->radius * slope + bent) / slope;
  PpProbe probe = { .kind = PP_PROBE_ASLANT, .which = view, .n = 1, .length = length,
                    .slant = slant,
                    .points = { { at.x + shift * slant.x, at.y + shift * slant.y } } };

  probe.bare = bare_dark (self, probe.points[0]);
  g_array_append_val (self->probes, probe);
}

static guint
count_steps (double length,
             double step)
{
  return (guint) CLAMP (ceil (length / step), 1, MOST_STEPS);
}

static void
add_leg (Making          *self,
         const Leg       *leg,
         const PpConceal *conceal)
{
  guint n = count_steps (leg->length, STEP), n_aslant = count_steps (leg->length, STEP_ASLANT);

  for (guint k = 0; k < n; k++)
    add_wire_probe (self, leg, (k + 0.5) * leg->length / n, leg->length / n);
  for (guint v = 0; v < PP_N_VIEWS; v++)
    if (conceal->views[v].sideways != 0 || conceal->views[v].updown != 0)
      for (guint k = 0; k < n_aslant; k++)
        add_view_probe (self, leg, (k + 0.5) * leg->length / n_aslant, leg->length / n_aslant, v,
                        &conceal->views[v]);
}

/* Rings of 6, 12, 18 ... probes, each for the same area. */
static void
add_disc (Making *self,
          guint   hole,
          PpPoint centre,
          double  radius)
{
  guint total = 1 + 3 * RINGS * (RINGS + 1);

  for (guint ring = 0; ring <= RINGS; ring++)
    for (guint k = 0; k < MAX (1, 6 * ring); k++)
      {
        double r = ring * radius / (RINGS + 0.5), angle = 2 * G_PI * k / MAX (1, 6 * ring);
        PpPoint at = { centre.x + r * cos (angle), centre.y + r * sin (angle) };
        PpProbe disc = { .kind = PP_PROBE_DISC, .which = hole, .n = 1, .length = 1.0 / total,
                         .points = { at } };
        PpProbe barely = probe_about (at, (PpPoint) { 1, 0 }, self->place);

        barely.kind = PP_PROBE_DISC_BARELY;
        barely.which = hole;
        barely.length = disc.length;
        g_array_append_val (self->probes, disc);
        g_array_append_val (self->probes, barely);
      }
}

static void
add_leg_between (Making          *self,
                 PpPoint          from,
                 PpPoint          to,
                 const PpConceal *conceal)
{
  Leg leg = { .from = from, .length = pp_point_distance (from, to) };

  if (leg.length <= PP_TIE)
    return;
  leg.along = (PpPoint) { (to.x - from.x) / leg.length, (to.y - from.y) / leg.length };
  add_leg (self, &leg, conceal);
}

static void
add_wire (Making        *self,
          const PpCheck *check)
{
  PpPoint from = pp_scene_knot_place (check->scene, 0);
  PpPoint to = pp_scene_knot_place (check->scene, 1);

  if (check->hang->is_taut)
    {
      add_leg_between (self, from, to, check->conceal);
      return;
    }
  add_leg_between (self, from, check->hang->hook, check->conceal);
  add_leg_between (self, check->hang->hook, to, check->conceal);
}

static void
make_probes (Making        *self,
             const PpCheck *check)
{
  const PpPanel *panel = check->panel;

  if (check->hang != NULL)
    add_wire (self, check);
  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, i);
      gboolean is_knot = pp_wire_ends_in (panel->wire, hole->id);

      add_disc (self, i, (PpPoint) { hole->x, hole->y },
                (is_knot ? panel->wire->knot_diameter : hole->diameter) / 2);
    }
}

PpProbe *
pp_probes_new (const PpCheck *check,
               guint         *n_probes)
{
  const PpPanel *panel = check->panel;
  Making making = {
    .scene = check->scene,
    .radius = panel->wire != NULL ? panel->wire->diameter / 2 : 0,
    .place = pp_panel_get_limit (panel, PP_LIMIT_PLACE),
    .opaque = pp_panel_get_limit (panel, PP_LIMIT_OPAQUE),
    .probes = g_array_new (FALSE, FALSE, sizeof (PpProbe)),
  };

  make_probes (&making, check);
  *n_probes = making.probes->len;
  return (PpProbe *) (gpointer) g_array_free (making.probes, FALSE);
}

PpProbe
pp_probe_over (const PpScene *scene,
               PpPoint        at,
               gint32        *bare)
{
  Making making = { .scene = scene,
                    .opaque = pp_panel_get_limit (scene->panel, PP_LIMIT_OPAQUE) };

  *bare = bare_dark (&making, at);
  return probe_about (at, (PpPoint) { 1, 0 }, pp_panel_get_limit (scene->panel, PP_LIMIT_PLACE));
}
