/* ink.h: lines and slips of paper drawn by hand on pictures of glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * px of the widget.
 */
#pragma once

#include "desk/palette.h"
#include "panel/point.h"

G_BEGIN_DECLS

/* Strokes the path twice, a broad line in the colour of the paper under a thin one in its own, so
 * that it is seen on glass of any colour. */
void  pp_ink_stroke    (cairo_t         *cr,
                        const PpPalette *palette,
                        const GdkRGBA   *colour,
                        double           width);
/* The slip that a text takes, with its middle at `px`. */
PpBox pp_ink_get_slip  (PangoLayout     *layout,
                        PpPoint          px);
void  pp_ink_draw_slip (cairo_t         *cr,
                        const PpPalette *palette,
                        PangoLayout     *layout,
                        PpBox            slip);

G_END_DECLS
