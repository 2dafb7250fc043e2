/* fillable.h: where the gap under a placement can be filled with glue, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fillable cells stand on a grid of the piece's box, grown by one cell so that its border is never
 * fillable. The distance to the nearest cell that is not says how wide a dab may be there. Borrows
 * from the bed.
 */
#pragma once

#include "check/bed.h"

G_BEGIN_DECLS

/* Fillable cells beside each other in a row, column i0 to i1 - 1 of the grid. */
typedef struct
{
  int            row;
  int            i0;
  int            i1;
  guint          first;   /* in the bed */
  const PpOwner *owner;   /* of each, and H */
  const double  *below;
  guint          root;    /* an earlier run of the same region, or itself */
  int            squared; /* in cells: the greatest distance of its region */
} PpFillableRun;

typedef struct
{
  const PpBed *bed;
  double       bond;    /* mm */
  int          i0;      /* column and row of the grid's first cell */
  int          j0;
  int          width;
  int          height;
  int         *squared; /* in cells: distance to the nearest not fillable, as far as it matters */
  GArray      *runs;    /* PpFillableRun, row by row from the top, in each from the left */
} PpFillable;

/* Gaps up to `fill_gap` mm can be filled, but for what lies over a knot; glue is at least `bond` mm
 * thick. Distances matter up to half a `dab`, mm. */
void   pp_fillable_init  (PpFillable  *self,
                          const PpBed *bed,
                          double       fill_gap,
                          double       bond,
                          double       dab);
void   pp_fillable_clear (PpFillable  *self);

/* In mm², and the ml of glue that it holds. */
void   pp_fillable_sum_up (const PpFillable *self,
                           double           *area,
                           double           *capacity);
/* ml that it holds within `radius` mm of the middle of a cell, which is a column and a row of
 * cells of the panel. */
double pp_fillable_glue_around (const PpFillable *self,
                                int               i,
                                int               j,
                                double            radius);
/* The run in which a cell of the bed lies, one that can be filled. */
const PpFillableRun *pp_fillable_find_run (const PpFillable *self,
                                           guint             cell);

static inline const PpFillableRun *
pp_fillable_run (const PpFillable *self,
                 guint             r)
{
  return &g_array_index (self->runs, PpFillableRun, r);
}

/* Distances of a run's cells. */
static inline const int *
pp_fillable_squared (const PpFillable    *self,
                     const PpFillableRun *run)
{
  return self->squared + (gsize) run->row * (gsize) self->width + (gsize) run->i0;
}

G_END_DECLS
