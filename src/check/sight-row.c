/* sight-row.c: how much light comes through along one leg of the wire, seen aslant.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Along its lines of sight the rim of a screen throws an outline onto the front face. A part of the
 * wire lies inside of it or not by how often that outline is crossed on the way there, so what is
 * looked at is the rim and not the parts. The rim is taken straight between its points: of a part
 * that it passes nearer to than that may be wrong by, and than the part may move, nothing is known.
 *
 * A surface so steep that lines of sight meet it more than once throws a fold beyond its rim. How
 * often a line meets it is odd where the way there crosses the outline an odd number of times;
 * where it is even, nothing is known as far from the outline as a fold may reach.
 */
#include "check/sight-row.h"

#include "check/finding.h"
#include "check/loops.h"

#include <string.h>

/* How far beyond rounding nothing is known, of an outline that PP_TIE belongs to. */
#define SPARE (16 * PP_TIE)

/* What is marked at a part. */
#define CROSSED 1
#define DOUBTFUL 2

/* One line of the leg in hand. */
typedef struct
{
  const PpSightRow *row;
  const PpScreen   *screen;
  guint             line;
  double            near;  /* mm: parts as near to the outline as this are doubtful */
  guint8           *marks; /* row->n + 1 */
  guint             first; /* of the marks that are made */
  guint             last;  /* not included */
} Marking;

/* The first part whose middle lies beyond. */
static guint
part_after (const PpSightRow *row,
            double            along)
{
  double i = along * row->per_mm + 0.5;

  return i < 1 ? 0 : i >= row->n ? row->n : (guint) i;
}

static void
mark (Marking *self,
      guint    first,
      guint    last)
{
  for (guint i = first; i < last; i++)
    self->marks[i] |= DOUBTFUL;
  self->first = MIN (self->first, first);
  self->last = MAX (self->last, last);
}

/* A point of the outline, along the leg and beside the line in hand. */
typedef struct
{
  double along;
  double aside;
} Place;

static double
share_where (Place  a,
             Place  b,
             double aside)
{
  return CLAMP ((aside - a.aside) / (b.aside - a.aside), 0, 1);
}

static void
mark_near (Marking *self,
           Place    a,
           Place    b)
{
  double from = a.along, to = b.along, near = self->near;

  if (a.aside < -near || a.aside > near || b.aside < -near || b.aside > near)
    {
      from = a.along + share_where (a, b, -near) * (b.along - a.along);
      to = a.along + share_where (a, b, near) * (b.along - a.along);
    }
  mark (self, part_after (self->row, MIN (from, to) - near),
        part_after (self->row, MAX (from, to) + near));
}

static void
mark_crossing (Marking *self,
               Place    a,
               Place    b)
{
  guint at = part_after (self->row, a.along + share_where (a, b, 0) * (b.along - a.along));

  self->marks[at] ^= CROSSED;
  self->first = MIN (self->first, at);
  self->last = MAX (self->last, at);
}

static void
mark_side (Marking *self,
           Place    a,
           Place    b)
{
  a.aside -= self->row->asides[self->line];
  b.aside -= self->row->asides[self->line];
  if (MIN (a.aside, b.aside) > self->near || MAX (a.aside, b.aside) < -self->near)
    return;
  mark_near (self, a, b);
  if ((a.aside < 0) != (b.aside < 0))
    mark_crossing (self, a, b);
}

/* Of point `i` of the rim. */
static double
along_of (const PpSightRow *row,
          const PpScreen   *screen,
          guint             i)
{
  return (screen->x[i] - row->from.x - screen->z[i] * row->slant.x) * row->direction.x
         + (screen->y[i] - row->from.y - screen->z[i] * row->slant.y) * row->direction.y;
}

/* Likewise, to its right. */
static double
aside_of (const Marking *self,
          guint          i)
{
  const PpSightRow *row = self->row;
  const PpScreen *screen = self->screen;

  return (screen->x[i] - row->from.x - screen->z[i] * row->slant.x) * row->normal.x
         + (screen->y[i] - row->from.y - screen->z[i] * row->slant.y) * row->normal.y
         - row->asides[self->line];
}

/* Points of the rim that follow one another, first to last - 1. */
typedef struct
{
  guint first;
  guint last;
} Stretch;

static void
find_asides (const PpSightRow *row,
             PpSightRoom      *room,
             Stretch           stretch)
{
  const PpScreen *screen = room->screen;
  guint at = stretch.first;
  double start = row->from.x * row->normal.x + row->from.y * row->normal.y;
  double rise = row->slant.x * row->normal.x + row->slant.y * row->normal.y;

  pp_loop_asides (screen->x + at, screen->y + at, screen->z + at, stretch.last - at,
                  (double[]) { row->normal.x, row->normal.y, rise }, start, room->asides + at);
}

/* The first place from `i` on that is not 0, or the end. Most are, so eight are looked at at
 * once. */
static guint
skip_zeros (const guint8 *places,
            guint         i,
            guint         end)
{
  for (guint64 eight = 0; i + sizeof eight <= end; i += sizeof eight)
    {
      memcpy (&eight, places + i, sizeof eight);
      if (eight != 0)
        break;
    }
  while (i < end && places[i] == 0)
    i++;
  return i;
}

/* How far beside the leg a side must be to touch none of its lines. */
static double
find_reach (const PpSightRow *row,
            double            near)
{
  double reach = 0;

  for (guint k = 0; k < PP_N_LINES; k++)
    reach = MAX (reach, fabs (row->asides[k]));
  return reach + near;
}

static void
mark_stretch (Marking      lines[PP_N_LINES],
              PpSightRoom *room,
              Stretch      stretch)
{
  const PpSightRow *row = lines[0].row;
  const double *asides = room->asides;
  guint end = stretch.last - 1;

  pp_loop_within (asides + stretch.first, stretch.last - stretch.first,
                  find_reach (row, lines[0].near), room->within + stretch.first);
  for (guint i = skip_zeros (room->within, stretch.first, end); i < end;
       i = skip_zeros (room->within, i + 1, end))
    {
      Place a = { along_of (row, room->screen, i), asides[i] };
      Place b = { along_of (row, room->screen, i + 1), asides[i + 1] };

      for (guint k = 0; k < PP_N_LINES; k++)
        mark_side (&lines[k], a, b);
    }
}

/* Whether the screen is before part `i` is left open. */
static void
leave_open (Marking *self,
            guint    i)
{
  const PpSightRow *row = self->row;
  PpSightDoubt doubt = { i, self->line, self->screen };

  pp_loop_dim (row->least + (gsize) self->line * row->n + i, 1, row->opaque,
               self->screen->cover.transmittance);
  g_array_append_val (row->doubts, doubt);
}

/* From mark to mark, and wipes them out. */
static void
dim_line (Marking *self,
          gboolean folds)
{
  const PpSightRow *row = self->row;
  gsize first = (gsize) self->line * row->n;
  double factor = self->screen->cover.transmittance;
  guint end = MIN (self->last + 1, row->n), next;
  gboolean inside = FALSE;

  for (guint i = self->first; i < end; i = next)
    {
      guint8 marked = self->marks[i];

      self->marks[i] = 0;
      inside ^= marked & CROSSED;
      next = i + 1;
      if ((marked & DOUBTFUL) || (folds && !inside))
        {
          leave_open (self, i);
          continue;
        }
      next = skip_zeros (self->marks, next, end);
      if (!inside)
        continue;
      pp_loop_dim (row->most + first + i, next - i, row->opaque, factor);
      pp_loop_dim (row->least + first + i, next - i, row->opaque, factor);
    }
  self->marks[row->n] = 0;
}

/* Nothing is known of parts within `far` mm of the rim that do not lie inside. */
static void
mark_fold (Marking *self,
           double   far)
{
  const PpSightRow *row = self->row;
  const PpScreen *screen = self->screen;
  double from = INFINITY, to = -INFINITY;

  for (guint r = 0, i = 0; r < screen->n_rings; r++, i++)
    for (; i + 1 < screen->ends[r]; i++)
      {
        Place a = { along_of (row, screen, i), aside_of (self, i) };
        Place b = { along_of (row, screen, i + 1), aside_of (self, i + 1) };

        if (MIN (a.aside, b.aside) > far || MAX (a.aside, b.aside) < -far)
          continue;
        from = MIN (from, MIN (a.along, b.along));
        to = MAX (to, MAX (a.along, b.along));
      }
  if (from > to)
    return;
  self->first = MIN (self->first, part_after (row, from - far));
  self->last = MAX (self->last, part_after (row, to + far));
}

static void
make_room (PpSightRoom *self,
           guint        n_marks,
           guint        n_asides)
{
  if (self->stretches == NULL)
    self->stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));
  if (self->n_marks < n_marks)
    {
      self->marks = g_renew (guint8, self->marks, n_marks);
      memset (self->marks, 0, n_marks); /* as they are left */
      self->n_marks = n_marks;
    }
  if (self->n_asides < n_asides)
    {
      self->asides = g_renew (double, self->asides, n_asides);
      self->within = g_renew (guint8, self->within, n_asides);
      self->n_asides = n_asides;
    }
}

/* mm: parts as near to where the outline is taken to lie are doubtful. */
static double
find_near (const PpSightRow *row,
           const PpScreen   *screen,
           double            steep)
{
  double slope = screen->is_piece ? screen->piece.steepest : 0;

  return row->slack + screen->loose * steep + SPARE * (1 + slope * steep);
}

/* Longer by the side from point i to the next. */
static void
add_to_stretches (GArray *stretches,
                  guint   i)
{
  Stretch *last = stretches->len == 0 ? NULL
                  : &g_array_index (stretches, Stretch, stretches->len - 1);
  Stretch stretch = { i, i + 2 };

  if (last != NULL && last->last == i + 1)
    last->last = i + 2;
  else
    g_array_append_val (stretches, stretch);
}

void
pp_sight_room_take (PpSightRoom      *self,
                    const PpScreen   *screen,
                    const PpSightRow *leg,
                    PpPoint           slant,
                    PpPoint           shift)
{
  guint n = screen->ends[screen->n_rings - 1];
  double steep = pp_rough_length (slant.x, slant.y), far = pp_rough_length (shift.x, shift.y);
  double reach = find_reach (leg, find_near (leg, screen, steep)) + far + PP_TIE;
  PpSightRow straight = *leg;

  make_room (self, PP_N_LINES * (leg->n + 1), n);
  self->screen = screen;
  g_array_set_size (self->stretches, 0);
  straight.slant = (PpPoint) { 0, 0 };
  find_asides (&straight, self, (Stretch) { 0, n });
  for (guint r = 0, i = 0; r < screen->n_rings; r++, i++)
    for (; i + 1 < screen->ends[r]; i++)
      {
        double a = self->asides[i], b = self->asides[i + 1];
        double high = reach + steep * MAX (fabs (screen->z[i]), fabs (screen->z[i + 1]));

        if (MIN (a, b) <= high && MAX (a, b) >= -high)
          add_to_stretches (self->stretches, i);
      }
}

static void
mark_rim (Marking           lines[PP_N_LINES],
          const PpSightRow *row,
          PpSightRoom      *room)
{
  for (guint i = 0; i < room->stretches->len; i++)
    {
      Stretch stretch = g_array_index (room->stretches, Stretch, i);

      find_asides (row, room, stretch);
      mark_stretch (lines, room, stretch);
    }
}

void
pp_sight_row_dim (const PpSightRow *self,
                  PpSightRoom      *room)
{
  const PpScreen *screen = room->screen;
  double near = find_near (self, screen, pp_rough_length (self->slant.x, self->slant.y));
  double fold = screen->is_piece ? pp_midsurface_get_fold (&screen->piece, self->slant) : 0;
  Marking lines[PP_N_LINES];

  for (guint k = 0; k < PP_N_LINES; k++)
    lines[k] = (Marking) {
      .row = self, .screen = screen, .line = k, .near = near,
      .marks = room->marks + k * (self->n + 1), .first = self->n,
    };
  if (self->spacing > 0)
    mark_rim (lines, self, room);
  for (guint k = 0; k < PP_N_LINES; k++)
    {
      if (self->spacing <= 0)
        mark (&lines[k], 0, self->n);
      else if (fold > 0)
        mark_fold (&lines[k], fold + near);
      dim_line (&lines[k], fold > 0);
    }
}

void
pp_sight_room_clear (PpSightRoom *self)
{
  g_clear_pointer (&self->stretches, g_array_unref);
  g_clear_pointer (&self->marks, g_free);
  g_clear_pointer (&self->asides, g_free);
  g_clear_pointer (&self->within, g_free);
}
