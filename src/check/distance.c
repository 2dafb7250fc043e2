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
 * not be looked at: then plain loops over short whole numbers are several times as fast.
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

static int *
measure_far (const guint8 *full,
             int           width,
             int           height)
{
  g_autofree int *in_column = g_new0 (int, (gsize) width * (gsize) height);
  g_autofree int *lowest = g_new (int, width);
  g_autofree int *from = g_new (int, width);
  int *squared = g_new (int, (gsize) width * (gsize) height);

  measure_columns (full, width, height, in_column);
  for (int row = 0; row < height; row++)
    {
      Envelope envelope = { in_column + row * width, lowest, from, -1 };

      measure_row (&envelope, width, squared + row * width);
    }
  return squared;
}

/* Twice its square is a gint16. */
#define NEAR 127

/* Distances within the column, none more than `enough`, of a row from the one above it. */
PP_WIDE static void
measure_from_above (const guint8 *restrict full,
                    const gint16 *restrict above,
                    int                    width,
                    gint16                 enough,
                    gint16       *restrict near)
{
  for (int x = 0; x < width; x++)
    near[x] = (gint16) (full[x] * MIN ((gint16) (above[x] + 1), enough));
}

PP_WIDE static void
measure_from_below (const gint16 *restrict below,
                    int                    width,
                    gint16       *restrict near)
{
  for (int x = 0; x < width; x++)
    near[x] = MIN (near[x], (gint16) (below[x] + 1));
}

/* The squares of a row, and the greatest of them. */
PP_WIDE static gint16
square_row (const gint16 *restrict near,
            int                    width,
            gint16       *restrict squares)
{
  gint16 greatest = 0;

  for (int x = 0; x < width; x++)
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
                  int                    width,
                  gint16                 enough,
                  gint16                 greatest,
                  gint16       *restrict least)
{
  memcpy (least, squares, (gsize) width * sizeof *least);
  for (gint16 d = 1; d < enough && d * d < greatest; d++)
    {
      const gint16 *left = squares - d, *right = squares + d;
      gint16 more = (gint16) (d * d);

      for (int x = 0; x < width; x++)
        {
          gint16 beside = (gint16) (MIN (left[x], right[x]) + more);

          least[x] = MIN (least[x], beside);
        }
    }
}

static int *
measure_near (const guint8 *full,
              int           width,
              int           height,
              gint16        enough)
{
  g_autofree gint16 *near = g_new0 (gint16, (gsize) width * (gsize) height);
  g_autofree gint16 *padded = g_new (gint16, width + 2 * enough);
  g_autofree gint16 *least = g_new (gint16, width);
  int *squared = g_new (int, (gsize) width * (gsize) height);

  for (int x = 0; x < width + 2 * enough; x++)
    padded[x] = (gint16) (enough * enough);
  for (int row = 1; row < height; row++)
    measure_from_above (full + row * width, near + (row - 1) * width, width, enough,
                        near + row * width);
  for (int row = height - 2; row >= 0; row--)
    measure_from_below (near + (row + 1) * width, width, near + row * width);
  for (int row = 0; row < height; row++)
    {
      gint16 greatest = square_row (near + row * width, width, padded + enough);

      measure_row_near (padded + enough, width, enough, greatest, least);
      for (int x = 0; x < width; x++)
        squared[row * width + x] = least[x];
    }
  return squared;
}

int *
pp_distance_squared (const guint8 *full,
                     int           width,
                     int           height,
                     int           enough)
{
  if (enough <= NEAR)
    return measure_near (full, width, height, (gint16) enough);
  return measure_far (full, width, height);
}
