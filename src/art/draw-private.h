/* draw-private.h: the layers that draw.c puts one on another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "art/draw.h"

G_BEGIN_DECLS

/* A piece without art, level in its own frame. */
void pp_draw_plain (cairo_t       *cr,
                    const PpPiece *piece);

/* What lies under the pieces, to be put one on another as seen from either side. */
void pp_draw_wire  (cairo_t       *cr,
                    const PpScene *scene);
/* `veil`: 1 as on the bench, less where what lies beyond it is what one looks at. */
void pp_draw_glass (cairo_t       *cr,
                    const PpScene *scene,
                    double         veil);
void pp_draw_knots (cairo_t       *cr,
                    const PpScene *scene);
/* The glass of the fused part in whose pocket a stem stands, once more over that stem, which is
 * seen `shift` from where it lies. */
void pp_draw_pocket_glass (cairo_t       *cr,
                           const PpFused *fused,
                           const PpBody  *stem,
                           PpPoint        shift);

/* As pp_draw_get_shift(), with what is taken where a height is not known. */
PpPoint pp_draw_get_shift_of (const PpScene    *scene,
                              const double     *heights,
                              const double     *tops,
                              const PpViewFrom *view,
                              guint             body);

G_END_DECLS
