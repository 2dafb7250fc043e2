/* long-private.h: what the art of all long pieces is drawn with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "piece/strip.h"
#include "piece/svg.h"

G_BEGIN_DECLS

typedef struct
{
  const PpStrip *strip;
  PpTint         tint;
  PpSvg         *svg;
} PpLong;

/* The whole of it, in the tint lit from the left; `depth` is how round it looks, 0 to 1. */
void pp_long_draw_body  (const PpLong *self,
                         double        depth);
/* Between two places across, from place `from` to `to` along, coming to a point at both ends. */
void pp_long_draw_band  (const PpLong *self,
                         PpPaint       paint,
                         double        from,
                         double        to,
                         double        left,
                         double        right);
/* A line from (along, across) to another such place, bowed toward the base by `bow` of the way
 * along; it is `width` mm at its start and runs out. */
void pp_long_draw_vein  (const PpLong *self,
                         PpPaint       paint,
                         PpPoint       from,
                         PpPoint       to,
                         double        bow,
                         double        width);

void pp_long_draw_leaf  (const PpLong *self);
void pp_long_draw_blade (const PpLong *self);
void pp_long_draw_rod   (const PpLong *self);
void pp_long_draw_shard (const PpLong *self);
void pp_long_draw_bud   (const PpLong *self);
void pp_long_draw_spike (const PpLong *self);

G_END_DECLS
