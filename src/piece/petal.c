/* petal.c: the petals of a flower.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/petal.h"

#include "piece/noise.h"
#include "shape/polygon.h"
#include "shape/region.h"

#define OVERLAP 0.2 /* of half the angle: inward of the notch no gap is left */
#define CLOSING 4   /* the overlap is whole this part of a notch inward of it */
#define ASTRAY 0.3  /* of the overlap: how far a petal stands from its place, at most */
#define ACROSS_ERROR 0.005 /* mm */
#define MOST_TRIES 12
#define DISC_POINTS 48
#define FEW_PETALS 9

/* How wide it is at `r`, as a share of half the angle to its neighbours. */
static double
width_at (const PpPetal *self,
          double         r)
{
  double beyond = (r - self->neck) / (self->reach - self->neck);

  if (beyond <= 0)
    return 1 + self->overlap * fmin (-beyond * CLOSING, 1);
  return pow (fmax (1 - pow (beyond, self->squarish), 0), 1 / self->squarish);
}

PpPoint
pp_petal_point (const PpPetal *self,
                double         out,
                double         across)
{
  double r = self->inner + (self->reach - self->inner) * out;
  double turn = across * width_at (self, r) * self->spread;
  double share = r / self->reach;
  double wave = self->ruffle * share * share * share
                * pp_noise_smooth (self->seed, turn / self->spread / 2);

  r *= 1 - self->ruffle + wave;
  return (PpPoint) { r * cos (self->angle + turn), r * sin (self->angle + turn) };
}

void
pp_petal_border (const PpPetal *self,
                 double         share,
                 PpPoint       *points)
{
  double whole = self->reach - self->inner;
  double neck = (self->neck - self->inner) / whole;
  double closed = neck - (self->reach - self->neck) / CLOSING / whole;

  for (guint i = 0; i < self->n_points; i++)
    {
      double side = 2 * i < self->n_points ? share : -share;
      guint step = 2 * i < self->n_points ? i : self->n_points - 1 - i;
      double along = 2.0 * ((double) step - 2) / (self->n_points - 6);
      double out = step == 0   ? 0
                   : step == 1 ? fmax (closed, 0)
                               : neck + (1 - neck) * sin (G_PI / 2 * fmin (along, 1));

      points[i] = pp_petal_point (self, out, side);
    }
}

static PpRegion *
ring_region (const PpPoint *points,
             guint          n_points)
{
  g_autoptr (PpOutline) outline = pp_outline_new_ring (points, n_points);

  return pp_region_new (outline);
}

static PpRegion *
middle_region (double radius)
{
  PpPoint points[DISC_POINTS];

  for (guint i = 0; i < DISC_POINTS; i++)
    points[i] = (PpPoint) { radius * cos (2 * G_PI * i / DISC_POINTS),
                            radius * sin (2 * G_PI * i / DISC_POINTS) };
  return ring_region (points, DISC_POINTS);
}

/* The border of the largest polygon; what a petal's waves may have cut off is none of the piece. */
static void
keep_largest (const PpOutline *polygon,
              gpointer         data)
{
  PpOutline **kept = data;
  guint n_positions;
  const PpPoint *ring = pp_outline_get_ring (polygon, 0, &n_positions);
  g_autoptr (PpOutline) border = pp_outline_new_ring (ring, n_positions);

  if (*kept != NULL && pp_outline_area (*kept) >= pp_outline_area (border))
    return;
  g_clear_pointer (kept, pp_outline_unref);
  *kept = g_steal_pointer (&border);
}

PpOutline *
pp_petals_get_outline (const PpPetals *self)
{
  PpRegion *regions[PP_PETALS_MAX + 1];
  g_autoptr (PpRegion) whole = NULL;
  PpOutline *outline = NULL;

  for (guint i = 0; i < self->n_petals; i++)
    {
      PpPoint border[PP_PETAL_MOST_POINTS];

      pp_petal_border (&self->petals[i], 1, border);
      regions[i] = ring_region (border, self->petals[i].n_points);
    }
  regions[self->n_petals] = middle_region (fmax (self->middle, self->petals[0].inner * 1.1));
  whole = pp_region_union (regions, self->n_petals + 1);
  for (guint i = 0; i <= self->n_petals; i++)
    pp_region_unref (regions[i]);
  pp_region_foreach (whole, keep_largest, &outline);
  return outline;
}

/* The farthest two border points of any two petals. */
static double
get_across (const PpPetals *self)
{
  PpPoint points[PP_PETALS_MAX * PP_PETAL_MOST_POINTS];
  PpPoint hull[PP_PETALS_MAX * PP_PETAL_MOST_POINTS];
  guint n_points = self->petals[0].n_points;
  guint n_hull;
  double across = 0;

  for (guint i = 0; i < self->n_petals; i++)
    pp_petal_border (&self->petals[i], 1, points + i * n_points);
  n_hull = pp_convex_hull (points, self->n_petals * n_points, hull);
  for (guint i = 0; i < n_hull; i++)
    for (guint j = 0; j < i; j++)
      across = fmax (across, pp_point_distance (hull[i], hull[j]));
  return across;
}

static void
lay_out (PpPetals         *self,
         const PpMeasures *measures,
         double            reach)
{
  const double *m = measures->measures;
  gboolean is_ray = measures->recipe == PP_RECIPE_RAY;
  double spread = G_PI / self->n_petals;
  double overlap = self->n_petals < FEW_PETALS ? OVERLAP / 3 : OVERLAP;

  for (guint i = 0; i < self->n_petals; i++)
    {
      double longer = 1 + (is_ray ? 0.02 : 0.015) * pp_noise_at (measures->seed, 10 + i);
      double tip = reach * longer;

      self->petals[i] = (PpPetal) {
        .angle = 2 * spread * i - G_PI / 2
                 + ASTRAY * overlap * spread * pp_noise_at (measures->seed, 100 + i),
        .spread = spread,
        .inner = self->middle > 0 ? self->middle * 0.7 : reach * 0.04,
        .neck = fmin (reach - m[PP_MEASURE_NOTCH], tip - m[PP_MEASURE_NOTCH] * 0.6),
        .reach = tip,
        .ruffle = is_ray ? 0.008 : measures->recipe == PP_RECIPE_CUP ? 0.012 : 0.022,
        .overlap = overlap,
        .squarish = is_ray ? 2 : 2.4,
        .n_points = self->n_petals < FEW_PETALS ? PP_PETAL_MOST_POINTS : 22,
        .seed = measures->seed + 17 * i,
      };
    }
}

void
pp_petals_init (PpPetals         *self,
                const PpMeasures *measures)
{
  const double *m = measures->measures;
  double reach = m[PP_MEASURE_ACROSS] / 2;

  g_assert (m[PP_MEASURE_PETALS] >= 1 && m[PP_MEASURE_PETALS] <= PP_PETALS_MAX);
  self->n_petals = (guint) m[PP_MEASURE_PETALS];
  self->middle = m[PP_MEASURE_MIDDLE] / 2;
  lay_out (self, measures, reach);
  for (guint i = 0; i < MOST_TRIES; i++)
    {
      double across = get_across (self);

      if (fabs (across - m[PP_MEASURE_ACROSS]) < ACROSS_ERROR)
        return;
      reach *= m[PP_MEASURE_ACROSS] / across;
      lay_out (self, measures, reach);
    }
}
