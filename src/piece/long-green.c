/* long-green.c: leaves, blades, rods and shards.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/long-private.h"
#include "piece/noise.h"

#define PAIRS 9    /* of side veins */
#define BUBBLES 40 /* caught in the glass */

static void
draw_bubbles (const PpLong *self,
              double        width)
{
  PpPoint points[BUBBLES];

  for (guint i = 0; i < BUBBLES; i++)
    points[i] = pp_strip_point (self->strip,
                                0.5 + 0.46 * pp_noise_at (self->strip->seed, 500 + i),
                                0.85 * pp_noise_at (self->strip->seed, 600 + i));
  pp_svg_dots (self->svg, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.45 }, width, points,
               BUBBLES);
}

/* Pairs of veins, each a fold: dark where it goes in, bright where it comes out. */
static void
draw_side_veins (const PpLong *self)
{
  double width = fmin (self->strip->width[2] * 0.035, 1.2);
  PpPaint dark = { .tint = pp_tint_dark (self->tint, 0.65), .opacity = 0.5 };
  PpPaint light = { .tint = pp_tint_light (self->tint, 0.7), .opacity = 0.55 };

  for (guint i = 0; i < PAIRS; i++)
    for (int side = -1; side <= 1; side += 2)
      {
        double start = 0.06 + 0.8 * i / PAIRS + 0.012 * pp_noise_at (self->strip->seed,
                                                                     40 + 2 * i + (side > 0));
        PpPoint from = { start + (side > 0 ? 0.03 : 0), 0.02 * side };
        PpPoint to = { fmin (start + 0.15, 0.96), 0.86 * side };
        PpPoint below = { from.x - 0.011, from.y };
        PpPoint below_to = { to.x - 0.011, to.y };

        pp_long_draw_vein (self, light, below, below_to, 0.02, width);
        pp_long_draw_vein (self, dark, from, to, 0.02, width);
      }
}

void
pp_long_draw_leaf (const PpLong *self)
{
  double width = fmax (self->strip->width[2] * 0.075, 0.8);
  PpPaint dark = { .tint = pp_tint_dark (self->tint, 0.7), .opacity = 0.45 };
  PpPaint rib = { .tint = pp_tint_light (self->tint, 0.62), .opacity = 1 };

  pp_long_draw_body (self, 0.5);
  pp_long_draw_band (self, (PpPaint) { .tint = pp_tint_dark (self->tint, 0.7), .opacity = 0.16 },
                     0.01, 0.99, 1, 0.03);
  draw_side_veins (self);
  pp_long_draw_vein (self, dark, (PpPoint) { 0.005, 0.04 }, (PpPoint) { 0.97, 0.04 }, 0,
                     width * 1.7);
  pp_long_draw_vein (self, rib, (PpPoint) { 0.005, 0 }, (PpPoint) { 0.97, 0 }, 0, width);
  pp_long_draw_band (self, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.55 }, 0.12, 0.96, -0.97,
                     -0.86);
  pp_long_draw_band (self, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.35 }, 0.3, 0.72, -0.62,
                     -0.38);
  draw_bubbles (self, 0.35);
}

void
pp_long_draw_blade (const PpLong *self)
{
  PpPaint dark = { .tint = pp_tint_dark (self->tint, 0.6), .opacity = 0.4 };
  PpPaint light = { .tint = pp_tint_light (self->tint, 0.6), .opacity = 0.5 };
  double width = fmin (self->strip->width[2] * 0.06, 1);

  pp_long_draw_body (self, 0.6);
  for (int k = -3; k <= 3; k++)
    {
      double end = 0.9 - 0.02 * k * k
                   + 0.04 * pp_noise_at (self->strip->seed, (guint) (70 + k + 3));

      pp_long_draw_vein (self, dark, (PpPoint) { 0.003, 0.26 * k + 0.05 },
                         (PpPoint) { end, 0.2 * k + 0.05 }, 0, width);
      pp_long_draw_vein (self, light, (PpPoint) { 0.003, 0.26 * k - 0.05 },
                         (PpPoint) { end, 0.2 * k - 0.05 }, 0, width);
    }
  pp_long_draw_band (self, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.6 }, 0.04, 0.96, -0.92,
                     -0.74);
}

/* Rings where the rod was pulled and paused. */
static void
draw_rings (const PpLong *self)
{
  guint n = (guint) CLAMP (self->strip->length / (self->strip->width[2] * 9), 2, 9);

  for (guint i = 1; i <= n; i++)
    {
      double at = (i - 0.3 + 0.2 * pp_noise_at (self->strip->seed, 80 + i)) / (n + 0.4);
      double half = self->strip->width[2] * 0.12 / self->strip->length;
      PpPaint dark = { .tint = pp_tint_dark (self->tint, 0.7), .opacity = 0.4 };
      PpPaint light = { .tint = PP_TINT_WHITE, .opacity = 0.45 };

      for (int side = 0; side < 2; side++)
        {
          PpPoint line[3];

          for (int k = 0; k < 3; k++)
            line[k] = pp_strip_point (self->strip, at + side * half * 1.8 - (k == 1 ? half : 0),
                                      0.9 * (k - 1));
          pp_svg_line (self->svg, side == 0 ? dark : light, self->strip->width[2] * 0.12, line, 3);
        }
    }
}

void
pp_long_draw_rod (const PpLong *self)
{
  pp_long_draw_body (self, 1);
  draw_rings (self);
  pp_long_draw_band (self, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.75 }, 0.01, 0.985, -0.62,
                     -0.36);
  pp_long_draw_band (self, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.25 }, 0.02, 0.98, 0.82,
                     0.68);
}

static void
draw_facet (const PpLong  *self,
            PpPaint        paint,
            const PpPoint *corners,
            guint          n_corners)
{
  PpPoint points[6];

  for (guint i = 0; i < n_corners; i++)
    points[i] = pp_strip_point (self->strip, corners[i].x, corners[i].y);
  pp_svg_area (self->svg, paint, points, n_corners);
}

/* Flat faces round a table, those toward the light bright. Corners are (along, across). */
void
pp_long_draw_shard (const PpLong *self)
{
  const PpPoint rim[] = { { 0.25, -1 }, { 0.5, -1 }, { 0.75, -1 }, { 0.99, 0 }, { 0.75, 1 },
                          { 0.5, 1 }, { 0.25, 1 }, { 0.01, 0 } };
  const PpPoint table[] = { { 0.33, -0.55 }, { 0.52, -0.7 }, { 0.69, -0.6 }, { 0.8, 0.1 },
                            { 0.66, 0.62 }, { 0.5, 0.55 }, { 0.34, 0.6 }, { 0.2, -0.05 } };
  static const double shine[] = { 0.25, 0.6, 0.75, 0.3, -0.25, -0.4, -0.45, -0.15 };

  pp_long_draw_body (self, 0.2);
  for (guint i = 0; i < G_N_ELEMENTS (rim); i++)
    {
      guint next = (i + 1) % G_N_ELEMENTS (rim);
      const PpPoint facet[] = { rim[i], rim[next], table[next], table[i] };
      PpPaint paint = { .tint = shine[i] > 0 ? PP_TINT_WHITE : pp_tint_dark (self->tint, 0.7),
                        .opacity = fabs (shine[i]) };

      draw_facet (self, paint, facet, 4);
    }
  draw_facet (self, (PpPaint) { .tint = PP_TINT_WHITE, .opacity = 0.3 }, table + 1, 3);
  draw_bubbles (self, 0.4);
}
