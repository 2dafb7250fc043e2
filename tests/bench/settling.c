/* settling.c: settling one piece, against libraries for linear programmes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The programme of a cupped piece over six domes, in three unknowns, with 10 000 and more
 * constraints. GLPK and CLP get it as it is and as its dual, which suits them better, and count
 * with the making of their model. All must agree on the least height.
 */
#include "meadow.h"

#include "check/lp.h"

#include <coin/Clp_C_Interface.h>
#include <glpk.h>
#include <math.h>

#define RUNS 9
#define OUR_RUNS 201
#define AGREE 1e-7 /* mm; theirs are met within 1e-7 or so */

typedef struct
{
  guint   n;
  double *x;
  double *y;
  double *h;
} Points;

typedef double (*Solve) (const Points *points);

static double
dome (double x,
      double y,
      guint  k)
{
  double dx = x - 22 * cos (k * G_PI / 3 + 0.2), dy = y - 22 * sin (k * G_PI / 3 + 0.2);

  return fmax (0, 5.0 + 0.7 * k - (dx * dx + dy * dy) / 30);
}

/* A square of half-millimetre cells, `side` of them. */
static Points
points_new (guint side)
{
  guint n = side * side;
  Points self = { n, g_new (double, n), g_new (double, n), g_new (double, n) };

  for (guint k = 0; k < n; k++)
    {
      double x = (k % side - side / 2.0 + 0.5) / 2, y = (k / side - side / 2.0 + 0.5) / 2;
      double over = 0;

      for (guint d = 0; d < 6; d++)
        over = fmax (over, dome (x, y, d));
      self.x[k] = x;
      self.y[k] = y;
      self.h[k] = over - 9 * pow (fmax (hypot (x, y) - 9, 0) / 30, 2);
    }
  return self;
}

static void
points_clear (Points *self)
{
  g_free (self->x);
  g_free (self->y);
  g_free (self->h);
}

static PpPlane
find_lowest (const Points *points,
             guint        *passes)
{
  guint side = (guint) round (sqrt (points->n));
  g_autofree PpLpRow *rows = g_new (PpLpRow, side);

  for (guint r = 0; r < side; r++)
    rows[r] = (PpLpRow) { points->x[r * side], points->y[r * side], side };
  return pp_lp_lowest_plane (rows, side, points->h, passes);
}

static double
solve_ours (const Points *points)
{
  return find_lowest (points, NULL).c;
}

/* One look at every constraint, as plain as it can be written and as fast as it can be had. */
__attribute__ ((optimize ("O3,fast-math"))) static double
pass_once (const Points *points)
{
  double greatest = -INFINITY;

  for (guint i = 0; i < points->n; i++)
    {
      double over = points->h[i] - 0.01 * points->x[i] - 0.02 * points->y[i];

      greatest = over > greatest ? over : greatest;
    }
  return greatest;
}

static glp_prob *
glpk_new (void)
{
  glp_term_out (GLP_OFF);
  return glp_create_prob ();
}

/* By the method that is far the faster for the shape of it. */
static double
glpk_solve (glp_prob *problem,
            int       method)
{
  glp_smcp control;
  double result;

  glp_init_smcp (&control);
  control.msg_lev = GLP_MSG_OFF;
  control.meth = method;
  g_assert_cmpint (glp_simplex (problem, &control), ==, 0);
  result = glp_get_obj_val (problem);
  glp_delete_prob (problem);
  return result;
}

/* Columns c, a, b; a row a point. */
static double
solve_glpk (const Points *points)
{
  glp_prob *problem = glpk_new ();
  int columns[] = { 0, 1, 2, 3 };

  glp_add_cols (problem, 3);
  glp_set_obj_coef (problem, 1, 1);
  glp_set_col_bnds (problem, 1, GLP_FR, 0, 0);
  glp_set_col_bnds (problem, 2, GLP_DB, -PP_LP_MAX_SLOPE, PP_LP_MAX_SLOPE);
  glp_set_col_bnds (problem, 3, GLP_DB, -PP_LP_MAX_SLOPE, PP_LP_MAX_SLOPE);
  glp_add_rows (problem, (int) points->n);
  for (guint i = 0; i < points->n; i++)
    {
      double values[] = { 0, 1, points->x[i], points->y[i] };

      glp_set_mat_row (problem, (int) i + 1, 3, columns, values);
      glp_set_row_bnds (problem, (int) i + 1, GLP_LO, points->h[i], 0);
    }
  return glpk_solve (problem, GLP_DUALP);
}

/* maximise h·p - |a's| - |b's|, the p summing to 1: a column a point, and four for the bounds. */
static double
solve_glpk_dual (const Points *points)
{
  glp_prob *problem = glpk_new ();
  int rows[] = { 0, 1, 2, 3 };
  const double bounds[4][2] = { { 1, 0 }, { -1, 0 }, { 0, 1 }, { 0, -1 } };

  glp_set_obj_dir (problem, GLP_MAX);
  glp_add_rows (problem, 3);
  glp_set_row_bnds (problem, 1, GLP_FX, 1, 1);
  glp_set_row_bnds (problem, 2, GLP_FX, 0, 0);
  glp_set_row_bnds (problem, 3, GLP_FX, 0, 0);
  glp_add_cols (problem, (int) points->n + 4);
  for (guint i = 0; i < points->n + 4; i++)
    {
      gboolean is_bound = i >= points->n;
      const double *bound = bounds[is_bound ? i - points->n : 0];
      double values[] = { 0, is_bound ? 0 : 1, is_bound ? bound[0] : points->x[i],
                          is_bound ? bound[1] : points->y[i] };

      glp_set_mat_col (problem, (int) i + 1, 3, rows, values);
      glp_set_col_bnds (problem, (int) i + 1, GLP_LO, 0, 0);
      glp_set_obj_coef (problem, (int) i + 1, is_bound ? -PP_LP_MAX_SLOPE : points->h[i]);
    }
  return glpk_solve (problem, GLP_PRIMAL);
}

static double
clp_solve (Clp_Simplex *model)
{
  double result;

  g_assert_cmpint (Clp_dual (model, 0), ==, 0);
  result = Clp_objectiveValue (model);
  Clp_deleteModel (model);
  return result;
}

static double
solve_clp (const Points *points)
{
  guint n = points->n;
  const double lower[] = { -DBL_MAX, -PP_LP_MAX_SLOPE, -PP_LP_MAX_SLOPE };
  const double upper[] = { DBL_MAX, PP_LP_MAX_SLOPE, PP_LP_MAX_SLOPE };
  const double objective[] = { 1, 0, 0 };
  g_autofree double *values = g_new (double, 3 * n);
  g_autofree int *rows = g_new (int, 3 * n);
  g_autofree double *no_upper = g_new (double, n);
  const CoinBigIndex starts[] = { 0, (int) n, 2 * (int) n, 3 * (int) n };
  Clp_Simplex *model = Clp_newModel ();

  Clp_setLogLevel (model, 0);
  for (guint i = 0; i < n; i++)
    {
      values[i] = 1;
      values[n + i] = points->x[i];
      values[2 * n + i] = points->y[i];
      rows[i] = rows[n + i] = rows[2 * n + i] = (int) i;
      no_upper[i] = DBL_MAX;
    }
  Clp_loadProblem (model, 3, (int) n, starts, rows, values, lower, upper, objective, points->h,
                   no_upper);
  return clp_solve (model);
}

static double
solve_clp_dual (const Points *points)
{
  guint n = points->n + 4;
  const double sums[] = { 1, 0, 0 };
  const double bounds[4][2] = { { 1, 0 }, { -1, 0 }, { 0, 1 }, { 0, -1 } };
  g_autofree double *values = g_new (double, 3 * n);
  g_autofree int *rows = g_new (int, 3 * n);
  g_autofree CoinBigIndex *starts = g_new (CoinBigIndex, n + 1);
  g_autofree double *objective = g_new (double, n);
  Clp_Simplex *model = Clp_newModel ();

  Clp_setLogLevel (model, 0);
  for (guint i = 0; i < n; i++)
    {
      gboolean is_bound = i >= points->n;

      starts[i] = 3 * (int) i;
      for (int row = 0; row < 3; row++)
        rows[3 * i + (guint) row] = row;
      values[3 * i] = is_bound ? 0 : 1;
      values[3 * i + 1] = is_bound ? bounds[i - points->n][0] : points->x[i];
      values[3 * i + 2] = is_bound ? bounds[i - points->n][1] : points->y[i];
      objective[i] = is_bound ? PP_LP_MAX_SLOPE : -points->h[i];
    }
  starts[n] = 3 * (int) n;
  Clp_loadProblem (model, (int) n, 3, starts, rows, values, NULL, NULL, objective, sums, sums);
  g_assert_cmpint (Clp_primal (model, 0), ==, 0);
  return -clp_solve (model);
}

/* ms, and what it found. */
static double
time_solve (Solve         solve,
            const Points *points,
            guint         runs,
            double       *found)
{
  double times[OUR_RUNS];

  for (guint k = 0; k < runs; k++)
    {
      double start = bench_now ();

      *found = solve (points);
      times[k] = bench_now () - start;
    }
  return bench_median (times, runs);
}

static void
measure (guint side)
{
  const struct { const char *name; Solve solve; } peers[] = {
    { "GLPK, a row a point", solve_glpk },
    { "GLPK, its dual", solve_glpk_dual },
    { "CLP, a row a point", solve_clp },
    { "CLP, its dual", solve_clp_dual },
  };
  Points points = points_new (side);
  guint passes;
  double found, least, ours = time_solve (solve_ours, &points, OUR_RUNS, &least);
  double pass = time_solve (pass_once, &points, OUR_RUNS, &found);
  double fastest = INFINITY;

  find_lowest (&points, &passes);
  g_print ("\n%u constraints, %u passes\n", points.n, passes);
  bench_say ("settling", ours * 1e3, "us", "");
  bench_say ("one pass over the data", pass * 1e3, "us", "");
  bench_say ("settling / (passes x one pass)", ours / (passes * pass), "", "below 3");
  for (guint k = 0; k < G_N_ELEMENTS (peers); k++)
    {
      double time = time_solve (peers[k].solve, &points, RUNS, &found);

      g_assert_cmpfloat_with_epsilon (found, least, AGREE);
      bench_say (peers[k].name, time * 1e3, "us", "");
      fastest = MIN (fastest, time);
    }
  bench_say ("the fastest of these / settling", fastest / ours, "", "above 20");
  points_clear (&points);
}

int
main (void)
{
  measure (100);
  measure (142);
  measure (200);
  return 0;
}
