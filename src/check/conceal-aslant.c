/* conceal-aslant.c: how much of the hung wire is hidden from each of 21 sides.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each leg is cut into equal parts of about PART. A line of sight from a part's middle leaves the
 * front face shifted by the thickness of glass and wire, bent by Snell's law; the pieces it then
 * meets are those of midsurface.h.
 */
#include "check/conceal-private.h"

#include "check/finding.h"
#include "check/midsurface.h"
#include "check/refraction.h"

#define PART 0.5 /* mm */
#define RADIANS (G_PI / 180)

/* All that may hide the wire, and the view it is seen from. */
typedef struct
{
  const PpPanel *panel;
  PpCover        background;
  GArray        *parts;   /* PpCover */
  GArray        *pieces;  /* PpMidsurface */
  double         opaque;
  PpPoint        slant;   /* mm in plan a mm of height, toward the viewer */
  PpPoint        shift;   /* mm, from the wire to where its sight leaves the front face */
  GArray        *shadows; /* PpBox of each piece in this view */
} Aslant;

static void
aslant_init (Aslant        *self,
             const PpScene *scene,
             PpRest       **rests)
{
  const PpPanel *panel = scene->panel;

  *self = (Aslant) {
    .panel = panel,
    .background = pp_cover_make (scene->background_outline, panel->background->glass.transmittance),
    .parts = g_array_new (FALSE, FALSE, sizeof (PpCover)),
    .pieces = g_array_new (FALSE, FALSE, sizeof (PpMidsurface)),
    .opaque = pp_panel_get_limit (panel, PP_LIMIT_OPAQUE),
    .shadows = g_array_new (FALSE, FALSE, sizeof (PpBox)),
  };
  for (guint i = 0; i < scene->n_parts; i++)
    {
      PpCover part = pp_cover_make (scene->parts[i].fused->outline,
                                    scene->parts[i].fused->glass.transmittance);

      g_array_append_val (self->parts, part);
    }
  for (guint i = 0; i < scene->n_bodies; i++)
    if (pp_conceal_counts (rests, i))
      {
        PpMidsurface piece = pp_midsurface_make (rests[i], scene->bodies[i]);

        g_array_append_val (self->pieces, piece);
      }
}

static void
aslant_clear (Aslant *self)
{
  g_array_unref (self->parts);
  g_array_unref (self->pieces);
  g_array_unref (self->shadows);
}

static void
aslant_turn (Aslant *self,
             double  sideways,
             double  updown)
{
  PpPoint slant = { tan (sideways * RADIANS), -tan (updown * RADIANS) };
  double steep = hypot (slant.x, slant.y);
  const PpBackground *back = self->panel->background;

  self->slant = slant;
  self->shift = (PpPoint) { 0, 0 };
  if (steep > 0)
    {
      double bent = pp_refraction_shift (back->thickness, steep, back->glass.refractive_index);
      double reach = (self->panel->wire->diameter / 2 * steep + bent) / steep;

      self->shift = (PpPoint) { reach * slant.x, reach * slant.y };
    }
  g_array_set_size (self->shadows, 0);
  for (guint i = 0; i < self->pieces->len; i++)
    {
      PpBox shadow = pp_midsurface_get_shadow (&g_array_index (self->pieces, PpMidsurface, i),
                                               slant);

      g_array_append_val (self->shadows, shadow);
    }
}

static gboolean
box_contains (const PpBox *box,
              PpPoint      p)
{
  return p.x >= box->x0 && p.x <= box->x1 && p.y >= box->y0 && p.y <= box->y1;
}

static gboolean
is_hidden_at (const Aslant *self,
              PpPoint       wire)
{
  PpPoint front = { wire.x + self->shift.x, wire.y + self->shift.y };
  double through = 1;

  if (pp_cover_contains (&self->background, front))
    through *= self->background.transmittance;
  for (guint i = 0; i < self->parts->len; i++)
    {
      const PpCover *part = &g_array_index (self->parts, PpCover, i);

      if (pp_cover_contains (part, front))
        through *= part->transmittance;
    }
  for (guint i = 0; i < self->pieces->len && pp_is_over (through, self->opaque); i++)
    {
      const PpMidsurface *piece = &g_array_index (self->pieces, PpMidsurface, i);

      if (box_contains (&g_array_index (self->shadows, PpBox, i), front)
          && pp_midsurface_meets (piece, front, self->slant))
        through *= piece->cover.transmittance;
    }
  return !pp_is_over (through, self->opaque);
}

static double
hidden_of_leg (const Aslant *self,
               const PpLeg  *leg)
{
  double radius = self->panel->wire->diameter / 2;
  guint n = (guint) fmax (1, round (leg->length / PART));
  guint hidden = 0;

  for (guint i = 0; i < n; i++)
    {
      double along = leg->length * (i + 0.5) / n;

      if (is_hidden_at (self, pp_leg_point (leg, along, 0))
          && is_hidden_at (self, pp_leg_point (leg, along, -radius))
          && is_hidden_at (self, pp_leg_point (leg, along, radius)))
        hidden++;
    }
  return leg->length * ((double) hidden / n); /* all of it to the last figure */
}

/* A wire without length is hidden, as straight on. */
static double
share_of_run (const Aslant *self,
              const PpRun  *run)
{
  double length = 0, hidden = 0;

  for (guint i = 0; i < run->n_legs; i++)
    {
      PpLeg leg = pp_run_get_leg (run, i);

      length += leg.length;
      hidden += hidden_of_leg (self, &leg);
    }
  return length > 0 ? CLAMP (hidden / length, 0, 1) : 1;
}

/* The first of those within PP_TIE of the least, in the order of the views: sideways rising, in
 * each updown rising. */
static PpView
find_worst (const PpView *views)
{
  double least = INFINITY;
  guint i = 0;

  for (guint k = 0; k < PP_N_VIEWS; k++)
    least = fmin (least, views[k].share);
  while (pp_is_over (views[i].share, least))
    i++;
  return views[i];
}

void
pp_conceal_look_aslant (PpConceal     *self,
                        const PpScene *scene,
                        PpRest       **rests,
                        const PpHang  *hang)
{
  const PpDisplay *display = scene->panel->display;
  PpRun run = pp_run_hung (scene, hang);
  PpView *view = self->views;
  Aslant aslant;

  aslant_init (&aslant, scene, rests);
  for (int h = -3; h <= 3; h++)
    for (int v = -1; v <= 1; v++, view++)
      {
        /* + 0.0 makes a plain zero of the negative one. */
        view->sideways = display->sideways * h / 3 + 0.0;
        view->updown = display->updown * v + 0.0;
        aslant_turn (&aslant, view->sideways, view->updown);
        view->share = share_of_run (&aslant, &run);
      }
  aslant_clear (&aslant);
  self->worst = find_worst (self->views);
}
