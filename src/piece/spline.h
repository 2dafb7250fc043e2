/* spline.h: a smooth line through given values.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cubic spline whose second derivative has no jumps (de Boor, A Practical Guide to Splines,
 * chapter IV). An open one ends as a parabola; a closed one repeats.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The slopes at n knots, at least 2, where t grows. `closed`: the last value is the first one
 * again, a turn later; at least 4 knots then. */
void   pp_spline_slopes (const double *t,
                         const double *values,
                         guint         n,
                         gboolean      closed,
                         double       *slopes);
/* The value at a share (0 to 1) of the way from knot i to the next. */
double pp_spline_at     (const double *t,
                         const double *values,
                         const double *slopes,
                         guint         i,
                         double        share);

G_END_DECLS
