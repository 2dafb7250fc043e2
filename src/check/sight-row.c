/* sight-row.c: how much light comes through along one line of the wire, seen aslant.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Far from any outline neighbours have the same answer, so most parts are passed over with the one
 * before. What is hidden stays so while what hid it stays before it; what shows, while nothing
 * comes or goes.
 */
#include "check/sight-row.h"

#include "check/finding.h"
#include "shape/polygon.h"

/* Parts in hand, and of each how much light still comes through. */
typedef struct
{
  const PpSightRow *row;
  guint             first;
  guint             last;
  guint8           *hidden;
  float            *room;
  double           *through; /* from `first` on, as the next */
  double           *behind;  /* mm: room while all that dims it so far stays before it */
} Parts;

static PpPoint
row_point (const PpSightRow *row,
           guint             i)
{
  return (PpPoint) { row->from.x + i * row->step.x, row->from.y + i * row->step.y };
}

/* Narrows [`first`, `last`) to where one coordinate may lie between two bounds, and one more part
 * either way for rounding. */
static void
narrow (double  start,
        double  step,
        double  least,
        double  greatest,
        double *first,
        double *last)
{
  if (fabs (step) < 1e-12)
    {
      if (start < least || start > greatest)
        *last = *first;
      return;
    }
  *first = fmax (*first, floor (fmin ((least - start) / step, (greatest - start) / step)) - 1);
  *last = fmin (*last, ceil (fmax ((least - start) / step, (greatest - start) / step)) + 2);
}

void
pp_sight_row_range (const PpSightRow *row,
                    PpBox             box,
                    guint            *first,
                    guint            *last)
{
  double from = *first, to = *last;

  narrow (row->from.x, row->step.x, box.x0, box.x1, &from, &to);
  narrow (row->from.y, row->step.y, box.y0, box.y1, &from, &to);
  *first = to > from ? (guint) from : 0;
  *last = to > from ? (guint) to : 0;
}

/* How many parts from the i-th on have the same answer if all within `room` mm have. */
static guint
count_alike (const PpSightRow *row,
             guint             i,
             guint             last,
             double            room)
{
  double n = row->spacing > 0 ? 1 + floor (room / row->spacing) : last;

  return (guint) fmin (n, last - i);
}

/* `n` parts from the i-th on have `room` mm, the first of them, in which a screen is or is not before
 * them. */
static void
dim (Parts   *parts,
     guint    i,
     guint    n,
     double   room,
     gboolean meets,
     double   transmittance,
     double   opaque)
{
  for (guint k = i; k < i + n; k++)
    {
      double left = fmax (0, room - (k - i) * parts->row->spacing);

      if (parts->hidden[k])
        continue;
      parts->room[k] = (float) fmin (parts->room[k], left);
      if (!meets)
        continue;
      parts->behind[k - parts->first] = fmin (parts->behind[k - parts->first], left);
      parts->through[k - parts->first] *= transmittance;
      if (pp_is_over (parts->through[k - parts->first], opaque))
        continue;
      parts->hidden[k] = TRUE;
      parts->room[k] = (float) parts->behind[k - parts->first];
    }
}

static void
dim_by_cover (Parts          *parts,
              const PpAslant *aslant,
              const PpCover  *cover)
{
  guint first = parts->first, last = parts->last;

  pp_sight_row_range (parts->row, pp_box_grow (cover->box, PP_SIGHT_FAR), &first, &last);
  for (guint i = first; i < last;)
    {
      PpPoint p = row_point (parts->row, i);
      double room = fmax (0, pp_outline_border_distance (cover->outline, p) - 2 * PP_TIE);
      guint n = count_alike (parts->row, i, last, room);

      dim (parts, i, n, room, pp_cover_contains (cover, p), cover->transmittance, aslant->opaque);
      i += n;
    }
}

/* mm from outside; less than 0 within. */
static double
distance_to_box (PpBox   box,
                 PpPoint p)
{
  return fmax (fmax (box.x0 - p.x, p.x - box.x1), fmax (box.y0 - p.y, p.y - box.y1));
}

static void
dim_by_piece (Parts          *parts,
              const PpAslant *aslant,
              const PpShadow *shadow)
{
  guint first = parts->first, last = parts->last, near;

  pp_sight_row_range (parts->row, pp_box_grow (shadow->box, PP_SIGHT_FAR), &first, &last);
  near = first;
  for (guint i = first; i < last;)
    {
      PpPoint p = row_point (parts->row, i);
      double room = distance_to_box (shadow->box, p);
      gboolean meets = FALSE;
      guint n;

      if (parts->hidden[i]) /* and stays so */
        {
          i++;
          continue;
        }
      if (room < 0)
        {
          meets = pp_midsurface_look (shadow->piece, p, aslant->slant, i >= near, &room);
          if (room < 0) /* as far again it cannot be told */
            near = i + count_alike (parts->row, i, last, -room);
        }
      n = count_alike (parts->row, i, last, fmax (room, 0));
      dim (parts, i, n, fmax (room, 0), meets, shadow->piece->cover.transmittance,
           aslant->opaque);
      i += n;
    }
}

void
pp_sight_row_look (const PpAslant   *aslant,
                   const PpSightRow *row,
                   guint             first,
                   guint             last,
                   guint8           *hidden,
                   float            *room)
{
  g_autofree double *through = g_new (double, 2 * (gsize) (last - first) + 1);
  Parts parts = { row, first, last, hidden, room, through, through + (last - first) };

  for (guint i = first; i < last; i++)
    {
      hidden[i] = !pp_is_over (1, aslant->opaque);
      room[i] = (float) PP_SIGHT_FAR;
      parts.through[i - first] = 1;
      parts.behind[i - first] = PP_SIGHT_FAR;
    }
  dim_by_cover (&parts, aslant, &aslant->background);
  for (guint i = 0; i < aslant->parts->len; i++)
    dim_by_cover (&parts, aslant, &g_array_index (aslant->parts, PpCover, i));
  for (guint i = 0; i < aslant->shadows->len; i++)
    dim_by_piece (&parts, aslant, &g_array_index (aslant->shadows, PpShadow, i));
}
