/* conceal-aslant.c: how much of the hung wire is hidden from each of 21 sides.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each leg is cut into equal parts of about PART. A line of sight from a part's middle leaves the
 * front face shifted by the thickness of glass and wire, bent by Snell's law; the pieces it then
 * meets are those of midsurface.h. Far from any outline neighbours have the same answer, so most
 * parts are passed over with the one before.
 */
#include "check/conceal-private.h"

#include "check/finding.h"
#include "check/midsurface.h"
#include "check/refraction.h"
#include "shape/polygon.h"

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

/* One of the three lines of a leg, as where the sights from the middles of its parts leave the
 * front face, and how much light still comes through at each. */
typedef struct
{
  PpPoint from;    /* of the first part's middle */
  PpPoint step;    /* to the next */
  double  spacing; /* mm, its length */
  guint   n;
  double *through;
} Row;

static PpPoint
row_point (const Row *row,
           guint      i)
{
  return (PpPoint) { row->from.x + i * row->step.x, row->from.y + i * row->step.y };
}

/* Narrows [`first`, `last`) to where one coordinate may lie between two bounds, and one more part
 * either way for rounding. */
static void
narrow (double  start,
        double  step,
        double  least,
        double  greatest,
        double *first,
        double *last)
{
  if (fabs (step) < 1e-12)
    {
      if (start < least || start > greatest)
        *last = *first;
      return;
    }
  *first = fmax (*first, floor (fmin ((least - start) / step, (greatest - start) / step)) - 1);
  *last = fmin (*last, ceil (fmax ((least - start) / step, (greatest - start) / step)) + 2);
}

/* The parts that may lie in a box. */
static void
find_range (const Row *row,
            PpBox      box,
            guint     *first,
            guint     *last)
{
  double from = 0, to = row->n;

  narrow (row->from.x, row->step.x, box.x0, box.x1, &from, &to);
  narrow (row->from.y, row->step.y, box.y0, box.y1, &from, &to);
  *first = to > from ? (guint) from : 0;
  *last = to > from ? (guint) to : 0;
}

/* How many parts from the i-th on have the same answer if all within `room` mm have. */
static guint
count_alike (const Row *row,
             guint      i,
             guint      last,
             double     room)
{
  double n = row->spacing > 0 ? 1 + floor (room / row->spacing) : last;

  return (guint) fmin (n, last - i);
}

static void
dim_by_cover (const Aslant  *self,
              const PpCover *cover,
              const Row     *row)
{
  guint first, last;

  find_range (row, pp_box_grow (cover->box, PP_TIE), &first, &last);
  for (guint i = first; i < last;)
    {
      PpPoint p = row_point (row, i);
      guint n = count_alike (row, i, last, fmax (pp_outline_border_distance (cover->outline, p) - 2 * PP_TIE, 0));

      if (pp_cover_contains (cover, p))
        for (guint k = i; k < i + n; k++)
          row->through[k] *= cover->transmittance;
      i += n;
    }
}

static void
dim_by_piece (const Aslant       *self,
              const PpMidsurface *piece,
              PpBox               shadow,
              const Row          *row)
{
  guint first, last, near;

  find_range (row, shadow, &first, &last);
  near = first;
  for (guint i = first; i < last;)
    {
      gboolean meets = FALSE;
      double room = -1;
      guint n = 1;

      if (!pp_is_over (row->through[i], self->opaque)) /* hidden already, and stays so */
        {
          i++;
          continue;
        }
      if (i >= near)
        room = pp_midsurface_get_room (piece, row_point (row, i), self->slant, &meets);
      if (room >= 0)
        n = count_alike (row, i, last, room);
      else
        meets = pp_midsurface_meets (piece, row_point (row, i), self->slant);
      if (i >= near && room < 0) /* as far again it stays too near to tell */
        near = i + count_alike (row, i, last, -room);
      for (guint k = i; meets && k < i + n; k++)
        if (pp_is_over (row->through[k], self->opaque))
          row->through[k] *= piece->cover.transmittance;
      i += n;
    }
}

static void
look_at_row (const Aslant *self,
             const Row    *row)
{
  for (guint i = 0; i < row->n; i++)
    row->through[i] = 1;
  dim_by_cover (self, &self->background, row);
  for (guint i = 0; i < self->parts->len; i++)
    dim_by_cover (self, &g_array_index (self->parts, PpCover, i), row);
  for (guint i = 0; i < self->pieces->len; i++)
    dim_by_piece (self, &g_array_index (self->pieces, PpMidsurface, i),
                  g_array_index (self->shadows, PpBox, i), row);
}

static double
hidden_of_leg (const Aslant *self,
               const PpLeg  *leg)
{
  double radius = self->panel->wire->diameter / 2;
  guint n = (guint) fmax (1, round (leg->length / PART));
  double spacing = leg->length / n;
  const double asides[] = { 0, -radius, radius };
  g_autofree double *through = g_new (double, 3 * (gsize) n);
  guint hidden = 0;

  for (guint k = 0; k < 3; k++)
    {
      PpPoint from = pp_leg_point (leg, spacing / 2, asides[k]);
      Row row = {
        .from = { from.x + self->shift.x, from.y + self->shift.y },
        .step = { spacing * leg->direction.x, spacing * leg->direction.y },
        .spacing = spacing,
        .n = n,
        .through = through + k * n,
      };

      look_at_row (self, &row);
    }
  for (guint i = 0; i < n; i++)
    hidden += !pp_is_over (through[i], self->opaque) && !pp_is_over (through[n + i], self->opaque)
              && !pp_is_over (through[2 * n + i], self->opaque);
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
