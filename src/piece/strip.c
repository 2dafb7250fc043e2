/* strip.c: a long piece, in places along it and across it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/strip.h"

#include "piece/noise.h"
#include "piece/recipes.h"

#define N_ALONG 64 /* steps along a side */
#define SCALLOP 0.22 /* share of the width between two bells of a spike */

/* The middle of the two slopes beside it, but so that the curve turns only at or near a width that
 * is the greatest: three times the lesser slope is the most that keeps it rising (Fritsch and
 * Carlson, SIAM Journal on Numerical Analysis 17, 1980), and at a waist it is level. */
static double
slope_between (double before,
               double after)
{
  double middle = (before + after) / 2;
  double most = 3 * fmin (fabs (before), fabs (after));

  if (before <= 0 && after >= 0)
    return 0;
  return before >= 0 && after <= 0 ? middle : CLAMP (middle, -most, most);
}

static void
set_slopes (PpStrip *self)
{
  double rise[4];

  for (guint i = 0; i < 4; i++)
    rise[i] = (self->width[i + 1] - self->width[i]) * 4;
  self->slope[0] = self->recipe == PP_RECIPE_LEAF ? 1.6 * rise[0] : rise[0];
  self->slope[4] = rise[3];
  for (guint i = 1; i < 4; i++)
    self->slope[i] = slope_between (rise[i - 1], rise[i]);
}

void
pp_strip_init (PpStrip          *self,
               const PpMeasures *measures)
{
  const double *m = measures->measures;
  const PpRecipeEnds *end = &pp_recipe_get_row (measures->recipe)->ends;

  *self = (PpStrip) {
    .recipe = measures->recipe,
    .length = m[PP_MEASURE_LENGTH],
    .width = { end->base * m[PP_MEASURE_QUARTER], m[PP_MEASURE_QUARTER], m[PP_MEASURE_HALF],
               m[PP_MEASURE_THREE_QUARTERS], end->tip * m[PP_MEASURE_THREE_QUARTERS] },
    .bend = m[PP_MEASURE_BEND],
    .seed = measures->seed,
    .scallops = measures->recipe == PP_RECIPE_SPIKE ? 8 : 0,
  };
  self->sway = measures->recipe == PP_RECIPE_ROD
                 ? 0.1 * m[PP_MEASURE_HALF] : fmin (0.03 * m[PP_MEASURE_HALF], 1);
  set_slopes (self);
}

static double
curve_at (const PpStrip *self,
          double         along)
{
  guint i = along >= 1 ? 3 : (guint) (along * 4);
  double t = along * 4 - i;
  double from = self->width[i];
  double to = self->width[i + 1];

  if (self->recipe == PP_RECIPE_SHARD)
    return from + (to - from) * t;
  return from * (1 + 2 * t) * (1 - t) * (1 - t) + to * t * t * (3 - 2 * t)
         + (self->slope[i] * t * (1 - t) * (1 - t) + self->slope[i + 1] * t * t * (t - 1)) / 4;
}

/* 0 at the end, 1 from `depth` on, a quarter of an ellipse between. */
static double
rounded (double from_end,
         double depth)
{
  double short_of = 1 - from_end / depth;

  return short_of <= 0 ? 1 : sqrt (fmax (1 - short_of * short_of, 0));
}

static double
get_depth (const PpStrip *self,
           double         width,
           double         share)
{
  return CLAMP (width * share / self->length, 0.004, 0.24);
}

double
pp_strip_get_width (const PpStrip *self,
                    double         along)
{
  const PpRecipeEnds *end = &pp_recipe_get_row (self->recipe)->ends;
  double width = curve_at (self, along)
                 * rounded (along, get_depth (self, self->width[0], end->round_base))
                 * rounded (1 - along, get_depth (self, self->width[4], end->round_tip));

  /* whole at every quarter, where it was measured */
  if (self->scallops > 0)
    width *= 1 - SCALLOP * (1 - fabs (cos (G_PI * self->scallops * along)));
  return width;
}

PpPoint
pp_strip_point (const PpStrip *self,
                double         along,
                double         across)
{
  double sway = self->sway
                * (pp_noise_smooth (self->seed, along) - pp_noise_smooth (self->seed, 0));
  double middle = self->bend * (along * along - 0.25) + sway;

  return (PpPoint) { middle + across * pp_strip_get_width (self, along) / 2,
                     self->length * (0.5 - along) };
}

/* Steps are closer at the ends, where it rounds. */
static double
place_of (const PpStrip *self,
          guint          step)
{
  double t = (double) step / N_ALONG;

  if (self->scallops > 0)
    return t;
  return 0.35 * t + 0.65 * (1 - cos (G_PI * t)) / 2;
}

PpOutline *
pp_strip_get_outline (const PpStrip *self)
{
  PpPoint points[2 * N_ALONG];

  /* the ends have no width: each is one point */
  for (guint i = 0; i <= N_ALONG; i++)
    points[i] = pp_strip_point (self, place_of (self, i), -1);
  for (guint i = 1; i < N_ALONG; i++)
    points[2 * N_ALONG - i] = pp_strip_point (self, place_of (self, i), 1);
  return pp_outline_new_ring (points, 2 * N_ALONG);
}
