/* fillable.h: where the gap under a placement can be filled with glue, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The distance from a fillable cell to the nearest that is not says how wide a dab may be there.
 * Borrows from the bed, and takes of its room.
 */
#pragma once

#include "check/bed.h"

G_BEGIN_DECLS

/* Fillable cells beside each other in a row. */
typedef struct
{
  PpSpan         span;
  guint          first;    /* in the bed */
  const PpOwner *owner;    /* of each */
  const double  *underside; /* of each, level; NULL: 0 */
  const int     *squared;  /* in cells: distance to the nearest not fillable, up to what matters */
  int            farthest; /* the greatest such distance of its region */
  guint          root;     /* an earlier run of the same region, or itself */
} PpFillableRun;

typedef struct
{
  const PpBed *bed;
  double       bond;    /* mm */
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
/* ml that it holds within `radius` mm of the middle of a cell. */
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

static inline guint
pp_fillable_count (const PpFillableRun *run)
{
  return (guint) (run->span.i1 - run->span.i0);
}

G_END_DECLS
