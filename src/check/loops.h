/* loops.h: the loops that a check spends its time in, over thousands of cells each.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All numbers given to them are finite.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The greatest h - a·x - b·y of `n` >= 1 points, and the first of those that have it. */
double pp_loop_highest  (const double *x,
                         const double *y,
                         const double *h,
                         guint         n,
                         double        a,
                         double        b,
                         guint        *which);
/* gap = c + a·x + b·y - h of each. */
void   pp_loop_gaps     (const double *x,
                         const double *y,
                         const double *h,
                         guint         n,
                         double        a,
                         double        b,
                         double        c,
                         double       *gap);
/* The least above + low and the greatest above + high; `n` >= 1. */
void   pp_loop_extremes (const double *above,
                         const double *low,
                         const double *high,
                         guint         n,
                         double       *least,
                         double       *greatest);
/* score = the lesser of it and the squared distance to (x0, y0); PP_LOOP_NEVER where that distance
 * is less than (diameter + d)/2. Gives the greatest, PP_LOOP_NEVER for none. Before the first it is
 * PP_LOOP_FAR. */
#define PP_LOOP_NEVER (-1.0)
#define PP_LOOP_FAR 1e300
double pp_loop_farthest (const double *x,
                         const double *y,
                         const double *d,
                         guint         n,
                         double        x0,
                         double        y0,
                         double        diameter,
                         double       *score);

G_END_DECLS
