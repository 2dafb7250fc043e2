/* under.h: what lies under some cells at the moment a placement is laid.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/settle.h"

G_BEGIN_DECLS

/* Cells in a row each, row by row, in each from the left. */
typedef struct
{
  const PpSpan *spans;
  guint         n_spans;
} PpStrips;

/* Of each of the cells, strip by strip, how high and whose that is: the ground, and what of the
 * placements before `index` is settled on it; 0 and PP_OWNER_NOTHING where nothing lies. */
void   pp_under_find     (const PpScene *scene,
                          PpRest       **rests,
                          guint          index,
                          PpStrips       cells,
                          double        *height,
                          PpOwner       *owner);

/* All that a placement finds under it, those before it being at rest, until the room is cleared.
 * (transfer full) */
PpBed *pp_under_make_bed (const PpScene *scene,
                          PpRest       **rests,
                          guint          index,
                          PpRoom        *room);

G_END_DECLS
