/* relief.h: how high a piece stands over each of its cells, lying level.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * mm over its own base. Undersides are kept, for they are asked again and again; a crown is not, as
 * its top is asked in few rows.
 */
#pragma once

#include "shape/cells.h"
#include "shape/height.h"
#include "shape/place.h"

G_BEGIN_DECLS

/* Heights and frame are borrowed. */
typedef struct
{
  const PpHeights *heights;
  const PpFrame   *frame;
  PpPoint          step;           /* mm, in the piece's own frame: from a cell to the next */
  double           mean_underside; /* 0 without a cell */
  double          *underside;      /* of each cell, span by span; NULL: 0 all over */
  double          *lowest;         /* of each span: the least; NULL where the next is NULL */
  double          *top_bound;      /* what none of its tops exceeds; NULL: the thickness is */
} PpRelief;

/* (transfer full) */
PpRelief *pp_relief_new       (const PpHeights *heights,
                               const PpFrame   *frame,
                               const PpCells   *cells);
void      pp_relief_free      (PpRelief        *self);

static inline gboolean
pp_relief_has_crown (const PpRelief *self)
{
  return self->heights->crown.height > 0;
}

/* The undersides from number `cell` on, NULL where all are 0. */
static inline const double *
pp_relief_underside (const PpRelief *self,
                     guint           cell)
{
  return self->underside == NULL ? NULL : self->underside + cell;
}

/* The tops of some cells of a span, `cell` being the number of the first. */
void      pp_relief_fill_tops (const PpRelief *self,
                               PpSpan          span,
                               guint           cell,
                               double         *top);

G_END_DECLS
