/* plane.h: how a flat sheet lies in a photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A map of the plane that keeps straight lines straight (Hartley and Zisserman, Multiple View
 * Geometry, 2.3 and 8.1): from mm on the sheet to pixels of the photo.
 */
#pragma once

#include "panel/point.h"

G_BEGIN_DECLS

/* Row after row; m[8] is 1. */
typedef struct
{
  double m[9];
} PpSheetPlane;

/* The map that takes each of four points to its partner. FALSE if three lie on one line. */
gboolean pp_plane_fit       (const PpPoint       from[4],
                             const PpPoint       to[4],
                             PpSheetPlane       *plane);
PpPoint  pp_plane_map       (const PpSheetPlane *self,
                             PpPoint             p);
/* FALSE for a map that has no way back. */
gboolean pp_plane_invert    (const PpSheetPlane *self,
                             PpSheetPlane       *back);
/* The point of the sheet that the lens stands over, its height above the sheet, mm, being known
 * and `middle` being the middle of the photo, pixels. Where no lens can have seen the sheet so,
 * the point that is seen in the middle. */
PpPoint  pp_plane_find_foot (const PpSheetPlane *self,
                             PpPoint             middle,
                             double              height);

G_END_DECLS
