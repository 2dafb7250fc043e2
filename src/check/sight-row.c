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

/* Parts in hand, and of each how much light still comes through. */
typedef struct
{
  const PpSightRow *row;
  guint             first;
  guint             last;
  const PpSeen     *seen;
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

static void
note_dimmer (guint16 *by,
             guint    index)
{
  if (index != PP_SIGHT_NONE)
    *by = *by == PP_SIGHT_NONE ? (guint16) index : PP_SIGHT_SEVERAL;
}

/* Something between the viewer and the wire. */
typedef struct
{
  guint  index; /* PP_SIGHT_NONE: not a placement */
  double transmittance;
} Screen;

/* `n` parts from the i-th on have the screen before them, with `room` mm for the first of them. */
static void
dim (Parts          *parts,
     const PpAslant *aslant,
     guint           i,
     guint           n,
     double          room,
     Screen          screen)
{
  const PpSeen *seen = parts->seen;

  for (guint k = i; k < i + n; k++)
    {
      double left = fmax (0, room - (k - i) * parts->row->spacing);
      double *behind = &parts->behind[k - parts->first], *through = &parts->through[k - parts->first];

      if (seen->hidden[k])
        continue;
      seen->room[k] = (float) fmin (seen->room[k], left);
      *behind = fmin (*behind, left);
      *through *= screen.transmittance;
      note_dimmer (&seen->by[k], screen.index);
      if (pp_is_over (*through, aslant->opaque))
        continue;
      seen->hidden[k] = TRUE;
      seen->room[k] = (float) *behind;
    }
}

/* The same where it is not before them. */
static void
leave (const PpSightRow *row,
       const PpSeen     *seen,
       guint             i,
       guint             n,
       double            room)
{
  for (guint k = i; k < i + n; k++)
    if (!seen->hidden[k])
      seen->room[k] = (float) fmin (seen->room[k], fmax (0, room - (k - i) * row->spacing));
}

/* mm: a room larger than this says nothing more of so many parts. */
static double
far_enough (const PpSightRow *row,
            guint             n)
{
  return fmax (PP_SIGHT_FAR, n * row->spacing) + 2 * PP_TIE;
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
      double far = far_enough (parts->row, last - i);
      double room = fmax (0, pp_cover_distance (cover, p, far) - 2 * PP_TIE);
      guint n = count_alike (parts->row, i, last, room);

      if (pp_cover_contains (cover, p))
        dim (parts, aslant, i, n, room, (Screen) { PP_SIGHT_NONE, cover->transmittance });
      else
        leave (parts->row, parts->seen, i, n, room);
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

/* What is opaque is enough, whatever else is before the part. */
gboolean
pp_sight_row_is_still_hidden (const PpAslant   *aslant,
                              const PpSightRow *row,
                              guint             i,
                              const PpSeen     *seen)
{
  PpPoint p = row_point (row, i);
  const PpShadow *shadow;
  guint which;
  double room;

  if (seen->by[i] >= aslant->n_bodies)
    return FALSE;
  which = aslant->shadow_of[seen->by[i]];
  if (which == PP_SIGHT_NONE)
    return FALSE;
  shadow = &g_array_index (aslant->shadows, PpShadow, which);
  if (pp_is_over (shadow->piece->cover.transmittance, aslant->opaque)
      || distance_to_box (shadow->box, p) >= 0
      || !pp_midsurface_look (shadow->piece, p, aslant->slant, PP_SIGHT_FAR, &room))
    return FALSE;
  seen->hidden[i] = TRUE;
  seen->room[i] = (float) CLAMP (room, 0, PP_SIGHT_FAR);
  return TRUE;
}

/* Calls for runs of parts that are not hidden whether the piece is before them. */
typedef void (*RunFunc) (guint    i,
                         guint    n,
                         double   room,
                         gboolean meets,
                         gpointer data);

static void
foreach_run (const PpAslant   *aslant,
             const PpSightRow *row,
             const PpShadow   *shadow,
             guint             first,
             guint             last,
             const guint8     *hidden,
             RunFunc           func,
             gpointer          data)
{
  guint near, n;

  pp_sight_row_range (row, pp_box_grow (shadow->box, PP_SIGHT_FAR), &first, &last);
  near = first;
  for (guint i = first; i < last; i += n)
    {
      PpPoint p = row_point (row, i);
      double room = distance_to_box (shadow->box, p);
      gboolean meets = FALSE;

      n = 1;
      if (hidden[i]) /* and stays so */
        continue;
      if (room < 0)
        {
          meets = pp_midsurface_look (shadow->piece, p, aslant->slant,
                                      i >= near ? far_enough (row, last - i) : 0, &room);
          if (room < 0) /* as far again it cannot be told */
            near = i + count_alike (row, i, last, -room);
        }
      n = count_alike (row, i, last, fmax (room, 0));
      func (i, n, fmax (room, 0), meets, data);
    }
}

typedef struct
{
  Parts          *parts;
  const PpAslant *aslant;
  Screen          screen;
} Dimming;

static void
dim_run (guint    i,
         guint    n,
         double   room,
         gboolean meets,
         gpointer data)
{
  const Dimming *dimming = data;

  if (meets)
    dim (dimming->parts, dimming->aslant, i, n, room, dimming->screen);
  else
    leave (dimming->parts->row, dimming->parts->seen, i, n, room);
}

static void
dim_by_piece (Parts          *parts,
              const PpAslant *aslant,
              const PpShadow *shadow)
{
  const PpMidsurface *piece = shadow->piece;
  Dimming dimming = { parts, aslant, { piece->index, piece->cover.transmittance } };

  foreach_run (aslant, parts->row, shadow, parts->first, parts->last, parts->seen->hidden, dim_run,
               &dimming);
}

typedef struct
{
  const PpSightRow *row;
  const PpSeen     *seen;
  guint8           *stale;
} Adding;

static void
add_to_run (guint    i,
            guint    n,
            double   room,
            gboolean meets,
            gpointer data)
{
  const Adding *adding = data;

  if (!meets)
    leave (adding->row, adding->seen, i, n, room);
  else
    for (guint k = i; k < i + n; k++)
      adding->stale[k] |= !adding->seen->hidden[k];
}

void
pp_sight_row_add (const PpAslant   *aslant,
                  const PpSightRow *row,
                  const PpShadow   *shadow,
                  const PpSeen     *seen,
                  guint8           *stale)
{
  Adding adding = { row, seen, stale };

  foreach_run (aslant, row, shadow, 0, row->n, seen->hidden, add_to_run, &adding);
}

void
pp_sight_row_look (const PpAslant   *aslant,
                   const PpSightRow *row,
                   guint             first,
                   guint             last,
                   const PpSeen     *seen)
{
  g_autofree double *through = g_new (double, 2 * (gsize) (last - first) + 1);
  Parts parts = { row, first, last, seen, through, through + (last - first) };

  for (guint i = first; i < last; i++)
    {
      seen->hidden[i] = !pp_is_over (1, aslant->opaque);
      seen->room[i] = (float) PP_SIGHT_FAR;
      seen->by[i] = PP_SIGHT_NONE;
      parts.through[i - first] = 1;
      parts.behind[i - first] = PP_SIGHT_FAR;
    }
  dim_by_cover (&parts, aslant, &aslant->background);
  for (guint i = 0; i < aslant->parts->len; i++)
    dim_by_cover (&parts, aslant, &g_array_index (aslant->parts, PpCover, i));
  for (guint i = 0; i < aslant->shadows->len; i++)
    dim_by_piece (&parts, aslant, &g_array_index (aslant->shadows, PpShadow, i));
}
