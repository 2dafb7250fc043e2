/* smooth.h: smooth borders of what a raster shows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/point.h"

G_BEGIN_DECLS

/* Closed rings (GArray of PpPoint, without the closing point) about the dots that are more than
 * half covered, as the potrace library smooths them, in dots, (0, 0) the outer corner of the first
 * one: the largest border first, then its holes. `covers`: 0 to 1, row after row. Empty where
 * nothing is covered; (transfer full). */
GPtrArray *pp_smooth_rings (const float *covers,
                            guint        width,
                            guint        height);

G_END_DECLS
