/* edges.h: where colours change faster than in a soft shadow.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to ground.
 */
#pragma once

#include "piece/squared.h"

G_BEGIN_DECLS

/* Of the Oklab colours `smoothed`, three to a dot, how fast lightness changes there to a mm, and
 * all but lightness, as far as that stands out; 0 elsewhere. Both begin as 0. */
void   pp_edges_find  (const PpSquared *squared,
                       const float     *smoothed,
                       float           *edge,
                       float           *hue_edge);
/* The middle one, which is noise, as most places have no edge. */
double pp_edges_noise (const PpSquared *squared,
                       const float     *edge);

G_END_DECLS
