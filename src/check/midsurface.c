/* midsurface.c: where a slanting line of sight meets a settled piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A flat piece is a plane, met at one point. A gently shaped one is met once at most, and the
 * crossing is closed in on from the two ends of the line. Another is walked along: the line is
 * followed from where it may first touch the surface to where it last may, in steps of WALK in
 * plan, or longer ones that cannot reach the surface; where it passes from under the surface to
 * over it or back, the crossing is closed in on. Passing twice within one step is missed: such a
 * line grazes the surface. With a rise of 12 mm over 25 mm, as bowed as petals get, it is under it
 * by no more than 2·12/25²·WALK²/8 = 0.0003 mm, less than PP_CURVE_TOLERANCE, so it makes no
 * difference but along the very rim of what hides.
 */
#include "check/midsurface.h"

#include "check/cover.h"

#include "panel/tolerance.h"

#define WALK 0.25     /* mm */
#define GENTLE 0.9    /* slope of a surface times slant of a line, where they meet but once */
#define CLOSE 1e-7    /* mm between line and surface: they meet */
#define MOST_STEPS 60 /* to come so close; some five are enough */

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
      *least = MIN (0, form->rise);
      *greatest = MAX (0, form->rise);
      return;
    }
  *least = INFINITY;
  *greatest = -INFINITY;
  for (guint i = 0; i < form->grid->n_rows * form->grid->n_columns; i++)
    {
      *least = MIN (*least, form->grid->heights[i]);
      *greatest = MAX (*greatest, form->grid->heights[i]);
    }
}

PpMidsurface
pp_midsurface_make (const PpRest *rest,
                    const PpBody *body)
{
  PpMidsurface self = {
    .rest = rest,
    .body = body,
    .plane = rest->plane,
  };
  const PpPlane *base = &rest->plane;
  PpPoint middle = pp_box_middle (body->box);
  double half = fabs (base->a) * pp_box_width (body->box) / 2
                + fabs (base->b) * pp_box_height (body->box) / 2;
  double level, least, greatest;

  self.plane.c += body->piece->thickness / 2 - base->a * body->centroid.x
                  - base->b * body->centroid.y;
  self.steepest = pp_heights_get_steepest (&body->heights) + pp_rough_length (base->a, base->b);
  level = self.plane.c + base->a * middle.x + base->b * middle.y;
  bound_form (&body->piece->form, &least, &greatest);
  self.lowest = level - half + least - PP_CURVE_TOLERANCE;
  self.highest = level + half + greatest + PP_CURVE_TOLERANCE;
  return self;
}

static gboolean
covers (const PpMidsurface *self,
        PpPoint             p)
{
  PpCover cover = pp_cover_of_body (self->body);

  return pp_cover_contains (&cover, p);
}

PpBox
pp_midsurface_get_shadow (const PpMidsurface *self,
                          PpPoint             slant)
{
  PpBox box = self->body->box;
  double x0 = self->lowest * slant.x, x1 = self->highest * slant.x;
  double y0 = self->lowest * slant.y, y1 = self->highest * slant.y;

  return pp_box_grow ((PpBox) { box.x0 - MAX (x0, x1), box.y0 - MAX (y0, y1),
                                box.x1 - MIN (x0, x1), box.y1 - MIN (y0, y1) }, PP_TIE);
}

/* A line of sight over the heights that it is followed through, in the panel frame and, as it is
 * followed often, in the piece's own, over its base plane. */
typedef struct
{
  PpPoint start;
  PpPoint slant;
  double  from;
  double  to;
  PpPoint own_start;
  PpPoint own_slant;
  double  base;       /* mm, of the middle of a flat piece, where the line starts */
  double  base_slant; /* mm a mm of height */
} Line;

static Line
line_make (const PpMidsurface *self,
           PpPoint             start,
           PpPoint             slant)
{
  const PpFrame *frame = &self->body->frame;
  const PpPlane *plane = &self->plane;
  PpPoint own = pp_frame_to_piece (frame, start);
  PpPoint next = pp_frame_to_piece (frame, (PpPoint) { start.x + slant.x, start.y + slant.y });

  return (Line) {
    .start = start,
    .slant = slant,
    .from = self->lowest,
    .to = self->highest,
    .own_start = own,
    .own_slant = { next.x - own.x, next.y - own.y },
    .base = plane->c + plane->a * start.x + plane->b * start.y,
    .base_slant = plane->a * slant.x + plane->b * slant.y,
  };
}

static PpPoint
line_at (const Line *line,
         double      z)
{
  return (PpPoint) { line->start.x + z * line->slant.x, line->start.y + z * line->slant.y };
}

/* How far the surface lies over the line at height z. */
static double
surface_over (const PpMidsurface *self,
              const Line         *line,
              double              z)
{
  PpPoint own = { line->own_start.x + z * line->own_slant.x,
                  line->own_start.y + z * line->own_slant.y };

  return line->base + z * line->base_slant + pp_heights_underside (&self->body->heights, own) - z;
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
  line->from = MAX (line->from, MIN (a, b));
  line->to = MIN (line->to, MAX (a, b));
}

/* The surface lies `before` mm over the line at one height and `after` at another, one of them less
 * than 0. Regula falsi by the Illinois rule (Dowell and Jarratt 1971): an end that stays twice
 * counts by half, so that both close in. */
static gboolean
meets_between (const PpMidsurface *self,
               const Line         *line,
               double              from,
               double              before,
               double              to,
               double              after,
               PpPoint            *where)
{
  double z = from, over = before;
  int stayed = 0; /* 1: `to`, -1: `from` */

  for (guint step = 0; step < MOST_STEPS && fabs (over) > CLOSE; step++)
    {
      z = from + (to - from) * (before / (before - after));
      over = surface_over (self, line, z);
      if ((over >= 0) == (before >= 0))
        {
          from = z;
          before = over;
          after = stayed == 1 ? after / 2 : after;
          stayed = 1;
        }
      else
        {
          to = z;
          after = over;
          before = stayed == -1 ? before / 2 : before;
          stayed = -1;
        }
    }
  *where = line_at (line, z);
  return covers (self, *where);
}

/* Keeps of the line what lies within the piece's reach of its origin. */
static void
clip_to_reach (const PpMidsurface *self,
               Line               *line)
{
  double reach = self->body->heights.reach + PP_TIE;
  double x = line->start.x - self->body->frame.x, y = line->start.y - self->body->frame.y;
  double steep2 = line->slant.x * line->slant.x + line->slant.y * line->slant.y;
  double middle = -(x * line->slant.x + y * line->slant.y) / steep2;
  double half2 = middle * middle - (x * x + y * y - reach * reach) / steep2;

  line->from = MAX (line->from, half2 >= 0 ? middle - sqrt (half2) : (double) INFINITY);
  line->to = MIN (line->to, half2 >= 0 ? middle + sqrt (half2) : (double) -INFINITY);
}

static double
get_steepness (PpPoint slant)
{
  return pp_rough_length (slant.x, slant.y);
}

static gboolean
meets_plane (const PpMidsurface *self,
             const Line         *line)
{
  double rise = 1 - line->base_slant;

  return fabs (rise) > PARALLEL
         && covers (self, line_at (line, line->base / rise));
}

/* By how much two ranges are apart; less than 0 where they meet. */
static double
gap_between (double a0,
             double a1,
             double b0,
             double b1)
{
  return MAX (MIN (b0, b1) - MAX (a0, a1), MIN (a0, a1) - MAX (b0, b1));
}

/* Whether the line passes beside the piece's own box. */
static gboolean
passes_beside (const PpMidsurface *self,
               const Line         *line)
{
  PpBox box = pp_outline_get_box (self->body->piece->outline);
  PpPoint middle = pp_box_middle (box);
  PpPoint start = line->own_start, slant = line->own_slant;
  double dx = middle.x - start.x, dy = middle.y - start.y;
  double wide = pp_box_width (box) * fabs (slant.y) + pp_box_height (box) * fabs (slant.x);
  double across = (fabs (dx * slant.y - dy * slant.x) - wide / 2) / get_steepness (slant);
  double x = gap_between (start.x + self->lowest * slant.x, start.x + self->highest * slant.x,
                          box.x0, box.x1);
  double y = gap_between (start.y + self->lowest * slant.y, start.y + self->highest * slant.y,
                          box.y0, box.y1);

  return MAX (across, MAX (x, y)) >= PP_TIE;
}

/* A line steeper than the surface anywhere is meets it once at most, from under it to over it. */
static gboolean
meets_gentle (const PpMidsurface *self,
              Line                line)
{
  double before, after;
  PpPoint where;

  clip_to_reach (self, &line);
  if (line.from > line.to)
    return FALSE;
  before = surface_over (self, &line, line.from);
  after = surface_over (self, &line, line.to);
  return before >= 0 && after < 0
         && meets_between (self, &line, line.from, before, line.to, after, &where);
}

/* No faster than slope·slant + 1 the surface comes nearer to the line, so where it is far the step
 * is longer. */
static gboolean
meets_steep (const PpMidsurface *self,
             Line                line)
{
  double nearing = self->steepest * get_steepness (line.slant) + 1;
  double walk = WALK / get_steepness (line.slant), z, over;
  PpPoint where;

  clip_to_reach (self, &line);
  if (line.from >= line.to)
    return FALSE;
  z = line.from;
  over = surface_over (self, &line, z);
  while (z < line.to)
    {
      double next = MIN (line.to, z + MAX (walk, fabs (over) / nearing));
      double next_over = surface_over (self, &line, next);

      if ((over >= 0) != (next_over >= 0)
          && meets_between (self, &line, z, over, next, next_over, &where))
        return TRUE;
      z = next;
      over = next_over;
    }
  return FALSE;
}

double
pp_midsurface_get_fold (const PpMidsurface *self,
                        PpPoint             slant)
{
  PpBox box = self->body->box;

  if (pp_body_is_flat (self->body))
    return 0;
  return fmax (0, self->steepest * get_steepness (slant) - 1)
         * pp_rough_length (pp_box_width (box), pp_box_height (box));
}

double
pp_midsurface_height (const PpMidsurface *self,
                      PpPoint             p)
{
  return self->plane.c + self->plane.a * p.x + self->plane.b * p.y
         + pp_heights_underside (&self->body->heights, pp_frame_to_piece (&self->body->frame, p));
}

gboolean
pp_midsurface_meets (const PpMidsurface *self,
                     PpPoint             start,
                     PpPoint             slant)
{
  Line line = line_make (self, start, slant);
  PpBox box = self->body->box;

  if (get_steepness (slant) <= PARALLEL) /* straight on */
    return covers (self, start);
  if (pp_body_is_flat (self->body))
    return meets_plane (self, &line);
  if (passes_beside (self, &line))
    return FALSE;
  clip_line (&line, start.x, slant.x, box.x0, box.x1);
  clip_line (&line, start.y, slant.y, box.y0, box.y1);
  if (line.from >= line.to)
    return FALSE;
  return self->steepest * get_steepness (slant) >= GENTLE ? meets_steep (self, line)
                                                          : meets_gentle (self, line);
}
