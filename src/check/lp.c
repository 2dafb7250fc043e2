/* lp.c: the lowest plane that clears a set of points.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Seidel's incremental linear programme in a fixed order: keep the optimum over a small working
 * set, look over all points for the one that breaks it most, and solve anew on that point's
 * plane, where the new optimum must lie: there each earlier point leaves a half plane of slopes
 * (a, b), a programme in two unknowns, which is met the same way on a line. One pass over the
 * points a step, and about a dozen steps whatever their number. A pass looks at bounds of whole
 * blocks first, and most blocks are not looked at more closely.
 *
 * The least slope among the optima is found likewise: a nearest point in place of a lowest one.
 */
#include "check/lp.h"

#include "check/loops.h"

#include <math.h>

/* mm: a point broken by less than this is met. Far under PP_LP_OPTIMUM, far over the rounding of
 * coordinates of some thousand mm. */
#define ENOUGH 1e-12

/* As many points matter at most, mostly. */
#define FEW 16

/* px·a + py·b >= limit. */
typedef struct
{
  double px;
  double py;
  double limit;
} HalfPlane;

typedef struct
{
  double a;
  double b;
} Slope;

static const HalfPlane bounds[] = {
  { 1, 0, -PP_LP_MAX_SLOPE },
  { -1, 0, -PP_LP_MAX_SLOPE },
  { 0, 1, -PP_LP_MAX_SLOPE },
  { 0, -1, -PP_LP_MAX_SLOPE },
};

/* A line of slopes: origin + t·(da, db), and the part of it that is still allowed. */
typedef struct
{
  Slope  origin;
  double da;
  double db;
  double least;
  double greatest;
} Line;

static Line
line_of (const HalfPlane *plane)
{
  double squared = plane->px * plane->px + plane->py * plane->py;
  double length = sqrt (squared);

  return (Line) {
    .origin = { plane->px * plane->limit / squared, plane->py * plane->limit / squared },
    .da = -plane->py / length,
    .db = plane->px / length,
    .least = -INFINITY,
    .greatest = INFINITY,
  };
}

static void
clip_line (Line            *line,
           const HalfPlane *plane)
{
  double along = plane->px * line->da + plane->py * line->db;
  double at_origin = plane->limit - plane->px * line->origin.a - plane->py * line->origin.b;

  if (along > 0)
    line->least = MAX (line->least, at_origin / along);
  else if (along < 0)
    line->greatest = MIN (line->greatest, at_origin / along);
}

static Slope
point_on (const Line *line,
          double      t)
{
  /* What should be one point may come out crossed by a rounding: then its middle. */
  t = line->least > line->greatest ? (line->least + line->greatest) / 2
                                   : CLAMP (t, line->least, line->greatest);
  return (Slope) { line->origin.a + t * line->da, line->origin.b + t * line->db };
}

/* The slopes on the border of `plane` that all others and the bounds leave. */
static Line
clipped_line (const HalfPlane *plane,
              const HalfPlane *others,
              guint            n_others)
{
  Line line = line_of (plane);

  for (guint i = 0; i < G_N_ELEMENTS (bounds); i++)
    clip_line (&line, &bounds[i]);
  for (guint i = 0; i < n_others; i++)
    clip_line (&line, &others[i]);
  return line;
}

static double
excess (const HalfPlane *plane,
        Slope            s)
{
  return plane->limit - plane->px * s.a - plane->py * s.b;
}

/* Minimises ca·a + cb·b under the half planes and the bounds. */
static Slope
lowest_slope (const HalfPlane *planes,
              guint            n,
              double           ca,
              double           cb)
{
  Slope s = { ca > 0 ? -PP_LP_MAX_SLOPE : PP_LP_MAX_SLOPE,
              cb > 0 ? -PP_LP_MAX_SLOPE : PP_LP_MAX_SLOPE };

  for (guint i = 0; i < n; i++)
    {
      gboolean has_border = planes[i].px != 0 || planes[i].py != 0;

      if (has_border && excess (&planes[i], s) > 0)
        {
          Line line = clipped_line (&planes[i], planes, i);
          double falls = ca * line.da + cb * line.db;

          s = point_on (&line, falls > 0 ? -INFINITY : falls < 0 ? INFINITY : 0);
        }
    }
  return s;
}

/* As many points of a row, at most, are looked at together, or not at all. */
#define BLOCK 48

/* One that was looked at by itself. */
typedef struct
{
  guint  k; /* which of all */
  double x;
  double y;
  double h;
} Point;

typedef struct
{
  PpLoopBlocks blocks;
  double      *bounds; /* of each: no point of it stands higher */
  guint        passes; /* over all of them, so far */
} Points;

static guint
count_blocks (const PpLpRow *rows,
              guint          n_rows)
{
  guint n = 0;

  for (guint r = 0; r < n_rows; r++)
    n += (rows[r].n + BLOCK - 1) / BLOCK;
  return n;
}

static void
points_alloc (Points *self,
              guint   n)
{
  double *columns = g_new (double, 5 * (gsize) n); /* all in one, which `bounds` owns */

  self->bounds = columns;
  self->blocks.first = g_new (guint, n + 1);
  self->blocks.x = columns + n;
  self->blocks.last = columns + 2 * n;
  self->blocks.y = columns + 3 * n;
  self->blocks.top = columns + 4 * n;
}

static void
points_clear (Points *self)
{
  g_free (self->bounds);
  g_free (self->blocks.first);
}

/* Parts a row into blocks of like length. */
static void
add_row (PpLoopBlocks  *blocks,
         const PpLpRow *row)
{
  guint n = (row->n + BLOCK - 1) / BLOCK;

  for (guint i = 0; i < n; i++)
    {
      guint b = blocks->n++, start = i * row->n / n, end = (i + 1) * row->n / n;

      blocks->first[b + 1] = blocks->first[b] + end - start;
      blocks->x[b] = pp_loop_column (row->x, start);
      blocks->last[b] = end - start - 1;
      blocks->y[b] = row->y;
    }
}

static void
points_init (Points        *self,
             const PpLpRow *rows,
             guint          n_rows,
             const double  *h)
{
  *self = (Points) { .blocks.h = h };
  points_alloc (self, count_blocks (rows, n_rows));
  self->blocks.first[0] = 0;
  for (guint r = 0; r < n_rows; r++)
    add_row (&self->blocks, &rows[r]);
  pp_loop_find_tops (&self->blocks);
}

/* Gives the first of those that may reach highest. */
static guint
bound_blocks (Points *self,
              Slope   s)
{
  double greatest = pp_loop_bounds (&self->blocks, s.a, s.b, self->bounds);
  guint best = 0;

  while (self->bounds[best] < greatest)
    best++;
  return best;
}

/* The first point of a block that has its greatest h - a·x - b·y. */
static Point
find_highest (const PpLoopBlocks *blocks,
              guint               b,
              Slope               s,
              double              greatest)
{
  const double *h = blocks->h + blocks->first[b];
  PpLoopPlane plane = pp_loop_plane_of_block (blocks, b, s.a, s.b);
  guint i = 0;

  while (i < blocks->last[b] && h[i] - pp_loop_plane_at (&plane, (int) i) < greatest)
    i++;
  return (Point) { blocks->first[b] + i, pp_loop_column (blocks->x[b], i), blocks->y[b], h[i] };
}

/* The greatest h - a·x - b·y, and the first point that has it. Blocks that reach no higher than the
 * most promising one are passed over. */
static double
highest (Points *self,
         Slope   s,
         Point  *which)
{
  const PpLoopBlocks *blocks = &self->blocks;
  double least = pp_loop_highest_of (blocks, bound_blocks (self, s), s.a, s.b);
  guint b = 0;
  double greatest = pp_loop_highest (blocks, s.a, s.b, self->bounds, least, &b);

  self->passes++;
  *which = find_highest (blocks, b, s, greatest);
  return greatest;
}

/* The working set as seen on the plane of a point: the slopes at which each earlier point is not
 * above that plane. */
static Slope
solve_on_plane (GArray      *working,
                const Point *point)
{
  g_autofree HalfPlane *planes = g_new (HalfPlane, working->len + 1);

  for (guint i = 0; i < working->len; i++)
    {
      const Point *other = &g_array_index (working, Point, i);

      planes[i] = (HalfPlane) { other->x - point->x, other->y - point->y, other->h - point->h };
    }
  return lowest_slope (planes, working->len, -point->x, -point->y);
}

static gboolean
is_working (GArray      *working,
            const Point *point)
{
  for (guint i = 0; i < working->len; i++)
    if (g_array_index (working, Point, i).k == point->k)
      return TRUE;
  return FALSE;
}

/* `working` gets the points that were met on the way. */
static double
find_least_c (Points *points,
              GArray *working)
{
  Slope s = { 0, 0 };
  double c = -INFINITY;
  double least_top = INFINITY;

  for (;;)
    {
      Point point;
      double top = highest (points, s, &point);

      least_top = MIN (least_top, top);
      if (top <= c + ENOUGH || is_working (working, &point))
        return least_top;
      s = solve_on_plane (working, &point);
      c = point.h - s.a * point.x - s.b * point.y;
      g_array_append_val (working, point);
    }
}

/* The slope nearest to level among those that the planes so far and one more leave. */
static Slope
move_to (GArray   *planes,
         HalfPlane plane)
{
  Line line = clipped_line (&plane, (const HalfPlane *) planes->data, planes->len);

  g_array_append_val (planes, plane);
  return point_on (&line, 0);
}

static HalfPlane
half_plane_of (const Point *point,
               double       c)
{
  return (HalfPlane) { point->x, point->y, point->h - c };
}

/* The slope nearest to level at which no point stands more than c above its plane, and the highest
 * there. Those that mattered for c, `working`, are most of those that matter here. */
static Slope
find_least_slope (Points *points,
                  GArray *working,
                  double  c,
                  double *top)
{
  g_autoptr (GArray) planes = g_array_sized_new (FALSE, FALSE, sizeof (HalfPlane), FEW);
  g_autoptr (GArray) met = g_array_sized_new (FALSE, FALSE, sizeof (Point), FEW);
  Slope s = { 0, 0 };

  for (guint i = 0; i < working->len; i++)
    {
      Point point = g_array_index (working, Point, i);
      HalfPlane plane = half_plane_of (&point, c);

      if (excess (&plane, s) > ENOUGH)
        {
          s = move_to (planes, plane);
          g_array_append_val (met, point);
        }
    }
  for (;;)
    {
      Point point;

      *top = highest (points, s, &point);
      if (*top <= c + ENOUGH || is_working (met, &point))
        return s;
      s = move_to (planes, half_plane_of (&point, c));
      g_array_append_val (met, point);
    }
}

PpPlane
pp_lp_lowest_plane (const PpLpRow *rows,
                    guint          n_rows,
                    const double  *h,
                    guint         *passes)
{
  g_autoptr (GArray) working = g_array_sized_new (FALSE, FALSE, sizeof (Point), FEW);
  Points points;
  double least, top;
  Slope s;

  g_return_val_if_fail (count_blocks (rows, n_rows) > 0, ((PpPlane) { 0, 0, 0 }));
  points_init (&points, rows, n_rows, h);
  least = find_least_c (&points, working);
  s = find_least_slope (&points, working, least + PP_LP_OPTIMUM, &top);
  points_clear (&points);
  if (passes != NULL)
    *passes = points.passes;
  return (PpPlane) { s.a, s.b, top };
}
