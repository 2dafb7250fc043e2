/* loops.h: the loops that a check spends its time in, over thousands of cells each.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All numbers given to them are finite.
 */
#pragma once

#include "shape/ground.h"
#include "shape/range.h"

#include <string.h>

G_BEGIN_DECLS

/* Blocks of the points (x, y, h) of a programme, each a stretch of one row. */
typedef struct
{
  guint         n;
  const double *h;     /* of each point, block after block */
  guint        *first; /* of each block: its first point; n + 1 long */
  double       *x;     /* its first x, the least */
  double       *y;
  double       *last;  /* its last point, from 0 on */
  double       *top;   /* its greatest h */
} PpLoopBlocks;

/* A plane along a row of cells: its height at the first, and what it rises by from each to the
 * next. */
typedef struct
{
  double start;
  double step;
} PpLoopPlane;

/* Places for dabs beside each other, a cell apart, with room for the same diameter; mm from the
 * centre of mass. */
typedef struct
{
  guint  cell;     /* of the first, in the bed */
  guint  n;
  double x;
  double y;
  double diameter; /* mm */
  double best;     /* the greatest of their scores, mm² */
} PpLoopPlaces;

#define PP_LOOP_NEVER (-1.0)
#define PP_LOOP_FAR 1e300

/* mm: x of the `i`-th cell from the one at `x` on. */
static inline double
pp_loop_column (double x,
                guint  i)
{
  return x + (int) i * PP_CELL; /* vectors turn an int into a number sooner */
}

/* Where the plane lies over the `i`-th cell. Never turned round by rounding: over the cells between
 * two it lies between. The last digit goes by where the row begins, so equal heights are told with
 * a tolerance; what a check takes over from the one before was cut into the same rows. */
static inline double
pp_loop_plane_at (const PpLoopPlane *self,
                  int                i)
{
  return self->start + i * self->step;
}

/* a·x + b·y along a block. */
static inline PpLoopPlane
pp_loop_plane_of_block (const PpLoopBlocks *blocks,
                        guint               block,
                        double              a,
                        double              b)
{
  return (PpLoopPlane) { a * blocks->x[block] + b * blocks->y[block], a * PP_CELL };
}

/* Finds the `top` of each. */
void   pp_loop_find_tops (const PpLoopBlocks *blocks);
/* Of each block what no h - a·x - b·y of its points exceeds, in floating point too, as no rounding
 * turns an order round. Gives the greatest of them. */
double pp_loop_bounds   (const PpLoopBlocks *blocks,
                         double              a,
                         double              b,
                         double             *bounds);
/* The greatest h - a·x - b·y of a block's points. */
double pp_loop_highest_of (const PpLoopBlocks *blocks,
                         guint               block,
                         double              a,
                         double              b);
/* The same of all blocks that are bounded by `least` or more, of which there is one; and the first
 * block that has it. */
double pp_loop_highest  (const PpLoopBlocks *blocks,
                         double              a,
                         double              b,
                         const double       *bounds,
                         double              least,
                         guint              *block);
/* The greatest of `n` >= 1. */
double pp_loop_greatest (const double *x,
                         guint         n);
void   pp_loop_fill     (double        value,
                         gsize         n,
                         double       *x);
/* Each h becomes less by its u. */
void   pp_loop_lower    (double       *h,
                         const double *u,
                         guint         n);
/* The plane less h of each, the least of them and the greatest; `n` >= 1. */
void   pp_loop_gaps     (PpLoopPlane   plane,
                         const double *h,
                         guint         n,
                         double       *gap,
                         double       *least,
                         double       *greatest);
/* The plane, `underside` (NULL: 0) and `thickness` over it. */
void   pp_loop_tops     (PpLoopPlane   plane,
                         const double *underside,
                         double        thickness,
                         guint         n,
                         double       *height);
/* Each height becomes more by the plane. */
void   pp_loop_raise    (PpLoopPlane   plane,
                         guint         n,
                         double       *height);
/* In rows after each other, each with its scores behind those of the row before: score = the lesser
 * of it and the squared distance to (x, y); PP_LOOP_NEVER where that distance is less than half of
 * `diameter` and its own. Gives the greatest, PP_LOOP_NEVER for none. Before the first dab a score
 * is PP_LOOP_FAR. Sets each row's `best`. */
double pp_loop_farthest (PpLoopPlaces *rows,
                         guint         n_rows,
                         double        x,
                         double        y,
                         double        diameter,
                         double       *score);
/* What is more than the `limit`, by more than PP_TIE, becomes less by the factor. */
void   pp_loop_dim      (double       *through,
                         guint         n,
                         double        limit,
                         double        factor);
/* aside = nx·x + ny·y - nz·z - start of each. */
void   pp_loop_asides   (const double *x,
                         const double *y,
                         const double *z,
                         guint         n,
                         const double  normal[3],
                         double        start,
                         double       *aside);
/* Which of them are no more than `most`. */
void   pp_loop_no_more  (const double *x,
                         guint         n,
                         double        most,
                         guint8       *no_more);
/* Adds to them those that are more than `most`. */
void   pp_loop_add_more (const double *x,
                         guint         n,
                         double        most,
                         guint8       *more);
/* Which of the squared distances are no less than `least`. */
void   pp_loop_no_nearer (const int   *squared,
                         guint         n,
                         int           least,
                         guint8       *no_nearer);
/* Which of them are somebody's. */
void   pp_loop_owned    (const PpOwner *owners,
                         guint          n,
                         guint8        *owned);
/* The least x² + y² of all places, and the least where the gap of their cell of the bed is no more
 * than `most`; PP_LOOP_FAR for none. */
void   pp_loop_nearest  (const PpLoopPlaces *rows,
                         guint               n_rows,
                         const double       *gap,
                         double              most,
                         double             *least,
                         double             *least_within);
/* Which of `n` - 1 sides between points that follow one another come within `reach` of 0. */
void   pp_loop_within   (const double *aside,
                         guint         n,
                         double        reach,
                         guint8       *within);

/* The stretch of TRUE that is next after the `end` of the one before, 0 for the first; FALSE
 * without one. `which` is of `n`, each TRUE or FALSE. */
static inline gboolean
pp_loop_find_stretch (const guint8 *which,
                      guint         n,
                      guint        *first,
                      guint        *end)
{
  const guint8 *start = *end < n ? memchr (which + *end, TRUE, n - *end) : NULL, *stop;

  if (start == NULL)
    return FALSE;
  *first = (guint) (start - which);
  stop = memchr (start, FALSE, n - *first);
  *end = stop == NULL ? n : (guint) (stop - which);
  return TRUE;
}

G_END_DECLS
