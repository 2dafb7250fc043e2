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
    line->least = fmax (line->least, at_origin / along);
  else if (along < 0)
    line->greatest = fmin (line->greatest, at_origin / along);
}

static Slope
point_on (const Line *line,
          double      t)
{
  /* What should be one point may come out crossed by a rounding: then its middle. */
  t = line->least > line->greatest ? (line->least + line->greatest) / 2
                                   : fmin (fmax (t, line->least), line->greatest);
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

/* Points of a block are looked at together, or not at all. */
#define BLOCK 32

typedef struct
{
  const double *x;
  const double *y;
  const double *h;
  guint         n;
  guint         n_blocks;
  PpLoopBlocks  blocks;
  double       *bounds; /* of each: no point of it stands higher */
  guint8       *may;    /* whether it may reach as high as another is known to */
  guint         passes; /* over all of them, so far */
} Points;

static guint
count_block (const Points *self,
             guint         b)
{
  return MIN (self->n - b * BLOCK, BLOCK);
}

static void
find_blocks (Points *self)
{
  guint n = (self->n + BLOCK - 1) / BLOCK;
  double *columns = g_new (double, 6 * (gsize) n); /* all in one, which `bounds` owns */

  self->n_blocks = n;
  self->bounds = columns;
  self->may = g_new (guint8, n);
  self->blocks = (PpLoopBlocks) { columns + n, columns + 2 * n, columns + 3 * n, columns + 4 * n,
                                  columns + 5 * n };
  for (guint b = 0; b < n; b++)
    {
      guint k = b * BLOCK;

      pp_loop_bound (self->x + k, self->y + k, self->h + k, count_block (self, b), &self->blocks,
                     b);
    }
}

/* The greatest h - a·x - b·y of a block. */
static double
highest_of (const Points *points,
            guint         b,
            Slope         s)
{
  guint k = b * BLOCK;

  return pp_loop_highest (points->x + k, points->y + k, points->h + k, count_block (points, b),
                          s.a, s.b);
}

/* Gives the first of those that may reach highest. */
static guint
bound_blocks (Points *points,
              Slope   s)
{
  double greatest = pp_loop_bounds (&points->blocks, points->n_blocks, s.a, s.b, points->bounds);
  guint best = 0;

  while (points->bounds[best] < greatest)
    best++;
  return best;
}

/* The greatest h - a·x - b·y, and the first point that has it. Blocks that reach no higher than the
 * most promising one are passed over. */
static double
highest (Points *points,
         Slope   s,
         guint  *which)
{
  double least = highest_of (points, bound_blocks (points, s), s), greatest = -INFINITY;
  guint k = 0, first, end = 0;

  points->passes++;
  pp_loop_no_less (points->bounds, points->n_blocks, least, points->may);
  while (pp_loop_find_stretch (points->may, points->n_blocks, &first, &end))
    for (guint b = first; b < end; b++)
      {
        double top = highest_of (points, b, s);

        if (top > greatest)
          {
            greatest = top;
            k = b * BLOCK;
          }
      }
  while (k + 1 < points->n && points->h[k] - s.a * points->x[k] - s.b * points->y[k] < greatest)
    k++;
  *which = k;
  return greatest;
}

/* The working set as seen on the plane of point k: the slopes at which each earlier point is not
 * above that plane. */
static Slope
solve_on_plane (const Points *points,
                GArray       *working,
                guint         k)
{
  g_autofree HalfPlane *planes = g_new (HalfPlane, working->len + 1);

  for (guint i = 0; i < working->len; i++)
    {
      guint j = g_array_index (working, guint, i);

      planes[i] = (HalfPlane) { points->x[j] - points->x[k], points->y[j] - points->y[k],
                                points->h[j] - points->h[k] };
    }
  return lowest_slope (planes, working->len, -points->x[k], -points->y[k]);
}

static gboolean
is_working (GArray *working,
            guint   k)
{
  for (guint i = 0; i < working->len; i++)
    if (g_array_index (working, guint, i) == k)
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
      guint k = 0;
      double top = highest (points, s, &k);

      least_top = fmin (least_top, top);
      if (top <= c + ENOUGH || is_working (working, k))
        return least_top;
      s = solve_on_plane (points, working, k);
      c = points->h[k] - s.a * points->x[k] - s.b * points->y[k];
      g_array_append_val (working, k);
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
half_plane_of (const Points *points,
               guint         k,
               double        c)
{
  return (HalfPlane) { points->x[k], points->y[k], points->h[k] - c };
}

/* The slope nearest to level at which no point stands more than c above its plane, and the highest
 * there. Those that mattered for c, `working`, are most of those that matter here. */
static Slope
find_least_slope (Points *points,
                  GArray *working,
                  double  c,
                  double *top)
{
  g_autoptr (GArray) planes = g_array_new (FALSE, FALSE, sizeof (HalfPlane));
  g_autoptr (GArray) met = g_array_new (FALSE, FALSE, sizeof (guint));
  Slope s = { 0, 0 };

  for (guint i = 0; i < working->len; i++)
    {
      HalfPlane plane = half_plane_of (points, g_array_index (working, guint, i), c);

      if (excess (&plane, s) > ENOUGH)
        {
          s = move_to (planes, plane);
          g_array_append_val (met, g_array_index (working, guint, i));
        }
    }
  for (;;)
    {
      guint k = 0;

      *top = highest (points, s, &k);
      if (*top <= c + ENOUGH || is_working (met, k))
        return s;
      s = move_to (planes, half_plane_of (points, k, c));
      g_array_append_val (met, k);
    }
}

PpPlane
pp_lp_lowest_plane (const double *x,
                    const double *y,
                    const double *h,
                    guint         n,
                    guint        *passes)
{
  Points points = { .x = x, .y = y, .h = h, .n = n };
  g_autoptr (GArray) working = g_array_new (FALSE, FALSE, sizeof (guint));
  double least, top;
  Slope s;

  g_return_val_if_fail (n > 0, ((PpPlane) { 0, 0, 0 }));
  find_blocks (&points);
  least = find_least_c (&points, working);
  s = find_least_slope (&points, working, least + PP_LP_OPTIMUM, &top);
  g_free (points.bounds);
  g_free (points.may);
  if (passes != NULL)
    *passes = points.passes;
  return (PpPlane) { s.a, s.b, top };
}
