/* long.c: long pieces: what the art of all of them is drawn with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/long-private.h"
#include "piece/look.h"

#define BAND 26 /* points along a band */

void
pp_long_draw_body (const PpLong *self,
                   double        depth)
{
  g_autoptr (PpOutline) outline = pp_strip_get_outline (self->strip);
  PpBox box = pp_outline_get_box (outline);
  guint n_points;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n_points);
  const PpStop stops[] = {
    { 0, pp_tint_dark (self->tint, 0.28), 1 },
    { 0.45, self->tint, 1 },
    { 0.8, pp_tint_light (self->tint, 0.14), 1 },
    { 1, pp_tint_dark (self->tint, 0.1), 1 },
  };
  guint body = pp_svg_linear (self->svg, (PpPoint) { 0, box.y1 }, (PpPoint) { 0, box.y0 }, stops,
                              G_N_ELEMENTS (stops));
  PpPaint dark = { .tint = pp_tint_dark (self->tint, 0.8), .opacity = 0.1 + 0.12 * depth };
  PpPaint light = { .tint = PP_TINT_WHITE, .opacity = 0.1 + 0.1 * depth };

  pp_svg_area (self->svg, (PpPaint) { .gradient = body, .opacity = 1 }, ring, n_points);
  for (guint i = 0; i < 3; i++)
    {
      pp_long_draw_band (self, dark, 0, 1, 0.5 + 0.15 * i, 1);
      pp_long_draw_band (self, dark, 0, 1, -1, -0.88 - 0.04 * i);
      pp_long_draw_band (self, light, 0.04, 0.97, -0.8 + 0.06 * i, -0.25 - 0.1 * i);
    }
}

void
pp_long_draw_band (const PpLong *self,
                   PpPaint       paint,
                   double        from,
                   double        to,
                   double        left,
                   double        right)
{
  PpPoint points[2 * BAND];

  for (guint i = 0; i < BAND; i++)
    {
      double share = (double) i / (BAND - 1);
      double along = from + (to - from) * (share + (1 - cos (G_PI * share)) / 2) / 2;
      double full = pow (sin (G_PI * share), 0.3);
      double border = fabs (left) > fabs (right) ? left : right;
      double inner = border == left ? right : left;

      points[i] = pp_strip_point (self->strip, along, border);
      points[2 * BAND - 1 - i]
          = pp_strip_point (self->strip, along, border + (inner - border) * full);
    }
  pp_svg_area (self->svg, paint, points, 2 * BAND);
}

void
pp_long_draw_vein (const PpLong *self,
                   PpPaint       paint,
                   PpPoint       from,
                   PpPoint       to,
                   double        bow,
                   double        width)
{
  PpPoint points[2 * BAND];

  for (guint i = 0; i < BAND; i++)
    {
      double share = (double) i / (BAND - 1);
      double along = from.x + (to.x - from.x) * share - bow * sin (G_PI * share);
      double across = from.y + (to.y - from.y) * share;
      PpPoint p = pp_strip_point (self->strip, CLAMP (along, 0, 1), across);
      double half = width / 2 * (1 - 0.85 * share);
      gboolean is_steep = fabs (to.y - from.y) < 0.5;

      points[i] = (PpPoint) { p.x - (is_steep ? half : 0), p.y - (is_steep ? 0 : half) };
      points[2 * BAND - 1 - i]
          = (PpPoint) { p.x + (is_steep ? half : 0), p.y + (is_steep ? 0 : half) };
    }
  pp_svg_area (self->svg, paint, points, 2 * BAND);
}

PpOutline *
pp_look_long (const PpMeasures *measures,
              PpTint            tint,
              PpSvg            *svg)
{
  static void (*const draw[PP_N_RECIPES]) (const PpLong *self) = {
    [PP_RECIPE_SPIKE] = pp_long_draw_spike, [PP_RECIPE_BUD] = pp_long_draw_bud,
    [PP_RECIPE_LEAF] = pp_long_draw_leaf,   [PP_RECIPE_BLADE] = pp_long_draw_blade,
    [PP_RECIPE_ROD] = pp_long_draw_rod,     [PP_RECIPE_SHARD] = pp_long_draw_shard,
  };
  PpStrip strip;
  PpLong self = { .strip = &strip, .tint = tint, .svg = svg };

  pp_strip_init (&strip, measures);
  draw[measures->recipe] (&self);
  return pp_strip_get_outline (&strip);
}
