/* relief.c: how high a piece stands over each of its cells, lying level.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/relief.h"

#include "shape/polygon.h"
#include "shape/range.h"
#include "shape/wide.h"

/* In the piece's own frame. */
static PpPoint
find_cell (const PpRelief *self,
           int             i,
           int             j)
{
  return pp_frame_to_piece (self->frame, (PpPoint) { pp_cell_centre (i), pp_cell_centre (j) });
}

/* A crown is highest where it is nearest to the middle of its piece. Rounding is far less than a
 * tie, on any glass shorter than a kilometre. */
static double
bound_crown (const PpRelief *self,
             const PpSpan   *span)
{
  PpSide side = { find_cell (self, span->i0, span->j), find_cell (self, span->i1 - 1, span->j) };
  double far = sqrt (pp_side_squared_distance (side, (PpPoint) { 0, 0 })) - PP_TIE;

  return pp_heights_crown (self->heights, (PpPoint) { MAX (far, 0), 0 });
}

/* Of the `k`-th span, `cell` being the number of its first. */
static void
fill_span (PpRelief     *self,
           const PpSpan *span,
           guint         k,
           guint         cell)
{
  PpRange under = { 0, 0 };

  if (self->underside != NULL)
    {
      guint n = (guint) (span->i1 - span->i0);

      pp_heights_fill (self->heights, find_cell (self, span->i0, span->j), self->step, n,
                       self->underside + cell);
      under = pp_range_of (self->underside + cell, n);
    }
  self->lowest[k] = under.least;
  self->top_bound[k] = under.greatest + self->heights->thickness;
  if (pp_relief_has_crown (self))
    self->top_bound[k] += bound_crown (self, span);
}

static void
fill (PpRelief      *self,
      const PpCells *cells)
{
  guint cell = 0;

  self->lowest = g_new (double, cells->n_spans);
  self->top_bound = g_new (double, cells->n_spans);
  for (guint k = 0; k < cells->n_spans; k++)
    {
      fill_span (self, &cells->spans[k], k, cell);
      cell += (guint) (cells->spans[k].i1 - cells->spans[k].i0);
    }
  if (self->underside != NULL && cell > 0)
    self->mean_underside = pp_wide_sum (self->underside, cell) / cell;
}

PpRelief *
pp_relief_new (const PpHeights *heights,
               const PpFrame   *frame,
               const PpCells   *cells)
{
  PpRelief *self = g_new0 (PpRelief, 1);
  PpPoint origin = pp_frame_to_piece (frame, (PpPoint) { 0, 0 });
  PpPoint right = pp_frame_to_piece (frame, (PpPoint) { PP_CELL, 0 });

  self->heights = heights;
  self->frame = frame;
  self->step = (PpPoint) { right.x - origin.x, right.y - origin.y };
  if (pp_form_is_shaped (heights->form))
    self->underside = g_new (double, cells->n_cells);
  if (self->underside != NULL || pp_relief_has_crown (self))
    fill (self, cells);
  return self;
}

void
pp_relief_free (PpRelief *self)
{
  if (self == NULL)
    return;
  g_free (self->underside);
  g_free (self->lowest);
  g_free (self->top_bound);
  g_free (self);
}

void
pp_relief_fill_tops (const PpRelief *self,
                     PpSpan          span,
                     guint           cell,
                     double         *top)
{
  pp_heights_fill_top (self->heights, find_cell (self, span.i0, span.j), self->step,
                       (guint) (span.i1 - span.i0), pp_relief_underside (self, cell), top);
}
