/* cover.c: outlines as things that hide what lies behind them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whoever cuts a line judges each piece of it at its middle, so a cut too many does no harm and
 * one too few would: sides that only touch the line are cut at what touches. What is drawn in
 * begins beside the sides, on their inner side, and on circles about the corners that point inward.
 */
#include "check/cover.h"

#include "panel/tolerance.h"
#include "shape/polygon.h"

PpCover
pp_cover_make (const PpOutline *outline,
               double           transmittance)
{
  return (PpCover) { .outline = outline, .box = pp_outline_get_box (outline),
                     .transmittance = transmittance };
}

PpCover
pp_cover_of_body (const PpBody *body)
{
  return (PpCover) { .outline = body->outline, .bands = pp_body_get_bands (body),
                     .box = body->box, .transmittance = body->piece->transmittance };
}

PpCover
pp_cover_of_part (const PpPart *part)
{
  PpCover cover = pp_cover_make (part->fused->outline, part->fused->glass.transmittance);

  cover.bands = part->bands;
  return cover;
}

PpCover
pp_cover_of_background (const PpScene *scene)
{
  PpCover cover = pp_cover_make (scene->background_outline,
                                 scene->panel->background->glass.transmittance);

  cover.bands = scene->background_bands;
  return cover;
}

/* TRUE if `p` lies on a side; else `inside` is turned over if the side passes to the right of
 * it. */
static inline gboolean
is_on_side (PpPoint   a,
            PpPoint   b,
            PpPoint   p,
            gboolean *inside)
{
  if ((a.y > p.y + PP_TIE && b.y > p.y + PP_TIE) || (a.y < p.y - PP_TIE && b.y < p.y - PP_TIE)
      || (a.x < p.x - PP_TIE && b.x < p.x - PP_TIE))
    return FALSE;
  if ((a.x <= p.x + PP_TIE || b.x <= p.x + PP_TIE)
      && pp_side_squared_distance ((PpSide) { a, b }, p) <= PP_TIE * PP_TIE)
    return TRUE;
  if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x))
    *inside = !*inside;
  return FALSE;
}

static gboolean
is_on_band (const PpBands *bands,
            PpPoint        p,
            gboolean      *inside)
{
  guint band = pp_bands_at (bands, p.y);

  for (guint i = bands->first[band]; i < bands->first[band + 1]; i++)
    if (is_on_side (bands->sides[i][0], bands->sides[i][1], p, inside))
      return TRUE;
  return FALSE;
}

static gboolean
is_on_ring (const PpOutline *outline,
            PpPoint          p,
            gboolean        *inside)
{
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *ring = pp_outline_get_ring (outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        if (is_on_side (ring[i], ring[i + 1], p, inside))
          return TRUE;
    }
  return FALSE;
}

gboolean
pp_cover_contains (const PpCover *self,
                   PpPoint        p)
{
  PpBox box = pp_box_grow (self->box, PP_TIE - self->drawn_in);
  gboolean inside = FALSE;

  if (p.x < box.x0 || p.x > box.x1 || p.y < box.y0 || p.y > box.y1)
    return FALSE;
  if (self->bands != NULL ? is_on_band (self->bands, p, &inside)
                          : is_on_ring (self->outline, p, &inside))
    return self->drawn_in <= 0;
  return inside
         && (self->drawn_in <= 0
             || pp_cover_distance (self, p, self->drawn_in) >= self->drawn_in - PP_TIE);
}

double
pp_cover_distance (const PpCover *self,
                   PpPoint        p,
                   double         far)
{
  return self->bands != NULL ? pp_bands_distance (self->bands, p, far)
                             : fmin (pp_outline_border_distance (self->outline, p), far);
}

/* A point of the outline in the frame of the line: along it and to its right. */
typedef struct
{
  double along;
  double aside;
} InLine;

static InLine
to_line (PpPoint p,
         PpPoint start,
         PpPoint direction)
{
  double dx = p.x - start.x, dy = p.y - start.y;

  return (InLine) { dx * direction.x + dy * direction.y, dy * direction.x - dx * direction.y };
}

/* One of the lines, and where its cuts go. */
typedef struct
{
  double   length;
  guint    line;
  GArray  *cuts; /* PpCut */
  double   inner;         /* 1 where the inside is to the left of the side in hand, y up; else -1 */
  gboolean points_inward; /* its first corner, or nearly */
} Cutting;

static void
add_cut (const Cutting *self,
         double         along)
{
  PpCut cut = { along, self->line };

  if (along > 0 && along < self->length)
    g_array_append_val (self->cuts, cut);
}

static void
cut_by_side (const Cutting *self,
             InLine         a,
             InLine         b)
{
  if (fabs (a.aside) <= PP_TIE)
    add_cut (self, a.along);
  if (fabs (b.aside) <= PP_TIE)
    add_cut (self, b.along);
  if ((a.aside < 0) != (b.aside < 0)) /* so they differ, and nothing is divided by 0 */
    add_cut (self, a.along + (b.along - a.along) * (a.aside / (a.aside - b.aside)));
}

/* Where the line meets what lies inside at `radius` from a side or from its start. The corner at
 * its end is the next side's. */
static void
cut_beside (const Cutting *self,
            InLine         a,
            InLine         b,
            double         radius)
{
  double side = sqrt ((b.along - a.along) * (b.along - a.along)
                      + (b.aside - a.aside) * (b.aside - a.aside));
  double half = radius * radius - a.aside * a.aside;
  double along, aside;

  if (self->points_inward && half >= 0)
    {
      add_cut (self, a.along - sqrt (half));
      add_cut (self, a.along + sqrt (half));
    }
  if (side <= 0)
    return;
  along = -self->inner * radius * (b.aside - a.aside) / side;
  aside = self->inner * radius * (b.along - a.along) / side;
  cut_by_side (self, (InLine) { a.along + along, a.aside + aside },
               (InLine) { b.along + along, b.aside + aside });
}

/* Whether a side comes within `reach` mm of the lines. */
static gboolean
may_cut (InLine a,
         InLine b,
         double length,
         double reach)
{
  return MIN (a.aside, b.aside) <= reach && MAX (a.aside, b.aside) >= -reach
         && MIN (a.along, b.along) <= length + reach && MAX (a.along, b.along) >= -reach;
}

static void
cut_line (const PpCover *self,
          Cutting        cutting,
          InLine         a,
          InLine         b)
{
  if (self->drawn_in > 0)
    cut_beside (&cutting, a, b, self->drawn_in);
  else
    cut_by_side (&cutting, a, b);
}

/* mm²: by less than this a corner may point outward and count as pointing inward. */
#define NO_TURN PP_TIE

static gboolean
points_inward (const PpCoverSide *side)
{
  const PpPoint *ring = side->ring;
  PpPoint before = ring[side->i >= 2 ? side->i - 2 : side->n - 2];

  return side->inner * pp_point_cross (before, ring[side->i - 1], ring[side->i]) <= NO_TURN;
}

/* mm beside the middle line within which a side may cut one. */
static double
find_reach (const PpCover *self,
            const double  *asides,
            guint          n_lines)
{
  double reach = 0;

  for (guint k = 0; k < n_lines; k++)
    reach = MAX (reach, fabs (asides[k]) + MAX (self->drawn_in, 0) + 2 * PP_TIE);
  return reach;
}

gboolean
pp_cover_is_beside (const PpCover *self,
                    PpPoint        start,
                    PpPoint        direction,
                    double         length,
                    const double  *asides,
                    guint          n_lines,
                    double         slack)
{
  double reach = find_reach (self, asides, n_lines) + slack;
  InLine middle = to_line (pp_box_middle (self->box), start, direction);
  double width = pp_box_width (self->box) / 2, height = pp_box_height (self->box) / 2;
  double along = width * fabs (direction.x) + height * fabs (direction.y);
  double aside = width * fabs (direction.y) + height * fabs (direction.x);

  return fabs (middle.aside) > aside + reach || middle.along < -along - reach
         || middle.along > length + along + reach;
}

GArray *
pp_cover_find_sides (const PpCover *self,
                     PpPoint        start,
                     PpPoint        direction,
                     double         length,
                     const double  *asides,
                     guint          n_lines,
                     double         slack)
{
  GArray *sides = g_array_new (FALSE, FALSE, sizeof (PpCoverSide));
  double reach = find_reach (self, asides, n_lines) + slack;

  if (pp_cover_is_beside (self, start, direction, length, asides, n_lines, slack))
    return sides;
  for (guint r = 0; r < pp_outline_get_n_rings (self->outline); r++)
    {
      PpCoverSide side = { 0 };
      InLine a, b;

      side.ring = pp_outline_get_ring (self->outline, r, &side.n);
      if (self->drawn_in > 0)
        side.inner = (pp_ring_area (side.ring, side.n) > 0) == (r == 0) ? 1 : -1;
      a = to_line (side.ring[0], start, direction);
      for (side.i = 1; side.i < side.n; side.i++, a = b)
        {
          b = to_line (side.ring[side.i], start, direction);
          if (may_cut (a, b, length, reach))
            g_array_append_val (sides, side);
        }
    }
  return sides;
}

void
pp_cover_cut (const PpCover *self,
              GArray        *sides,
              PpPoint        start,
              PpPoint        direction,
              double         length,
              const double  *asides,
              guint          n_lines,
              GArray        *cuts)
{
  double reach = find_reach (self, asides, n_lines);

  for (guint s = 0; s < sides->len; s++)
    {
      const PpCoverSide *side = &g_array_index (sides, PpCoverSide, s);
      InLine a = to_line (side->ring[side->i - 1], start, direction);
      InLine b = to_line (side->ring[side->i], start, direction);
      Cutting cutting = { .length = length, .cuts = cuts, .inner = side->inner };

      if (!may_cut (a, b, length, reach))
        continue;
      cutting.points_inward = points_inward (side);
      for (cutting.line = 0; cutting.line < n_lines; cutting.line++)
        cut_line (self, cutting, (InLine) { a.along, a.aside - asides[cutting.line] },
                  (InLine) { b.along, b.aside - asides[cutting.line] });
    }
}
