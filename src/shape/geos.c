/* geos.c: the GEOS context of the calling thread, and outlines as geometries.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GEOS contexts may not be used by two threads at once, but geometries outlive them: all use the
 * library's one geometry factory. So each thread gets a context on first need, and a region may
 * be freed by another thread than made it.
 */
#include "shape/geos-private.h"

#include "shape/polygon.h"

typedef struct
{
  GEOSContextHandle_t handle;
  gboolean            quiet;
} Context;

static void
context_free (gpointer data)
{
  Context *context = data;

  GEOS_finish_r (context->handle);
  g_free (context);
}

static GPrivate thread_context = G_PRIVATE_INIT (context_free);

static void
report_error_cb (const char *message,
                 void       *data)
{
  const Context *context = data;

  if (!context->quiet)
    g_critical ("GEOS: %s", message);
}

static Context *
get_context (void)
{
  Context *context = g_private_get (&thread_context);

  if (context == NULL)
    {
      context = g_new0 (Context, 1);
      context->handle = GEOS_init_r ();
      GEOSContext_setErrorMessageHandler_r (context->handle, report_error_cb, context);
      g_private_set (&thread_context, context);
    }
  return context;
}

GEOSContextHandle_t
pp_geos (void)
{
  return get_context ()->handle;
}

static GEOSGeometry *
make_ring (GEOSContextHandle_t handle,
           const PpPoint      *points,
           guint               n_points)
{
  GEOSCoordSequence *sequence;

  G_STATIC_ASSERT (sizeof (PpPoint) == 2 * sizeof (double));
  sequence = GEOSCoordSeq_copyFromBuffer_r (handle, &points[0].x, n_points, FALSE, FALSE);
  return GEOSGeom_createLinearRing_r (handle, sequence);
}

GEOSGeometry *
pp_geos_ring_polygon (const PpPoint *points,
                      guint          n_points)
{
  GEOSContextHandle_t handle = pp_geos ();

  return GEOSGeom_createPolygon_r (handle, make_ring (handle, points, n_points), NULL, 0);
}

GEOSGeometry *
pp_geos_polygon (const PpOutline *outline)
{
  GEOSContextHandle_t handle = pp_geos ();
  guint n_rings = pp_outline_get_n_rings (outline);
  g_autofree GEOSGeometry **rings = g_new (GEOSGeometry *, n_rings);

  for (guint r = 0; r < n_rings; r++)
    {
      guint n;
      const PpPoint *points = pp_outline_get_ring (outline, r, &n);

      rings[r] = make_ring (handle, points, n);
    }
  return GEOSGeom_createPolygon_r (handle, rings[0], rings + 1, n_rings - 1);
}

/* While `quiet` nothing that GEOS says of what it finds goes anywhere. */
static void
set_quiet (gboolean quiet)
{
  get_context ()->quiet = quiet;
}

gboolean
pp_outline_is_simple (const PpOutline *outline,
                      char           **reason,
                      PpPoint         *at)
{
  GEOSContextHandle_t handle = pp_geos ();
  GEOSGeometry *polygon = pp_geos_polygon (outline);
  GEOSGeometry *where = NULL;
  char *why = NULL;
  char valid;

  set_quiet (TRUE);
  valid = GEOSisValidDetail_r (handle, polygon, 0, &why, &where);
  if (valid != 1 && reason != NULL)
    *reason = g_strdup (why != NULL ? why : "not a polygon");
  if (valid != 1 && at != NULL)
    {
      *at = (PpPoint) { 0, 0 };
      if (where != NULL)
        {
          GEOSGeomGetX_r (handle, where, &at->x);
          GEOSGeomGetY_r (handle, where, &at->y);
        }
    }
  set_quiet (FALSE);
  GEOSFree_r (handle, why);
  GEOSGeom_destroy_r (handle, where);
  GEOSGeom_destroy_r (handle, polygon);
  return valid == 1;
}
