/* region.h: areas of the plane with exact overlay, distance and inset (GEOS).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A region is an immutable, counted set of polygons, empty ones included. GEOS keeps a context
 * a thread, behind this header. A region may move from one thread to another but is not
 * to be asked by two at once: its prepared form is made on first need.
 */
#pragma once

#include "panel/outline.h"

G_BEGIN_DECLS

typedef struct _PpRegion PpRegion;

/* All of these return (transfer full) and never NULL. */
PpRegion *pp_region_new              (const PpOutline *outline);
/* Of many corners, with the area of the disc. */
PpRegion *pp_region_new_disc         (PpPoint          centre,
                                      double           radius);
PpRegion *pp_region_new_box          (PpBox            box);
PpRegion *pp_region_new_empty        (void);
PpRegion *pp_region_ref              (PpRegion        *self);
void      pp_region_unref            (PpRegion        *self);

double    pp_region_get_area         (PpRegion        *self);
PpBox     pp_region_get_box          (PpRegion        *self);

PpRegion *pp_region_intersection     (PpRegion        *a,
                                      PpRegion        *b);
PpRegion *pp_region_difference       (PpRegion        *a,
                                      PpRegion        *b);
/* Union of all; none gives an empty region. */
PpRegion *pp_region_union            (PpRegion       **regions,
                                      guint            n_regions);
/* The points of `self` farther than `distance` (mm, at least 0) from its border, round corners
 * within PP_CURVE_TOLERANCE. */
PpRegion *pp_region_inset            (PpRegion        *self,
                                      double           distance);

/* Area common to both, mm². Boxes first, then the prepared form, then overlay. */
double    pp_region_overlap          (PpRegion        *a,
                                      PpRegion        *b);
/* Least distance between their borders, whether or not they overlap; INFINITY if one is empty. */
double    pp_region_border_distance  (PpRegion        *a,
                                      PpRegion        *b);
/* Distance of a point to the border, from either side. */
double    pp_region_point_to_border  (PpRegion        *self,
                                      PpPoint          p);
/* Inside or on the border. */
gboolean  pp_region_contains         (PpRegion        *self,
                                      PpPoint          p);

/* Calls `func` for each polygon of the region, rings as in PpOutline. */
typedef void (*PpRegionFunc)         (const PpOutline *polygon,
                                      gpointer         data);
void      pp_region_foreach          (PpRegion        *self,
                                      PpRegionFunc     func,
                                      gpointer         data);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpRegion, pp_region_unref)

G_END_DECLS
