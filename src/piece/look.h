/* look.h: what a recipe makes: the outline of a piece, and its art.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to the recipes. Measures are complete and possible here.
 */
#pragma once

#include "piece/measures.h"
#include "piece/svg.h"

G_BEGIN_DECLS

/* Both return the outline (transfer full) and draw the art into `svg`. */
PpOutline *pp_look_flower (const PpMeasures *measures,
                           PpTint            tint,
                           PpSvg            *svg);
PpOutline *pp_look_long   (const PpMeasures *measures,
                           PpTint            tint,
                           PpSvg            *svg);

G_END_DECLS
