/* flower.c: flowers seen from the front, petal by petal and then their middle.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light comes from the upper left, as on all pieces: a petal has a bright line along the side that
 * faces it and shade along the other, and lies in the shade of the petal over it.
 */
#include "piece/look.h"
#include "piece/noise.h"
#include "piece/petal.h"

#define LIGHT_X -0.6 /* toward the light */
#define LIGHT_Y -0.8
#define GOLDEN_ANGLE 2.399963229728653
#define BAND 11 /* points along a band */
#define N_DOTS 90

typedef struct
{
  const PpMeasures *measures;
  const PpPetals   *petals;
  PpTint            tint;
  PpSvg            *svg;
} Flower;

/* Between two shares of the width, from place `from` to place `to` along the petal, coming to a
 * point at both. */
static void
draw_band (const Flower  *self,
           const PpPetal *petal,
           PpPaint        paint,
           double         from,
           double         to,
           double         border,
           double         depth)
{
  PpPoint points[2 * BAND];

  for (guint i = 0; i < BAND; i++)
    {
      double share = (double) i / (BAND - 1);
      double out = from + (to - from) * share;
      double inset = depth * sin (G_PI * share);

      points[i] = pp_petal_point (petal, out, border);
      points[2 * BAND - 1 - i] = pp_petal_point (petal, out, border * (1 - inset));
    }
  pp_svg_area (self->svg, paint, points, 2 * BAND);
}

static void
draw_vein (const Flower  *self,
           const PpPetal *petal,
           PpPaint        paint,
           double         to,
           double         across,
           double         width)
{
  PpPoint points[2 * BAND];

  for (guint i = 0; i < BAND; i++)
    {
      double share = (double) i / (BAND - 1);
      double out = 0.02 + (to - 0.02) * share;
      double half = width * (1 - share * 0.9);

      points[i] = pp_petal_point (petal, out, across - half);
      points[2 * BAND - 1 - i] = pp_petal_point (petal, out, across + half);
    }
  pp_svg_area (self->svg, paint, points, 2 * BAND);
}

/* Seen from the front: a ray has a few furrows, a lobe a fan of fine lines. */
static void
draw_veins (const Flower  *self,
            const PpPetal *petal,
            guint          index)
{
  gboolean is_ray = self->measures->recipe == PP_RECIPE_RAY;
  int each_side = is_ray ? 1 : self->petals->n_petals < 8 ? 5 : 3;
  double gap = is_ray ? 0.3 : 0.8 / each_side;
  PpPaint paint = { .tint = pp_tint_dark (self->tint, is_ray ? 0.4 : 0.5),
                    .opacity = is_ray ? 0.38 : 0.3 };

  for (int k = -each_side; k <= each_side; k++)
    {
      guint place = index * 31 + (guint) (k + each_side);
      double to = 0.86 - 0.03 * k * k / (each_side * 0.2 + 1)
                  + 0.06 * pp_noise_at (self->measures->seed, 300 + place);

      if (!is_ray || k != 0)
        draw_vein (self, petal, paint, CLAMP (to, 0.4, 0.95),
                   k * gap + 0.04 * pp_noise_at (self->measures->seed, 900 + place),
                   is_ray ? 0.045 : 0.028);
    }
}

/* Lies over what is already drawn, a little larger to the sides, and ends at the notch. */
static void
draw_petal_shade (const Flower  *self,
                  const PpPetal *petal)
{
  PpPoint border[PP_PETAL_MOST_POINTS];
  PpPetal wide = *petal;
  double more = fmin (0.14, 0.05 / petal->spread);

  wide.reach = petal->reach * 0.975;
  for (guint i = 0; i < 2; i++)
    {
      wide.neck = fmin (petal->neck * (0.9 - 0.06 * i), wide.reach * 0.99);
      pp_petal_border (&wide, 1 + more * (1 + i), border);
      pp_svg_area (self->svg, (PpPaint) { .tint = pp_tint_dark (self->tint, 0.75), .opacity = 0.2 },
                   border, petal->n_points);
    }
}

/* Bands one in another, so that shade and light fade toward the middle of the petal. */
static void
draw_relief (const Flower  *self,
             const PpPetal *petal)
{
  double turned = cos (petal->angle + G_PI / 2) * LIGHT_X + sin (petal->angle + G_PI / 2) * LIGHT_Y;
  double bright = turned > 0 ? 1 : -1;
  guint n = self->petals->n_petals < 9 ? 4 : 2;
  PpPaint shade = { .tint = pp_tint_dark (self->tint, 0.65), .opacity = 0.4 / n };
  PpPaint light = { .tint = PP_TINT_WHITE, .opacity = 0.48 / n };

  for (guint i = 1; i <= n; i++)
    draw_band (self, petal, shade, 0.1 + 0.16 * i / n, 0.99 - 0.08 * i / n, -bright, 0.56 * i / n);
  for (guint i = 1; i < n; i++)
    draw_band (self, petal, light, 0.4 - 0.2 * i / n, 0.97, bright * 0.97, 0.4 * i / n);
  draw_band (self, petal, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.65 }, 0.45, 0.965,
             bright * 0.94, 0.08);
  draw_band (self, petal, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.35 }, 0.55, 0.9,
             bright * 0.66, 0.16);
}

static void
draw_petal (const Flower *self,
            guint         index,
            guint         body)
{
  const PpPetal *petal = &self->petals->petals[index];
  PpPoint border[PP_PETAL_MOST_POINTS];

  draw_petal_shade (self, petal);
  pp_petal_border (petal, 1, border);
  pp_svg_area (self->svg, (PpPaint) { .gradient = body, .opacity = 1 }, border, petal->n_points);
  draw_veins (self, petal, index);
  draw_relief (self, petal);
}

static void
draw_disc (const Flower *self,
           PpPaint       paint,
           PpPoint       centre,
           double        radius)
{
  PpPoint points[40];

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    {
      double angle = 2 * G_PI * i / G_N_ELEMENTS (points);
      double r = radius * (1 + 0.012 * pp_noise_smooth (self->measures->seed + 5,
                                                        (double) i / G_N_ELEMENTS (points)));

      points[i] = (PpPoint) { centre.x + r * cos (angle), centre.y + r * sin (angle) };
    }
  pp_svg_area (self->svg, paint, points, G_N_ELEMENTS (points));
}

/* One over the next all round would leave the first on top of the last: every other lies above. */
static void
draw_petals (const Flower *self)
{
  double reach = self->measures->measures[PP_MEASURE_ACROSS] / 2;
  gboolean is_ray = self->measures->recipe == PP_RECIPE_RAY;
  const PpStop stops[] = {
    { 0, pp_tint_dark (self->tint, 0.45), 1 },
    { 0.4, pp_tint_dark (self->tint, is_ray ? 0.12 : 0.2), 1 },
    { 0.82, pp_tint_light (self->tint, is_ray ? 0.3 : 0.15), 1 },
    { 0.95, pp_tint_light (self->tint, 0.3), 1 },
    { 1, pp_tint_dark (self->tint, 0.08), 1 },
  };
  guint body = pp_svg_radial (self->svg, (PpPoint) { 0, 0 }, reach, stops, G_N_ELEMENTS (stops));

  draw_disc (self, (PpPaint) { .tint = stops[0].tint, .opacity = 1 }, (PpPoint) { 0, 0 },
             self->petals->petals[0].inner * 1.08);
  for (guint turn = 0; turn < 2; turn++)
    for (guint i = turn; i < self->petals->n_petals; i += 2)
      draw_petal (self, i, body);
}

/* As seeds stand in a flower head. */
static void
draw_dots (const Flower *self,
           PpPaint       paint,
           double        radius,
           PpPoint       by,
           double        width)
{
  PpPoint points[N_DOTS];

  for (guint i = 0; i < N_DOTS; i++)
    {
      double r = radius * sqrt ((i + 0.5) / N_DOTS);
      double angle = i * GOLDEN_ANGLE;

      points[i] = (PpPoint) { by.x + r * cos (angle), by.y + r * sin (angle) };
    }
  pp_svg_dots (self->svg, paint, width, points, N_DOTS);
}

static void
draw_ray_middle (const Flower *self,
                 double        radius)
{
  const PpStop stops[] = { { 0, 0xffd84f, 1 }, { 0.6, 0xf0ac1c, 1 }, { 1, 0xa85e06, 1 } };
  PpPoint light = { radius * LIGHT_X * 0.35, radius * LIGHT_Y * 0.35 };
  guint body = pp_svg_radial (self->svg, light, radius * 1.3, stops, G_N_ELEMENTS (stops));
  double dot = radius * 0.15;

  draw_disc (self, (PpPaint) { .tint = pp_tint_dark (self->tint, 0.75), .opacity = 0.3 },
             (PpPoint) { radius * 0.06, radius * 0.1 }, radius * 1.1);
  draw_disc (self, (PpPaint) { .gradient = body, .opacity = 1 }, (PpPoint) { 0, 0 }, radius);
  draw_dots (self, (PpPaint) { .tint = 0x8a4d02, .opacity = 0.55 }, radius * 0.9,
             (PpPoint) { dot * 0.12, dot * 0.25 }, dot);
  draw_dots (self, (PpPaint) { .tint = 0xffc92e, .opacity = 1 }, radius * 0.9,
             (PpPoint) { 0, 0 }, dot * 0.8);
  draw_dots (self, (PpPaint) { .tint = 0xfff3b0, .opacity = 0.9 }, radius * 0.9,
             (PpPoint) { -dot * 0.12, -dot * 0.2 }, dot * 0.3);
}

/* A dark throat that fades out, and the knob that stands in it. */
static void
draw_lobed_middle (const Flower *self,
                   double        radius)
{
  PpTint deep = pp_tint_dark (self->tint, 0.6);
  const PpStop stain[] = { { 0, deep, 0.85 }, { 0.5, deep, 0.4 }, { 1, deep, 0 } };
  const PpStop stops[] = { { 0, 0xfdfbe8, 1 }, { 0.6, 0xeadf9c, 1 }, { 1, 0x9c8a3c, 1 } };
  PpPoint light = { radius * LIGHT_X * 0.35, radius * LIGHT_Y * 0.35 };
  guint throat = pp_svg_radial (self->svg, (PpPoint) { 0, 0 }, radius * 2.6, stain, 3);
  guint body = pp_svg_radial (self->svg, light, radius * 1.3, stops, 3);

  draw_disc (self, (PpPaint) { .gradient = throat, .opacity = 1 }, (PpPoint) { 0, 0 },
             radius * 2.6);
  draw_disc (self, (PpPaint) { .tint = deep, .opacity = 0.5 },
             (PpPoint) { radius * 0.12, radius * 0.2 }, radius);
  draw_disc (self, (PpPaint) { .gradient = body, .opacity = 1 }, (PpPoint) { 0, 0 },
             radius * 0.92);
  draw_dots (self, (PpPaint) { .tint = 0x8f7a2a, .opacity = 0.6 }, radius * 0.95,
             (PpPoint) { radius * 0.03, radius * 0.06 }, radius * 0.17);
  draw_dots (self, (PpPaint) { .tint = 0xfffdf0, .opacity = 1 }, radius * 0.95,
             (PpPoint) { 0, 0 }, radius * 0.12);
}

/* Seen into: the wall falls to a dark throat, and pale stripes run down into it. */
static void
draw_cup_middle (const Flower *self,
                 double        radius)
{
  double reach = self->measures->measures[PP_MEASURE_ACROSS] / 2;
  PpTint pale = pp_tint_light (self->tint, 0.75);
  PpTint deep = pp_tint_dark (self->tint, 0.65);
  const PpStop wall[] = { { 0, deep, 0.9 }, { radius / reach, deep, 0.55 },
                          { 0.4 + 0.6 * radius / reach, deep, 0.1 }, { 1, deep, 0 } };
  const PpStop hollow[] = { { 0, 0xfff6c8, 1 }, { 0.35, 0xd9cf7a, 0.9 }, { 1, 0xa8b060, 0 } };
  guint fall = pp_svg_radial (self->svg, (PpPoint) { 0, 0 }, reach, wall, 4);
  guint throat = pp_svg_radial (self->svg, (PpPoint) { 0, 0 }, fmax (radius * 0.7, 0.1), hollow,
                                3);

  draw_disc (self, (PpPaint) { .gradient = fall, .opacity = 1 }, (PpPoint) { 0, 0 },
             reach * 0.93);
  for (guint i = 0; i < self->petals->n_petals; i++)
    for (guint k = 1; k <= 3; k++)
      draw_vein (self, &self->petals->petals[i], (PpPaint) { .tint = pale, .opacity = 0.3 },
                 0.97 - 0.05 * k, 0, 0.1 * k);
  draw_disc (self, (PpPaint) { .gradient = throat, .opacity = 1 }, (PpPoint) { 0, 0 },
             radius * 0.7);
}

PpOutline *
pp_look_flower (const PpMeasures *measures,
                PpTint            tint,
                PpSvg            *svg)
{
  PpPetals petals;
  Flower self = { .measures = measures, .petals = &petals, .tint = tint, .svg = svg };

  pp_petals_init (&petals, measures);
  draw_petals (&self);
  if (measures->recipe == PP_RECIPE_RAY)
    draw_ray_middle (&self, petals.middle);
  else if (measures->recipe == PP_RECIPE_LOBED)
    draw_lobed_middle (&self, petals.middle);
  else
    draw_cup_middle (&self, petals.middle);
  return pp_petals_get_outline (&petals);
}
