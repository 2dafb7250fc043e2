/* trace.h: borders of what is covered in a raster.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/point.h"

G_BEGIN_DECLS

/* How far each pixel is covered, row after row. */
typedef struct
{
  guchar *cover;
  guint   width;
  guint   height;
  guint   stride;
} PpRaster;

/* Closed rings (GArray of PpPoint, without the closing point) in pixels, (0, 0) the outer corner
 * of the first one: where coverage, taken at the pixels' centres and straight between them, is
 * `level` and a half. What is covered lies inside a ring that turns clockwise as seen, outside one
 * that turns the other way. The outermost pixels must not be covered. (transfer full) */
GPtrArray *pp_trace                (const PpRaster *raster,
                                    guchar          level);
/* The ring with fewer points, none of the old ones farther than `off` from it. (transfer full) */
GArray    *pp_ring_simplify        (GArray         *ring,
                                    double          off);
/* The same, its points then moved so that it has the area of the ring: a polygon with its points on
 * a curve is smaller than what the curve encloses. */
GArray    *pp_ring_simplify_evenly (GArray         *ring,
                                    double          off);

G_END_DECLS
