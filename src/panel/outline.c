/* outline.c: a polygon with holes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/outline.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/tolerance.h"

#include <string.h>

/* A closed ring of three corners. */
#define MIN_POSITIONS 4
#define LONG 1.5 /* as high as wide */

struct _PpOutline
{
  guint    n_rings;
  guint   *starts; /* n_rings + 1: where each ring begins in `points`, and the end of the last */
  PpPoint *points;
  PpBox    box;    /* of the border */
  char    *extra;
};

static gboolean
same_place (PpPoint a,
            PpPoint b)
{
  return a.x == b.x && a.y == b.y;
}

static gboolean
all_finite (const PpPoint *points,
            guint          n)
{
  for (guint i = 0; i < n; i++)
    if (!isfinite (points[i].x) || !isfinite (points[i].y))
      return FALSE;
  return TRUE;
}

static gboolean
check_ring (const PpPoint *points,
            guint          n,
            guint          ring,
            GError       **error)
{
  if (n < MIN_POSITIONS)
    g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                 _("coordinates[%u]: a ring needs at least %d positions, not %u."), ring,
                 MIN_POSITIONS, n);
  else if (n > PP_OUTLINE_MAX_POSITIONS)
    g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT,
                 _("coordinates[%u]: a ring has at most %d positions, not %u."), ring,
                 PP_OUTLINE_MAX_POSITIONS, n);
  else if (!all_finite (points, n))
    g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                 _("coordinates[%u]: each position must be two numbers."), ring);
  else if (!same_place (points[0], points[n - 1]))
    g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                 _("coordinates[%u]: the last position must be the first again."), ring);
  else
    return TRUE;
  return FALSE;
}

/* With memory for the rings, positions still to be filled in. */
static PpOutline *
outline_alloc (const guint *lengths,
               guint        n_rings,
               const char  *extra)
{
  PpOutline *self = g_atomic_rc_box_new0 (PpOutline);

  self->n_rings = n_rings;
  self->starts = g_new0 (guint, n_rings + 1);
  for (guint i = 0; i < n_rings; i++)
    self->starts[i + 1] = self->starts[i] + lengths[i];
  self->points = g_new (PpPoint, self->starts[n_rings]);
  self->extra = g_strdup (extra);
  return self;
}

static void
measure_box (PpOutline *self)
{
  self->box = pp_box_empty ();
  for (guint i = 0; i < self->starts[1]; i++)
    self->box = pp_box_add_point (self->box, self->points[i]);
}

static PpOutline *
outline_copy (const guint   *lengths,
              guint          n_rings,
              const PpPoint *points,
              const char    *extra)
{
  PpOutline *self = outline_alloc (lengths, n_rings, extra);

  memcpy (self->points, points, self->starts[n_rings] * sizeof (PpPoint));
  measure_box (self);
  return self;
}

PpOutline *
pp_outline_new (const guint   *lengths,
                guint          n_rings,
                const PpPoint *points,
                const char    *extra,
                GError       **error)
{
  const PpPoint *ring = points;

  if (n_rings == 0)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                   _("coordinates: an outline needs a border."));
      return NULL;
    }
  for (guint i = 0; i < n_rings; ring += lengths[i++])
    if (!check_ring (ring, lengths[i], i, error))
      return NULL;
  return outline_copy (lengths, n_rings, points, extra);
}

PpOutline *
pp_outline_new_rings (const guint   *lengths,
                      guint          n_rings,
                      const PpPoint *points)
{
  g_return_val_if_fail (n_rings > 0, NULL);
  return outline_copy (lengths, n_rings, points, NULL);
}

PpOutline *
pp_outline_new_ring (const PpPoint *points,
                     guint          n_points)
{
  guint n;
  PpOutline *self;

  g_return_val_if_fail (n_points >= 3, NULL);
  n = n_points + (same_place (points[0], points[n_points - 1]) ? 0 : 1);
  self = outline_alloc (&n, 1, NULL);
  memcpy (self->points, points, n_points * sizeof (PpPoint));
  self->points[n - 1] = points[0];
  measure_box (self);
  return self;
}

PpOutline *
pp_outline_ref (const PpOutline *self)
{
  return g_atomic_rc_box_acquire ((gpointer) self);
}

static void
outline_clear (gpointer data)
{
  PpOutline *self = data;

  g_free (self->starts);
  g_free (self->points);
  g_free (self->extra);
}

void
pp_outline_unref (const PpOutline *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full ((gpointer) self, outline_clear);
}

guint
pp_outline_get_n_rings (const PpOutline *self)
{
  return self->n_rings;
}

const PpPoint *
pp_outline_get_ring (const PpOutline *self,
                     guint            ring,
                     guint           *n_positions)
{
  g_return_val_if_fail (ring < self->n_rings, NULL);
  *n_positions = self->starts[ring + 1] - self->starts[ring];
  return self->points + self->starts[ring];
}

PpBox
pp_outline_get_box (const PpOutline *self)
{
  return self->box;
}

const char *
pp_outline_get_extra (const PpOutline *self)
{
  return self->extra;
}

gboolean
pp_outline_equal (const PpOutline *a,
                  const PpOutline *b)
{
  if (a == b)
    return TRUE;
  if (a->n_rings != b->n_rings
      || g_strcmp0 (a->extra, b->extra) != 0
      || memcmp (a->starts, b->starts, (a->n_rings + 1) * sizeof (guint)) != 0)
    return FALSE;
  for (guint i = 0; i < a->starts[a->n_rings]; i++)
    if (!same_place (a->points[i], b->points[i]))
      return FALSE;
  return TRUE;
}

gboolean
pp_outline_near (const PpOutline *a,
                 const PpOutline *b)
{
  if (a->n_rings != b->n_rings
      || memcmp (a->starts, b->starts, (a->n_rings + 1) * sizeof (guint)) != 0)
    return FALSE;
  for (guint i = 0; i < a->starts[a->n_rings]; i++)
    if (pp_point_distance (a->points[i], b->points[i]) > PP_TIE)
      return FALSE;
  return TRUE;
}

gboolean
pp_outline_is_long (const PpOutline *self)
{
  return pp_box_height (self->box) >= LONG * pp_box_width (self->box);
}

PpOutline *
pp_outline_map (const PpOutline *self,
                PpPointMap       map,
                gconstpointer    data)
{
  PpOutline *mapped = g_atomic_rc_box_new0 (PpOutline);
  guint n = self->starts[self->n_rings];

  mapped->n_rings = self->n_rings;
  mapped->starts = g_memdup2 (self->starts, (self->n_rings + 1) * sizeof (guint));
  mapped->points = g_new (PpPoint, n);
  mapped->extra = g_strdup (self->extra);
  for (guint i = 0; i < n; i++)
    mapped->points[i] = map (self->points[i], data);
  measure_box (mapped);
  return mapped;
}

static PpPoint
move_point (PpPoint       p,
            gconstpointer data)
{
  const PpPoint *by = data;

  return (PpPoint) { p.x + by->x, p.y + by->y };
}

PpOutline *
pp_outline_move (const PpOutline *self,
                 PpPoint          by)
{
  return pp_outline_map (self, move_point, &by);
}
