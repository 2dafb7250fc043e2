/* overhang.c: how far a piece reaches beyond the background.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/overhang.h"

#include "check/cover.h"
#include "panel/tolerance.h"
#include "shape/polygon.h"

/* A box whose corners lie on a convex background lies on it wholly. */
static gboolean
is_plainly_inside (const PpScene *scene,
                   const PpCover *background,
                   PpBox          box)
{
  return scene->panel->background->shape != PP_SHAPE_FREE
         && pp_cover_contains (background, (PpPoint) { box.x0, box.y0 })
         && pp_cover_contains (background, (PpPoint) { box.x1, box.y0 })
         && pp_cover_contains (background, (PpPoint) { box.x1, box.y1 })
         && pp_cover_contains (background, (PpPoint) { box.x0, box.y1 });
}

/* A line, and which way is beyond it. */
typedef struct
{
  PpPoint on;
  PpPoint out; /* of unit length */
} Beyond;

/* Beyond a side of a convex background. */
static Beyond
find_beyond (const PpScene *scene,
             PpSide         side)
{
  PpPoint middle = pp_box_middle (pp_outline_get_box (scene->background_outline));
  PpPoint a = side.a, b = side.b;
  double length = pp_point_distance (a, b);

  if (pp_point_cross (a, b, middle) < 0)
    length = -length; /* the inside is where the middle is */
  return (Beyond) { a, { (b.y - a.y) / length, (a.x - b.x) / length } };
}

/* In the frame of the line, beyond being to the left of 0. */
static PpPoint
turn_beyond (PpPoint       p,
             gconstpointer data)
{
  const Beyond *beyond = data;
  double dx = p.x - beyond->on.x, dy = p.y - beyond->on.y;

  return (PpPoint) { -dx * beyond->out.x - dy * beyond->out.y,
                     dx * beyond->out.y - dy * beyond->out.x };
}

/* The farthest that was found of a piece from the background. */
typedef struct
{
  PpCover background;
  double  distance;
  PpPoint at;
  PpSide  side; /* of the background, nearest to that */
  PpPoint near; /* on the background, nearest to the corner measured last */
} Overhang;

/* Whether a side of the background comes into the box. */
static gboolean
is_crossed (const PpOutline *background,
            PpBox            box)
{
  for (guint r = 0; r < pp_outline_get_n_rings (background); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (background, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        {
          PpBox side = pp_box_add_point (pp_box_add_point (pp_box_empty (), p[i]), p[i + 1]);

          if (pp_box_meets (side, box))
            return TRUE;
        }
    }
  return FALSE;
}

/* Corners on a convex background, or on one without a side near, have all between them on it. */
static gboolean
may_bridge (const PpScene *scene,
            const PpBody  *body)
{
  return scene->panel->background->shape == PP_SHAPE_FREE
         && is_crossed (scene->background_outline, body->box);
}

/* More than a tie of it lies outside. What lies beyond a side of a convex background does; often
 * that is soon enough told by its corner farthest out. */
static gboolean
has_outside (const PpScene  *scene,
             const PpBody   *body,
             const Overhang *overhang)
{
  g_autoptr (PpRegion) outside = NULL;

  if (overhang->distance > 0 && scene->panel->background->shape != PP_SHAPE_FREE)
    {
      Beyond beyond = find_beyond (scene, overhang->side);
      g_autoptr (PpOutline) turned = pp_outline_map (body->outline, turn_beyond, &beyond);

      if (pp_outline_area_left (turned, -PP_TIE) > 2 * PP_TIE)
        return TRUE;
    }
  outside = pp_region_difference (body->region, scene->background);
  return pp_region_get_area (outside) > PP_TIE;
}

/* A corner no farther from a place on the background than the farthest so far is need not be
 * measured. Gives whether it is farther. */
static inline gboolean
measure_corner (Overhang *self,
                PpPoint   p)
{
  double dx = p.x - self->near.x, dy = p.y - self->near.y;
  double far = self->distance - PP_TIE, distance;
  PpSide side = { self->near, self->near };

  if ((far > 0 && dx * dx + dy * dy <= far * far) || pp_cover_contains (&self->background, p))
    return FALSE;
  far = pp_rough_length (dx, dy) + PP_TIE;
  /* There is always such a side: `far` is longer than the way by a tie. */
  distance = pp_bands_nearest (self->background.bands, p, far, self->distance, &side);
  self->near = pp_side_place_nearest (side, p);
  if (distance <= self->distance)
    return FALSE;
  self->distance = distance;
  self->at = p;
  self->side = side;
  return TRUE;
}

/* The corner farthest beyond the background's box, most often the farthest from the background. */
static PpPoint
guess_farthest (const PpPoint *p,
                guint          n,
                PpBox          box)
{
  double most = -INFINITY;
  PpPoint farthest = p[0];

  for (guint i = 0; i + 1 < n; i++)
    {
      double beyond = MAX (MAX (box.x0 - p[i].x, p[i].x - box.x1),
                           MAX (box.y0 - p[i].y, p[i].y - box.y1));

      if (beyond > most)
        farthest = p[i];
      most = MAX (most, beyond);
    }
  return farthest;
}

static PpPoint
find_farthest_along (const PpPoint *p,
                     guint          n,
                     PpPoint        from,
                     PpPoint        to)
{
  double most = -INFINITY;
  PpPoint farthest = p[0];

  for (guint i = 0; i + 1 < n; i++)
    {
      double along = p[i].x * (to.x - from.x) + p[i].y * (to.y - from.y);

      if (along > most)
        farthest = p[i];
      most = MAX (most, along);
    }
  return farthest;
}

double
pp_overhang_of (const PpScene *scene,
                const PpBody  *body)
{
  Overhang overhang = { .background = pp_cover_of_background (scene),
                        .near = { INFINITY, INFINITY } };
  guint n;
  const PpPoint *p = pp_outline_get_ring (body->outline, 0, &n);

  if (is_plainly_inside (scene, &overhang.background, body->box))
    return PP_NO_OVERHANG;
  /* Up to the corner farthest the way that the last one lies from the background, until that is no
   * farther; of the rest most are then passed over. */
  for (PpPoint next = guess_farthest (p, n, overhang.background.box);
       measure_corner (&overhang, next);)
    next = find_farthest_along (p, n, overhang.near, overhang.at);
  for (guint i = 0; i + 1 < n; i++)
    measure_corner (&overhang, p[i]);
  if ((overhang.distance > 0 || may_bridge (scene, body)) && has_outside (scene, body, &overhang))
    return overhang.distance;
  return PP_NO_OVERHANG;
}
