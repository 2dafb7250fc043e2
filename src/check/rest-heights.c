/* rest-heights.c: how high a placement at rest stands, at a point, along a row and in all.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/settle-private.h"

typedef struct
{
  PpPoint own;
  double  above; /* mm: the height of the base plane there */
} Place;

static Place
place_at (const PpBody  *body,
          const PpPlane *plane,
          PpPoint        p)
{
  return (Place) { pp_frame_to_piece (&body->frame, p),
                   plane->c + plane->a * (p.x - body->centroid.x)
                       + plane->b * (p.y - body->centroid.y) };
}

double
pp_rest_underside_at (const PpRest *self,
                      const PpBody *body,
                      PpPoint       p)
{
  Place place = place_at (body, &self->plane, p);

  return place.above + pp_heights_underside (&body->heights, place.own);
}

double
pp_rest_top_at (const PpRest *self,
                const PpBody *body,
                PpPoint       p)
{
  Place place = place_at (body, &self->plane, p);

  return place.above + pp_heights_top (&body->heights, place.own);
}

/* The base plane of a body along one of its spans. */
static PpLoopPlane
plane_under (const PpRest *self,
             const PpBody *body,
             PpSpan        span)
{
  return pp_rest_plane_along (body, &self->plane, span.i0, span.j);
}

void
pp_rest_lay_top (const PpRest *self,
                 const PpBody *body,
                 PpSpan        span,
                 guint         cell,
                 double       *height)
{
  const PpRelief *relief = pp_body_get_relief (body);
  PpLoopPlane plane = plane_under (self, body, span);
  guint n = (guint) (span.i1 - span.i0);

  if (pp_relief_has_crown (relief))
    {
      pp_relief_fill_tops (relief, span, cell, height);
      pp_loop_raise (plane, n, height);
    }
  else
    pp_loop_tops (plane, pp_relief_underside (relief, cell), body->heights.thickness, n, height);
}

/* The greatest top of the cells that are not in the pocket. */
static double
find_raised (const PpRest  *self,
             const PpBody  *body,
             const PpCells *pocket)
{
  double raised = -INFINITY, top;
  guint cell = 0;

  for (guint k = 0; k < body->cells->n_spans; k++)
    {
      const PpSpan *span = &body->cells->spans[k];

      for (int i = span->i0; i < span->i1; i++, cell++)
        if (!pp_cells_contain (pocket, i, span->j))
          {
            pp_rest_lay_top (self, body, (PpSpan) { span->j, i, i + 1 }, cell, &top);
            raised = MAX (raised, top);
          }
    }
  return raised;
}

/* A body on its base plane. */
typedef struct
{
  const PpRest   *rest;
  const PpBody   *body;
  const PpRelief *relief;
  double         *row;   /* room for the cells of a span, of what is not even */
} Lying;

static guint
count_cells (const Lying *self,
             guint        k)
{
  const PpSpan *span = &self->body->cells->spans[k];

  return (guint) (span->i1 - span->i0);
}

/* What no cell of a span exceeds: the plane at its ends, and the least and greatest of its cells,
 * for no rounding turns an order round. What is even has just these. */
static PpRange
bound_span (const Lying *self,
            guint        k)
{
  const PpRelief *relief = self->relief;
  const PpSpan *span = &self->body->cells->spans[k];
  PpLoopPlane plane = plane_under (self->rest, self->body, *span);
  double first = plane.start, last = pp_loop_plane_at (&plane, span->i1 - span->i0 - 1);
  gboolean is_even = relief->lowest == NULL;

  return (PpRange) { MIN (first, last) + (is_even ? 0 : relief->lowest[k]),
                     MAX (first, last)
                         + (is_even ? relief->heights->thickness : relief->top_bound[k]) };
}

/* A span, and the number of its first cell. */
typedef struct
{
  guint k;
  guint cell;
} Spot;

static double
find_least (const Lying *self,
            Spot         spot)
{
  PpSpan span = self->body->cells->spans[spot.k];

  pp_loop_tops (plane_under (self->rest, self->body, span),
                pp_relief_underside (self->relief, spot.cell), 0, count_cells (self, spot.k),
                self->row);
  return pp_range_of (self->row, count_cells (self, spot.k)).least;
}

static double
find_greatest (const Lying *self,
               Spot         spot)
{
  pp_rest_lay_top (self->rest, self->body, self->body->cells->spans[spot.k], spot.cell, self->row);
  return pp_range_of (self->row, count_cells (self, spot.k)).greatest;
}

/* The spans that promise the least and the greatest. Gives their bounds. */
static PpRange
find_promising (const Lying *self,
                Spot        *low,
                Spot        *high)
{
  PpRange bounds = { INFINITY, -INFINITY };
  Spot spot = { 0, 0 };

  for (; spot.k < self->body->cells->n_spans; spot.k++)
    {
      PpRange bound = bound_span (self, spot.k);

      if (bound.least < bounds.least)
        *low = spot;
      if (bound.greatest > bounds.greatest)
        *high = spot;
      bounds = pp_range_widen (bounds, bound);
      spot.cell += count_cells (self, spot.k);
    }
  return bounds;
}

/* Of the promising spans first: few others may have more then. */
static PpRange
find_extremes (Lying *self)
{
  Spot low = { 0, 0 }, high = { 0, 0 }, spot = { 0, 0 };
  PpRange extremes = find_promising (self, &low, &high);
  g_autofree double *row = NULL;

  if (self->relief->lowest == NULL)
    return extremes;
  row = g_new (double, self->body->cells->box.i1 - self->body->cells->box.i0);
  self->row = row;
  extremes = (PpRange) { find_least (self, low), find_greatest (self, high) };
  for (; spot.k < self->body->cells->n_spans; spot.k++)
    {
      PpRange bound = bound_span (self, spot.k);

      if (bound.least < extremes.least)
        extremes.least = MIN (extremes.least, find_least (self, spot));
      if (bound.greatest > extremes.greatest)
        extremes.greatest = MAX (extremes.greatest, find_greatest (self, spot));
      spot.cell += count_cells (self, spot.k);
    }
  return extremes;
}

void
pp_rest_find_extremes (PpRest        *self,
                       const PpBody  *body,
                       const PpCells *pocket)
{
  Lying lying = { .rest = self, .body = body, .relief = pp_body_get_relief (body) };
  PpRange extremes = find_extremes (&lying);

  self->middle = self->plane.c + lying.relief->mean_underside + body->piece->thickness / 2;
  self->base = extremes.least;
  self->top = extremes.greatest;
  self->raised = pocket == NULL ? self->top : find_raised (self, body, pocket);
}
