/* zoom.c: where the panel lies in the canvas.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/zoom.h"

PpZoom
pp_zoom_fit (PpBox    box,
             double   width,
             double   height,
             double   margin,
             gboolean from_behind)
{
  double wide = fmax (width - 2 * margin, 1), high = fmax (height - 2 * margin, 1);
  PpPoint middle = pp_box_middle (box);
  double scale;

  g_return_val_if_fail (!pp_box_is_empty (box), ((PpZoom) { 1, 0, 0, FALSE }));
  scale = fmin (wide / fmax (pp_box_width (box), 1), high / fmax (pp_box_height (box), 1));
  scale = CLAMP (scale, PP_ZOOM_MIN, PP_ZOOM_MAX);
  return (PpZoom) {
    .scale = scale,
    .x = width / 2 - (from_behind ? -middle.x : middle.x) * scale,
    .y = height / 2 - middle.y * scale,
    .from_behind = from_behind,
  };
}

PpZoom
pp_zoom_around (const PpZoom *self,
                PpPoint       px,
                double        factor)
{
  double scale = CLAMP (self->scale * factor, PP_ZOOM_MIN, PP_ZOOM_MAX);
  double grown = scale / self->scale;

  return (PpZoom) { scale, px.x + (self->x - px.x) * grown, px.y + (self->y - px.y) * grown,
                    self->from_behind };
}
