/* distance.c: how far each full square of a grid is from the nearest empty one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two passes in whole numbers, so that nothing is rounded and equal distances are equal. Down and
 * up each column: the distance within the column. Along each row: every square u of the row
 * offers the parabola (x - u)² + (its column's distance)²; the lower envelope of all is kept on a
 * stack, of which each x then reads its value. Linear in the number of squares.
 */
#include "check/distance.h"

static void
measure_columns (const gboolean *full,
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

int *
pp_distance_squared (const gboolean *full,
                     int             width,
                     int             height)
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
