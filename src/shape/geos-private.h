/* geos-private.h: the GEOS context of the calling thread, and outlines as geometries.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/outline.h"

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>

/* One context a thread, ended with it. What GEOS reports as an error goes to a GLib critical:
 * the shapes given to it were found simple on reading, so an error is a bug of ours. */
GEOSContextHandle_t pp_geos (void);

/* (transfer full), never NULL for the rings of an outline. */
GEOSGeometry *pp_geos_polygon     (const PpOutline *outline);
GEOSGeometry *pp_geos_ring_polygon (const PpPoint  *points,
                                    guint           n_points);
