/* lp-scan.h: which of many points stands highest over a sloping plane.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The greatest h - a·x - b·y of `n` >= 1 finite points, and the first of those that have it. */
double pp_lp_scan (const double *x,
                   const double *y,
                   const double *h,
                   guint         n,
                   double        a,
                   double        b,
                   guint        *which);

G_END_DECLS
