/* distance.c: how far each full square of a grid is from the nearest empty one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two passes in whole numbers, so that nothing is rounded and equal distances are equal. Down and
 * up each column: the distance within the column. Along each row: every square u of the row
 * offers the parabola (x - u)² + (its column's distance)²; the lower envelope of all is kept on a
 * stack, of which each x then reads its value. Linear in the number of squares.
 *
 * Where a short distance is enough, as it is for dabs, the parabolas farther away than that need
 * not be looked at: then plain loops over short whole numbers are several times as fast. They go
 * over the full squares alone, for what is long and lies aslant has far fewer of them than its box.
 */
#include "check/distance.h"

#include "shape/wide.h"

#include <string.h>

static void
measure_columns (const guint8 *full,
                 int             width,
                 int             height,
                 int            *in_column)
{
  for (int at = width; at < width * height; at++)
    in_column[at] = full[at] ? in_column[at - width] + 1 : 0;
  for (int at = width * (height - 1) - 1; at >= 0; at--)
    in_column[at] = MIN (in_column[at], in_column[at + width] + 1);
}

/* The parabolas of one row; `from` is where one begins to be the lowest. */
typedef struct
{
  const int *in_column;
  int       *lowest;
  int       *from;
  int        top;
} Envelope;

static int
value_at (const Envelope *self,
          int             u,
          int             x)
{
  return (x - u) * (x - u) + self->in_column[u] * self->in_column[u];
}

/* The first whole x at which the parabola of v > u is lower than that of u; it is never before
 * the place where that of u begins, so both sides of the division are positive. */
static int
first_lower (const Envelope *self,
             int             u,
             int             v)
{
  return 1 + (value_at (self, v, 0) - value_at (self, u, 0)) / (2 * (v - u));
}

static void
push (Envelope *self,
      int       v,
      int       width)
{
  int from;

  while (self->top >= 0
         && value_at (self, self->lowest[self->top], self->from[self->top])
                > value_at (self, v, self->from[self->top]))
    self->top--;
  from = self->top < 0 ? 0 : first_lower (self, self->lowest[self->top], v);
  if (from >= width)
    return;
  self->top++;
  self->lowest[self->top] = v;
  self->from[self->top] = from;
}

static void
measure_row (Envelope *envelope,
             int       width,
             int      *squared)
{
  envelope->top = -1;
  for (int v = 0; v < width; v++)
    push (envelope, v, width);
  for (int x = width - 1; x >= 0; x--)
    {
      squared[x] = value_at (envelope, envelope->lowest[envelope->top], x);
      if (x == envelope->from[envelope->top])
        envelope->top--;
    }
}

/* All spans in a grid with an empty border. */
typedef struct
{
  int i0; /* column and row of its first square */
  int j0;
  int width;
  int height;
} Grid;

static Grid
find_grid (const PpSpan *full,
           guint         n_spans)
{
  int i0 = G_MAXINT, i1 = G_MININT;

  for (guint s = 0; s < n_spans; s++)
    {
      i0 = MIN (i0, full[s].i0);
      i1 = MAX (i1, full[s].i1);
    }
  return (Grid) { i0 - 1, full[0].j - 1, i1 - i0 + 2, full[n_spans - 1].j - full[0].j + 3 };
}

static int
copy_far (const int *from,
          int        n,
          int       *squared)
{
  int greatest = 0;

  for (int x = 0; x < n; x++)
    {
      squared[x] = from[x];
      greatest = MAX (greatest, from[x]);
    }
  return greatest;
}

static void
measure_far (const PpSpan *full,
             guint         n_spans,
             int          *squared,
             int          *farthest)
{
  Grid grid = find_grid (full, n_spans);
  gsize n = (gsize) grid.width * (gsize) grid.height;
  g_autofree guint8 *is_full = g_new0 (guint8, n);
  g_autofree int *in_column = g_new0 (int, n);
  g_autofree int *lowest = g_new (int, grid.width);
  g_autofree int *from = g_new (int, grid.width);
  g_autofree int *row = g_new (int, grid.width);

  for (guint s = 0; s < n_spans; s++)
    memset (is_full + (full[s].j - grid.j0) * grid.width + full[s].i0 - grid.i0, 1,
            (gsize) (full[s].i1 - full[s].i0));
  measure_columns (is_full, grid.width, grid.height, in_column);
  for (guint s = 0; s < n_spans; s++)
    {
      Envelope envelope = { in_column + (full[s].j - grid.j0) * grid.width, lowest, from, -1 };

      if (s == 0 || full[s - 1].j != full[s].j)
        measure_row (&envelope, grid.width, row);
      farthest[s] = copy_far (row + full[s].i0 - grid.i0, full[s].i1 - full[s].i0, squared);
      squared += full[s].i1 - full[s].i0;
    }
}

/* Twice its square is a gint16. */
#define NEAR 127

/* Loops along a row go to the end of so many squares, since a vector's rest costs more than one. */
#define LANES 16

/* Distances within the column, none more than `enough`, of full squares from those above them. */
PP_WIDE static void
measure_from_above (const gint16 *restrict above,
                    int                    n,
                    gint16                 enough,
                    gint16       *restrict near)
{
  for (int x = 0; x < n; x++)
    near[x] = MIN ((gint16) (above[x] + 1), enough);
}

PP_WIDE static void
measure_from_below (const gint16 *restrict below,
                    int                    n,
                    gint16       *restrict near)
{
  for (int x = 0; x < n; x++)
    near[x] = MIN (near[x], (gint16) (below[x] + 1));
}

/* The squares of a row, and the greatest of them. */
PP_WIDE static gint16
square_row (const gint16 *restrict near,
            int                    n,
            gint16       *restrict squares)
{
  gint16 greatest = 0;

  for (int block = 0; block < n; block += LANES)
    for (int x = block; x < block + LANES; x++)
      {
        gint16 square = (gint16) (near[x] * near[x]);

        squares[x] = square;
        greatest = MAX (greatest, square);
      }
  return greatest;
}

/* Before and behind the row of squares there are `enough` more. */
PP_WIDE static void
measure_row_near (const gint16 *restrict squares,
                  int                    n,
                  gint16                 enough,
                  gint16                 greatest,
                  gint16       *restrict least)
{
  memcpy (least, squares, (gsize) n * sizeof *least);
  for (gint16 d = 1; d < enough && d * d < greatest; d++)
    {
      const gint16 *left = squares - d, *right = squares + d;
      gint16 more = (gint16) (d * d);

      for (int block = 0; block < n; block += LANES)
        for (int x = block; x < block + LANES; x++)
          {
            gint16 beside = (gint16) (MIN (left[x], right[x]) + more);

            least[x] = MIN (least[x], beside);
          }
    }
}

PP_WIDE static int
copy_near (const gint16 *restrict from,
           int                    n,
           int          *restrict squared)
{
  int greatest = 0;

  for (int x = 0; x < n; x++)
    {
      squared[x] = from[x];
      greatest = MAX (greatest, from[x]);
    }
  return greatest;
}

/* A row of the grid in the making. In what is as wide as the grid there is room for `enough` and
 * some lanes more on either side. */
typedef struct
{
  const PpSpan *full;
  int           i0;     /* column of the grid's first square */
  gint16        enough;
  guint         from;   /* the row's spans, up to before the end */
  guint         end;
  gint16       *near;   /* distances within the column, 0 where it is not full */
  gint16       *squares;
  gint16       *least;
} Row;

static gint16 *
near_at (const Row    *self,
         const PpSpan *span)
{
  return self->near + span->i0 - self->i0;
}

static guint
count_squares (const PpSpan *span)
{
  return (guint) (span->i1 - span->i0);
}

static void
clear_row (Row *self)
{
  for (guint s = self->from; s < self->end; s++)
    memset (near_at (self, &self->full[s]), 0, count_squares (&self->full[s]) * sizeof (gint16));
  self->from = self->end;
}

/* `near` of its squares, span by span. */
static void
turn_to_row (Row          *self,
             guint         from,
             guint         end,
             const gint16 *near)
{
  clear_row (self);
  self->from = from;
  self->end = end;
  for (guint s = from; s < end; s++)
    {
      guint n = count_squares (&self->full[s]);

      memcpy (near_at (self, &self->full[s]), near, n * sizeof *near);
      near += n;
    }
}

/* Of all full squares, from the top down. */
static void
measure_down (Row    *self,
              guint   n_spans,
              gint16 *near)
{
  const PpSpan *full = self->full;

  for (guint from = 0, end; from < n_spans; from = end)
    {
      gint16 *first = near;

      if (self->end > self->from && full[self->from].j != full[from].j - 1)
        clear_row (self);
      for (end = from; end < n_spans && full[end].j == full[from].j; end++)
        {
          measure_from_above (near_at (self, &full[end]), (int) count_squares (&full[end]),
                              self->enough, near);
          near += count_squares (&full[end]);
        }
      turn_to_row (self, from, end, first);
    }
  clear_row (self);
}

/* Of the row in hand. What lies beyond its ends is empty, and a place farther out no nearer. */
static void
measure_along (Row *self,
               int *squared,
               int *farthest)
{
  int first = self->full[self->from].i0 - self->i0;
  int n = self->full[self->end - 1].i1 - self->i0 - first;
  gint16 greatest;

  greatest = square_row (self->near + first - 1, n + 2, self->squares + first - 1);
  measure_row_near (self->squares + first, n, self->enough, greatest, self->least + first);
  for (guint s = self->from; s < self->end; s++)
    {
      const PpSpan *span = &self->full[s];

      farthest[s] = copy_near (self->least + span->i0 - self->i0, (int) count_squares (span),
                               squared);
      squared += count_squares (span);
    }
}

/* Likewise from the bottom up, and each row along. The arrays are given by their ends. */
static void
measure_up (Row    *self,
            guint   n_spans,
            gint16 *near,
            int    *squared,
            int    *farthest)
{
  const PpSpan *full = self->full;

  for (guint end = n_spans, from; end > 0; end = from)
    {
      if (self->end > self->from && full[self->from].j != full[end - 1].j + 1)
        clear_row (self);
      for (from = end; from > 0 && full[from - 1].j == full[end - 1].j; from--)
        {
          guint n = count_squares (&full[from - 1]);

          near -= n;
          squared -= n;
          measure_from_below (near_at (self, &full[from - 1]), (int) n, near);
        }
      turn_to_row (self, from, end, near);
      measure_along (self, squared, farthest);
    }
}

static void
measure_near (const PpSpan *full,
              guint         n_spans,
              guint         n_squares,
              gint16        enough,
              int          *squared,
              int          *farthest)
{
  Grid grid = find_grid (full, n_spans);
  int margin = enough + 2 * LANES;
  gsize width = (gsize) grid.width + 2 * (gsize) margin;
  g_autofree gint16 *near = g_new (gint16, n_squares);
  g_autofree gint16 *rows = g_new0 (gint16, 3 * width); /* all in one */
  Row row = { .full = full, .i0 = grid.i0 - margin, .enough = enough, .near = rows,
              .squares = rows + width, .least = rows + 2 * width };

  measure_down (&row, n_spans, near);
  measure_up (&row, n_spans, near + n_squares, squared + n_squares, farthest);
}

void
pp_distance_squared (const PpSpan *full,
                     guint         n_spans,
                     int           enough,
                     int          *squared,
                     int          *farthest)
{
  guint n_squares = 0;

  for (guint s = 0; s < n_spans; s++)
    n_squares += count_squares (&full[s]);
  if (n_squares == 0)
    return;
  if (enough <= NEAR)
    measure_near (full, n_spans, n_squares, (gint16) enough, squared, farthest);
  else
    measure_far (full, n_spans, squared, farthest);
}
