/* stroke.h: where a maker means glass to be parted or joined who points at a place.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places are mm in the squared frame.
 */
#pragma once

#include "piece/found.h"

G_BEGIN_DECLS

#define PP_STROKE_MOST_GAP 25.0 /* mm between what is joined */

/* The shortest cut from edge to edge through a place near `at`, through holes too. FALSE where no
 * piece is. */
gboolean pp_stroke_part (const PpFound *found,
                         PpPoint        at,
                         PpStroke      *stroke);
/* From the nearest piece to the next nearest, where they are near each other and `at`. FALSE where
 * there are no two so near. */
gboolean pp_stroke_join (const PpFound *found,
                         PpPoint        at,
                         PpStroke      *stroke);

G_END_DECLS
