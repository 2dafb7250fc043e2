/* background.h: the shape of the background in the panel frame.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * `arch`: below y = h/4 a rectangle, above it the half ellipse with centre (w/2, h/4) and half
 * axes w/2 and h/4.
 */
#pragma once

#include "panel/record.h"

G_BEGIN_DECLS

/* A polygon within PP_CURVE_TOLERANCE of the shape. (transfer full) */
PpOutline *pp_background_make_outline (const PpBackground *self);
/* mm², exact. */
double     pp_background_get_area     (const PpBackground *self);
PpPoint    pp_background_get_centroid (const PpBackground *self);

G_END_DECLS
