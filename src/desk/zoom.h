/* zoom.h: where the panel lies in the canvas and how large.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plain value. Seen from behind, x runs to the left.
 */
#pragma once

#include "panel/point.h"

G_BEGIN_DECLS

#define PP_ZOOM_MIN 0.05 /* px a mm */
#define PP_ZOOM_MAX 40.0

typedef struct
{
  double   scale;       /* logical px a mm */
  double   x;           /* px, of the panel's origin in the widget */
  double   y;
  gboolean from_behind; /* the origin is then at the right of the glass */
} PpZoom;

static inline gboolean
pp_zoom_equal (const PpZoom *a,
               const PpZoom *b)
{
  return a->scale == b->scale && a->x == b->x && a->y == b->y && a->from_behind == b->from_behind;
}

static inline PpPoint
pp_zoom_to_widget (const PpZoom *self,
                   PpPoint       mm)
{
  double across = self->from_behind ? -mm.x : mm.x;

  return (PpPoint) { self->x + across * self->scale, self->y + mm.y * self->scale };
}

static inline PpPoint
pp_zoom_to_panel (const PpZoom *self,
                  PpPoint       px)
{
  double across = (px.x - self->x) / self->scale;

  return (PpPoint) { self->from_behind ? -across : across, (px.y - self->y) / self->scale };
}

/* The box of the panel, mm, whole and in the middle of a widget of width x height px, `margin` px
 * free around it. */
PpZoom pp_zoom_fit    (PpBox         box,
                       double        width,
                       double        height,
                       double        margin,
                       gboolean      from_behind);
/* `factor` times as large, within the limits, with what lies at `px` staying there. */
PpZoom pp_zoom_around (const PpZoom *self,
                       PpPoint       px,
                       double        factor);

G_END_DECLS
