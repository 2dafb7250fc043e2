/* long-bloom.c: buds and flower spikes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/long-private.h"
#include "piece/noise.h"

#define SEPAL_GREEN 0x5c9440
#define SEPAL_POINTS 12
#define BELL_POINTS 28

/* Petals wound round one another: each border a fold from the base to near the tip. */
static void
draw_folds (const PpLong *self)
{
  PpPaint dark = { .tint = pp_tint_dark (self->tint, 0.6), .opacity = 0.32 };
  PpPaint light = { .tint = PP_TINT_WHITE, .opacity = 0.4 };
  double width = self->strip->width[2] * 0.05;

  for (int k = -2; k <= 2; k++)
    {
      double across = 0.36 * k - 0.1;
      double tip = across + 0.16 - 0.04 * k
                   + 0.06 * pp_noise_at (self->strip->seed, (guint) (50 + k + 2));

      pp_long_draw_vein (self, dark, (PpPoint) { 0.3, across }, (PpPoint) { 0.985, tip }, -0.02,
                         width * 2);
      pp_long_draw_vein (self, light, (PpPoint) { 0.3, across - 0.09 },
                         (PpPoint) { 0.98, tip - 0.09 }, -0.02, width);
    }
}

/* A green leaf that hugs the bud: from the base, `from` to `to` across, to its tip. */
static void
draw_sepal (const PpLong *self,
            double        from,
            double        to,
            double        tip,
            double        tip_across)
{
  PpTint green = pp_tint_mix (SEPAL_GREEN, self->tint, 0.08);
  PpPoint points[2 * SEPAL_POINTS];
  PpPoint light[2 * SEPAL_POINTS];
  const PpStop stops[] = { { 0, pp_tint_light (green, 0.2), 1 },
                           { 1, pp_tint_dark (green, 0.3), 1 } };
  guint body;

  for (guint i = 0; i < SEPAL_POINTS; i++)
    {
      double share = (double) i / (SEPAL_POINTS - 1);
      double narrow = pow (share, 2.2);
      double left = from + (tip_across - from) * narrow;
      double right = to + (tip_across - to) * narrow;

      points[i] = pp_strip_point (self->strip, tip * share, left);
      points[2 * SEPAL_POINTS - 1 - i] = pp_strip_point (self->strip, tip * share, right);
      light[i] = pp_strip_point (self->strip, tip * (0.06 + 0.9 * share), left);
      light[2 * SEPAL_POINTS - 1 - i]
          = pp_strip_point (self->strip, tip * (0.06 + 0.9 * share),
                            left + (right - left) * 0.22 * sin (G_PI * share));
    }
  body = pp_svg_linear (self->svg, points[SEPAL_POINTS / 2],
                        points[SEPAL_POINTS + SEPAL_POINTS / 2], stops, G_N_ELEMENTS (stops));
  pp_svg_line (self->svg, (PpPaint) { .tint = PP_TINT_BLACK, .opacity = 0.25 },
               self->strip->width[2] * 0.025, points, 2 * SEPAL_POINTS);
  pp_svg_area (self->svg, (PpPaint) { .gradient = body, .opacity = 1 }, points, 2 * SEPAL_POINTS);
  pp_svg_area (self->svg, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.45 }, light,
               2 * SEPAL_POINTS);
}

void
pp_long_draw_bud (const PpLong *self)
{
  double vary = 0.03 * pp_noise_at (self->strip->seed, 60);

  pp_long_draw_body (self, 1);
  draw_folds (self);
  pp_long_draw_band (self, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.6 }, 0.45, 0.92, -0.8,
                     -0.55);
  draw_sepal (self, -1, -0.1, 0.6 + vary, -0.75);
  draw_sepal (self, 0.1, 1, 0.58 - vary, 0.78);
  draw_sepal (self, -0.55, 0.6, 0.54 + vary, 0.05);
}

/* Inside the cell of a row between two places across: full below, its mouth at the top. */
static void
draw_bell (const PpLong *self,
           double        along,
           double        across,
           double        width,
           double        height,
           double        shade)
{
  PpTint tint = pp_tint_dark (self->tint, shade);
  PpPoint centre = pp_strip_point (self->strip, along, across);
  PpPoint points[BELL_POINTS];
  PpPoint gloss[BELL_POINTS];
  PpPoint mouth[BELL_POINTS];
  const PpStop stops[] = { { 0, pp_tint_light (tint, 0.5), 1 }, { 0.55, tint, 1 },
                           { 1, pp_tint_dark (tint, 0.4), 1 } };
  PpPoint light = { centre.x - width * 0.15, centre.y - height * 0.2 };
  guint body = pp_svg_radial (self->svg, light, fmax (width, height) * 0.65, stops, 3);

  for (guint i = 0; i < BELL_POINTS; i++)
    {
      double angle = 2 * G_PI * i / BELL_POINTS;
      double r = 1 - 0.06 * (1 + cos (5 * angle + along * 40));
      double x = cos (angle);
      double y = sin (angle);

      points[i] = (PpPoint) { centre.x + width / 2 * r * x, centre.y + height / 2 * r * y };
      gloss[i] = (PpPoint) { centre.x - width * 0.2 + width * 0.12 * x,
                             centre.y - height * 0.24 + height * 0.09 * y };
      mouth[i] = (PpPoint) { centre.x + width * 0.05 + width * 0.17 * x,
                             centre.y + height * 0.14 + height * 0.13 * y };
    }
  pp_svg_line (self->svg, (PpPaint) { .tint = pp_tint_dark (tint, 0.8), .opacity = 0.2 },
               width * 0.05, points, BELL_POINTS);
  pp_svg_area (self->svg, (PpPaint) { .gradient = body, .opacity = 1 }, points, BELL_POINTS);
  pp_svg_area (self->svg, (PpPaint) { .tint = pp_tint_dark (tint, 0.65), .opacity = 0.45 }, mouth,
               BELL_POINTS);
  pp_svg_area (self->svg, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.6 }, gloss, BELL_POINTS);
}

/* From the tip down, so that each row hangs over the one below it. */
void
pp_long_draw_spike (const PpLong *self)
{
  guint rows = self->strip->scallops;
  double row = self->strip->length / rows;
  PpPoint axis[2] = { pp_strip_point (self->strip, 0.01, 0),
                      pp_strip_point (self->strip, 0.97, 0) };

  pp_long_draw_body (self, 0.4);
  pp_svg_line (self->svg, (PpPaint) { .tint = SEPAL_GREEN, .opacity = 0.8 },
               self->strip->width[2] * 0.12, axis, 2);
  for (guint i = rows; i-- > 0;)
    {
      double along = fmax ((double) i / rows, 0.35 / rows);
      double full = pp_strip_get_width (self->strip, fmax ((double) i / rows, 0.5 / rows));
      double vary = 0.06 * pp_noise_at (self->strip->seed, 90 + i);

      draw_bell (self, along, -0.52, full * 0.5, row * (0.98 + vary), 0.12);
      draw_bell (self, along, 0.52, full * 0.5, row * (0.98 - vary), 0.25);
      draw_bell (self, along + 0.4 / rows, vary, full * 0.52, row * 1.05, 0);
    }
}
