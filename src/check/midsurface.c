/* midsurface.c: where a slanting line of sight meets a settled piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A flat piece is a plane, met at one point. A shaped one is walked along: the line is followed
 * from where it may first touch the surface to where it last may, in steps of at most WALK in
 * plan; where it passes from under the surface to over it or back, the crossing is halved down to
 * PP_TIE. Passing twice within one step is missed: such a line grazes the surface. With a rise of
 * 12 mm over 25 mm, as bowed as petals get, it is under it by no more than 2·12/25²·WALK²/8 =
 * 0.0003 mm, less than PP_CURVE_TOLERANCE, so it makes no difference but along the very rim of what
 * hides.
 */
#include "check/midsurface.h"

#include "panel/tolerance.h"

#define WALK 0.25 /* mm */

/* A line and a plane less than this from running along one another do not meet. */
#define PARALLEL 1e-12

/* Least and greatest underside that a form can have inside its outline. */
static void
bound_form (const PpForm *form,
            double       *least,
            double       *greatest)
{
  *least = *greatest = 0;
  if (form->kind == PP_FORM_FLAT)
    return;
  if (form->kind != PP_FORM_MEASURED)
    {
      *least = fmin (0, form->rise);
      *greatest = fmax (0, form->rise);
      return;
    }
  *least = INFINITY;
  *greatest = -INFINITY;
  for (guint i = 0; i < form->grid->n_rows * form->grid->n_columns; i++)
    {
      *least = fmin (*least, form->grid->heights[i]);
      *greatest = fmax (*greatest, form->grid->heights[i]);
    }
}

PpMidsurface
pp_midsurface_make (const PpRest *rest,
                    const PpBody *body)
{
  PpMidsurface self = {
    .rest = rest,
    .body = body,
    .cover = pp_cover_make (body->outline, body->piece->transmittance),
    .plane = rest->plane,
  };
  const PpPlane *base = &rest->plane;
  PpPoint middle = pp_box_middle (body->box);
  double half = fabs (base->a) * pp_box_width (body->box) / 2
                + fabs (base->b) * pp_box_height (body->box) / 2;
  double level, least, greatest;

  self.plane.c += body->piece->thickness / 2 - base->a * body->centroid.x
                  - base->b * body->centroid.y;
  level = self.plane.c + base->a * middle.x + base->b * middle.y;
  bound_form (&body->piece->form, &least, &greatest);
  self.lowest = level - half + least - PP_CURVE_TOLERANCE;
  self.highest = level + half + greatest + PP_CURVE_TOLERANCE;
  return self;
}

PpBox
pp_midsurface_get_shadow (const PpMidsurface *self,
                          PpPoint             slant)
{
  PpBox box = self->cover.box;
  double x0 = self->lowest * slant.x, x1 = self->highest * slant.x;
  double y0 = self->lowest * slant.y, y1 = self->highest * slant.y;

  return pp_box_grow ((PpBox) { box.x0 - fmax (x0, x1), box.y0 - fmax (y0, y1),
                                box.x1 - fmin (x0, x1), box.y1 - fmin (y0, y1) }, PP_TIE);
}

/* A line of sight over the heights that it is followed through. */
typedef struct
{
  PpPoint start;
  PpPoint slant;
  double  from;
  double  to;
} Line;

static PpPoint
line_at (const Line *line,
         double      z)
{
  return (PpPoint) { line->start.x + z * line->slant.x, line->start.y + z * line->slant.y };
}

static gboolean
meets_plane (const PpMidsurface *self,
             const Line         *line)
{
  const PpPlane *plane = &self->plane;
  double rise = 1 - plane->a * line->slant.x - plane->b * line->slant.y;
  double over = plane->c + plane->a * line->start.x + plane->b * line->start.y;

  return fabs (rise) > PARALLEL && pp_cover_contains (&self->cover, line_at (line, over / rise));
}

/* How far the surface lies over the line at height z. */
static double
surface_over (const PpMidsurface *self,
              const Line         *line,
              double              z)
{
  return pp_rest_underside_at (self->rest, self->body, line_at (line, z))
         + self->body->piece->thickness / 2 - z;
}

/* Keeps of the line what lies over the piece's box in one direction. */
static void
clip_line (Line  *line,
           double start,
           double slant,
           double least,
           double greatest)
{
  double a, b;

  if (fabs (slant) <= PARALLEL)
    return;
  a = (least - PP_TIE - start) / slant;
  b = (greatest + PP_TIE - start) / slant;
  line->from = fmax (line->from, fmin (a, b));
  line->to = fmin (line->to, fmax (a, b));
}

static gboolean
meets_between (const PpMidsurface *self,
               const Line         *line,
               double              under,
               double              over)
{
  double steep = hypot (line->slant.x, line->slant.y);
  gboolean side = surface_over (self, line, under) >= 0;

  while ((over - under) * fmax (steep, 1) > PP_TIE)
    {
      double middle = (under + over) / 2;

      if ((surface_over (self, line, middle) >= 0) == side)
        under = middle;
      else
        over = middle;
    }
  return pp_cover_contains (&self->cover, line_at (line, (under + over) / 2));
}

static gboolean
meets_shaped (const PpMidsurface *self,
              const Line         *line)
{
  double travel = (line->to - line->from) * hypot (line->slant.x, line->slant.y);
  guint n = MAX (1, (guint) ceil (travel / WALK));
  double z = line->from;
  gboolean under = surface_over (self, line, z) >= 0;

  for (guint i = 1; i <= n; i++)
    {
      double next = line->from + (line->to - line->from) * i / n;
      gboolean next_under = surface_over (self, line, next) >= 0;

      if (under != next_under && meets_between (self, line, z, next))
        return TRUE;
      z = next;
      under = next_under;
    }
  return FALSE;
}

gboolean
pp_midsurface_meets (const PpMidsurface *self,
                     PpPoint             start,
                     PpPoint             slant)
{
  Line line = { start, slant, self->lowest, self->highest };
  PpBox box = self->cover.box;

  if (hypot (slant.x, slant.y) <= PARALLEL) /* straight on */
    return pp_cover_contains (&self->cover, start);
  if (pp_body_is_flat (self->body))
    return meets_plane (self, &line);
  clip_line (&line, start.x, slant.x, box.x0, box.x1);
  clip_line (&line, start.y, slant.y, box.y0, box.y1);
  return line.from < line.to && meets_shaped (self, &line);
}
