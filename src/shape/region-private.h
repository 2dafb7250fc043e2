/* region-private.h: regions made of GEOS's geometries.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/geos-private.h"
#include "shape/region.h"

/* Takes `geometry`; NULL, which GEOS gives after an error it has reported, becomes empty. */
PpRegion *pp_region_take       (GEOSGeometry *geometry);
/* Of all of them (GEOSGeometry), which it takes. */
PpRegion *pp_region_union_take (GPtrArray    *geometries);
