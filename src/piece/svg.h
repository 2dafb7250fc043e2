/* svg.h: writes the art of a made piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Points are mm in the piece's own frame. They are written as whole units of 1/20 mm under one
 * scale, which keeps the text short. What is written is what src/art lets through: no filters, no
 * masks, no styles.
 */
#pragma once

#include "panel/point.h"
#include "piece/tint.h"

G_BEGIN_DECLS

typedef struct _PpSvg PpSvg;

/* How an area or a line is painted. */
typedef struct
{
  PpTint tint;
  guint  gradient; /* number of a gradient, which then stands for the tint; 0: none */
  double opacity;  /* 0 to 1 */
} PpPaint;

typedef struct
{
  double at; /* 0 to 1 */
  PpTint tint;
  double opacity;
} PpStop;

/* `opacity`: of the whole, for glass that lets light through. */
PpSvg *pp_svg_new    (double          opacity);
void   pp_svg_free   (PpSvg          *self);

/* Both return the gradient's number. */
guint  pp_svg_linear (PpSvg          *self,
                      PpPoint         from,
                      PpPoint         to,
                      const PpStop   *stops,
                      guint           n_stops);
guint  pp_svg_radial (PpSvg          *self,
                      PpPoint         centre,
                      double          radius,
                      const PpStop   *stops,
                      guint           n_stops);

void   pp_svg_area   (PpSvg          *self,
                      PpPaint         paint,
                      const PpPoint  *points,
                      guint           n_points);
/* An open line with round ends; `width` mm. */
void   pp_svg_line   (PpSvg          *self,
                      PpPaint         paint,
                      double          width,
                      const PpPoint  *points,
                      guint           n_points);
/* Round dots, `width` mm across. */
void   pp_svg_dots   (PpSvg          *self,
                      PpPaint         paint,
                      double          width,
                      const PpPoint  *points,
                      guint           n_points);

/* The whole text; `box` becomes the viewBox, on whole mm. (transfer full) */
GBytes *pp_svg_finish (PpSvg         *self,
                       const char    *title,
                       PpBox          box);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSvg, pp_svg_free)

G_END_DECLS
