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

/* Distances within the column, none more than `enough`. */
static void
measure_columns_near (const guint8 *full,
                      int           width,
                      int           height,
                      gint16        enough,
                      gint16       *near)
{
  for (int at = width; at < width * height; at++)
    near[at] = (gint16) (full[at] * MIN (near[at - width] + 1, enough));
  for (int at = width * (height - 1) - 1; at >= 0; at--)
    near[at] = (gint16) MIN (near[at], near[at + width] + 1);
}

/* `padded` is a row of squares with `enough` more at either end. */
static void
measure_row_near (const gint16 *padded,
                  int           width,
                  gint16        enough,
                  gint16       *least)
{
  gint16 greatest = 0;

  for (int x = 0; x < width; x++)
    {
      least[x] = padded[x + enough];
      greatest = MAX (greatest, least[x]);
    }
  for (gint16 d = 1; d < enough && d * d < greatest; d++)
    {
      const gint16 *left = padded + enough - d, *right = padded + enough + d;

      for (int x = 0; x < width; x++)
        least[x] = MIN (least[x], (gint16) (MIN (left[x], right[x]) + d * d));
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
  measure_columns_near (full, width, height, enough, near);
  for (int row = 0; row < height; row++)
    {
      for (int x = 0; x < width; x++)
        padded[enough + x] = (gint16) (near[row * width + x] * near[row * width + x]);
      measure_row_near (padded, width, enough, least);
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
