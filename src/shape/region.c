/* region.c: areas of the plane with exact overlay and distance (GEOS).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/region-private.h"

#include "shape/polygon.h"

struct _PpRegion
{
  GEOSGeometry               *geometry;
  const GEOSPreparedGeometry *prepared; /* made on first need */
  PpBox                       box;
  double                      area;
};

static PpBox
measure_box (GEOSGeometry *geometry)
{
  GEOSContextHandle_t handle = pp_geos ();
  PpBox box = pp_box_empty ();

  if (GEOSisEmpty_r (handle, geometry) != 0)
    return box;
  GEOSGeom_getXMin_r (handle, geometry, &box.x0);
  GEOSGeom_getYMin_r (handle, geometry, &box.y0);
  GEOSGeom_getXMax_r (handle, geometry, &box.x1);
  GEOSGeom_getYMax_r (handle, geometry, &box.y1);
  return box;
}

PpRegion *
pp_region_take (GEOSGeometry *geometry)
{
  GEOSContextHandle_t handle = pp_geos ();
  PpRegion *self = g_atomic_rc_box_new0 (PpRegion);

  self->geometry = geometry != NULL ? geometry : GEOSGeom_createEmptyPolygon_r (handle);
  self->box = measure_box (self->geometry);
  GEOSArea_r (handle, self->geometry, &self->area);
  return self;
}

PpRegion *
pp_region_new (const PpOutline *outline)
{
  return pp_region_take (pp_geos_polygon (outline));
}

PpRegion *
pp_region_new_disc (PpPoint centre,
                    double  radius)
{
  guint n;
  g_autofree PpPoint *ring = pp_circle_make_ring (centre, radius, &n);
  double side = 2 * G_PI / (n - 1), grown = sqrt (side / sin (side));

  for (guint i = 0; i < n; i++)
    ring[i] = (PpPoint) { centre.x + grown * (ring[i].x - centre.x),
                          centre.y + grown * (ring[i].y - centre.y) };
  return pp_region_take (pp_geos_ring_polygon (ring, n));
}

PpRegion *
pp_region_new_box (PpBox box)
{
  const PpPoint ring[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 },
                           { box.x0, box.y1 }, { box.x0, box.y0 } };

  return pp_region_take (pp_box_is_empty (box)
                           ? NULL
                           : pp_geos_ring_polygon (ring, G_N_ELEMENTS (ring)));
}

PpRegion *
pp_region_new_empty (void)
{
  return pp_region_take (NULL);
}

PpRegion *
pp_region_ref (PpRegion *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
region_clear (gpointer data)
{
  PpRegion *self = data;
  GEOSContextHandle_t handle = pp_geos ();

  GEOSPreparedGeom_destroy_r (handle, self->prepared);
  GEOSGeom_destroy_r (handle, self->geometry);
}

void
pp_region_unref (PpRegion *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, region_clear);
}

double
pp_region_get_area (PpRegion *self)
{
  return self->area;
}

PpBox
pp_region_get_box (PpRegion *self)
{
  return self->box;
}

static const GEOSPreparedGeometry *
get_prepared (PpRegion *self)
{
  if (self->prepared == NULL)
    self->prepared = GEOSPrepare_r (pp_geos (), self->geometry);
  return self->prepared;
}

static gboolean
regions_meet (PpRegion *a,
              PpRegion *b)
{
  return pp_box_meets (a->box, b->box)
         && GEOSPreparedIntersects_r (pp_geos (), get_prepared (a), b->geometry) == 1;
}

static void
add_areas (GPtrArray          *areas,
           const GEOSGeometry *geometry)
{
  GEOSContextHandle_t handle = pp_geos ();
  int n = GEOSGetNumGeometries_r (handle, geometry);

  if (GEOSGeomTypeId_r (handle, geometry) == GEOS_POLYGON)
    g_ptr_array_add (areas, GEOSGeom_clone_r (handle, geometry));
  else
    for (int i = 0; i < n && GEOSGeom_getDimensions_r (handle, geometry) == 2; i++)
      add_areas (areas, GEOSGetGeometryN_r (handle, geometry, i));
}

/* Takes `geometry` (nullable): where borders only touch, what two have in common has lines and
 * points too, which are no part of a region. */
static GEOSGeometry *
keep_areas (GEOSGeometry *geometry)
{
  GEOSContextHandle_t handle = pp_geos ();
  g_autoptr (GPtrArray) areas = NULL;
  int type = geometry != NULL ? GEOSGeomTypeId_r (handle, geometry) : GEOS_POLYGON;

  if (type == GEOS_POLYGON || type == GEOS_MULTIPOLYGON)
    return geometry;
  areas = g_ptr_array_new ();
  add_areas (areas, geometry);
  GEOSGeom_destroy_r (handle, geometry);
  return GEOSGeom_createCollection_r (handle, GEOS_MULTIPOLYGON, (GEOSGeometry **) areas->pdata,
                                      areas->len);
}

/* Of two that meet. */
static PpRegion *
intersect (PpRegion *a,
           PpRegion *b)
{
  return pp_region_take (keep_areas (GEOSIntersection_r (pp_geos (), a->geometry, b->geometry)));
}

PpRegion *
pp_region_intersection (PpRegion *a,
                        PpRegion *b)
{
  return regions_meet (a, b) ? intersect (a, b) : pp_region_new_empty ();
}

PpRegion *
pp_region_difference (PpRegion *a,
                      PpRegion *b)
{
  if (!regions_meet (a, b))
    return pp_region_ref (a);
  return pp_region_take (GEOSDifference_r (pp_geos (), a->geometry, b->geometry));
}

PpRegion *
pp_region_union_take (GPtrArray *geometries)
{
  GEOSContextHandle_t handle = pp_geos ();
  GEOSGeometry *collection
      = GEOSGeom_createCollection_r (handle, GEOS_GEOMETRYCOLLECTION,
                                     (GEOSGeometry **) geometries->pdata, geometries->len);
  GEOSGeometry *joined = GEOSUnaryUnion_r (handle, collection);

  GEOSGeom_destroy_r (handle, collection);
  return pp_region_take (joined);
}

PpRegion *
pp_region_union (PpRegion **regions,
                 guint      n_regions)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new ();

  for (guint i = 0; i < n_regions; i++)
    g_ptr_array_add (parts, GEOSGeom_clone_r (pp_geos (), regions[i]->geometry));
  return pp_region_union_take (parts);
}

double
pp_region_overlap (PpRegion *a,
                   PpRegion *b)
{
  g_autoptr (PpRegion) common = NULL;

  if (!regions_meet (a, b))
    return 0;
  common = intersect (a, b);
  return common->area;
}

static double
distance_of_borders (const GEOSGeometry *a,
                     const GEOSGeometry *b)
{
  GEOSContextHandle_t handle = pp_geos ();
  GEOSGeometry *border_a = GEOSBoundary_r (handle, a);
  GEOSGeometry *border_b = GEOSBoundary_r (handle, b);
  double distance = INFINITY;

  GEOSDistance_r (handle, border_a, border_b, &distance);
  GEOSGeom_destroy_r (handle, border_a);
  GEOSGeom_destroy_r (handle, border_b);
  return distance;
}

double
pp_region_border_distance (PpRegion *a,
                           PpRegion *b)
{
  if (pp_box_is_empty (a->box) || pp_box_is_empty (b->box))
    return INFINITY;
  return distance_of_borders (a->geometry, b->geometry);
}

double
pp_region_point_to_border (PpRegion *self,
                           PpPoint   p)
{
  GEOSContextHandle_t handle = pp_geos ();
  GEOSGeometry *point = GEOSGeom_createPointFromXY_r (handle, p.x, p.y);
  GEOSGeometry *border = GEOSBoundary_r (handle, self->geometry);
  double distance = INFINITY;

  if (!pp_box_is_empty (self->box))
    GEOSDistance_r (handle, border, point, &distance);
  GEOSGeom_destroy_r (handle, border);
  GEOSGeom_destroy_r (handle, point);
  return distance;
}

gboolean
pp_region_contains (PpRegion *self,
                    PpPoint   p)
{
  GEOSContextHandle_t handle = pp_geos ();
  GEOSGeometry *point;
  gboolean contains;

  if (p.x < self->box.x0 || p.x > self->box.x1 || p.y < self->box.y0 || p.y > self->box.y1)
    return FALSE;
  point = GEOSGeom_createPointFromXY_r (handle, p.x, p.y);
  contains = GEOSPreparedIntersects_r (handle, get_prepared (self), point) == 1;
  GEOSGeom_destroy_r (handle, point);
  return contains;
}

static guint
copy_ring (GArray             *points,
           const GEOSGeometry *ring)
{
  GEOSContextHandle_t handle = pp_geos ();
  const GEOSCoordSequence *sequence = GEOSGeom_getCoordSeq_r (handle, ring);
  guint n, start = points->len;

  GEOSCoordSeq_getSize_r (handle, sequence, &n);
  g_array_set_size (points, start + n);
  GEOSCoordSeq_copyToBuffer_r (handle, sequence, &g_array_index (points, PpPoint, start).x,
                               FALSE, FALSE);
  return n;
}

static PpOutline *
outline_of_polygon (const GEOSGeometry *polygon)
{
  GEOSContextHandle_t handle = pp_geos ();
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n = copy_ring (points, GEOSGetExteriorRing_r (handle, polygon));
  int n_holes = GEOSGetNumInteriorRings_r (handle, polygon);

  g_array_append_val (lengths, n);
  for (int i = 0; i < n_holes; i++)
    {
      n = copy_ring (points, GEOSGetInteriorRingN_r (handle, polygon, i));
      g_array_append_val (lengths, n);
    }
  return pp_outline_new_rings ((const guint *) lengths->data, lengths->len,
                               (const PpPoint *) points->data);
}

static void
foreach_polygon (const GEOSGeometry *geometry,
                 PpRegionFunc        func,
                 gpointer            data)
{
  GEOSContextHandle_t handle = pp_geos ();

  if (GEOSisEmpty_r (handle, geometry) != 0)
    return;
  if (GEOSGeomTypeId_r (handle, geometry) == GEOS_POLYGON)
    {
      g_autoptr (PpOutline) outline = outline_of_polygon (geometry);

      func (outline, data);
      return;
    }
  if (GEOSGeomTypeId_r (handle, geometry) != GEOS_MULTIPOLYGON
      && GEOSGeomTypeId_r (handle, geometry) != GEOS_GEOMETRYCOLLECTION)
    return;
  for (int i = 0; i < GEOSGetNumGeometries_r (handle, geometry); i++)
    foreach_polygon (GEOSGetGeometryN_r (handle, geometry, i), func, data);
}

void
pp_region_foreach (PpRegion    *self,
                   PpRegionFunc func,
                   gpointer     data)
{
  foreach_polygon (self->geometry, func, data);
}
