/* test-lp.c: the lowest plane over a set of points, by hand and by trying many.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/lp.h"

#include <math.h>

typedef struct
{
  const char *name;
  guint       n;
  double      x[6];
  double      y[6];
  double      h[6];
  PpPlane     plane;
} Case;

/* Derived by hand. The base rests where c is least; on ties it lies as level as it can. */
static const Case cases[] = {
  /* Level ground about the centre: c = h, and no tilt is called for. */
  { "level", 4, { -1, 1, 1, -1 }, { -1, -1, 1, 1 }, { 2, 2, 2, 2 }, { 0, 0, 2 } },
  /* One post to the right of the centre: it tips over it as far as slopes may go. */
  { "one-post", 1, { 2 }, { 0 }, { 5 }, { 1, 0, 3 } },
  /* A post under the centre of mass: c is its height whatever the slope, so it stays level. */
  { "post-under-centre", 1, { 0 }, { 0 }, { 5 }, { 0, 0, 5 } },
  /* A high post on the left and ground on the right: the plane through both. */
  { "two-posts", 2, { -2, 2 }, { 0, 0 }, { 4, 0 }, { -1, 0, 2 } },
  /* Three posts about the centre fix all three unknowns: h = 3 + x/2 - y/4. */
  { "tripod", 3, { -2, 2, 0 }, { -2, -2, 4 }, { 2.5, 4.5, 2 }, { 0.5, -0.25, 3 } },
  /* The same with ground deep below it: no part of the answer. */
  { "tripod-over-ground", 5, { -2, 2, 0, 5, -5 }, { -2, -2, 4, 5, -5 }, { 2.5, 4.5, 2, -9, -9 },
    { 0.5, -0.25, 3 } },
  /* Two feet in line with the centre leave the tilt across them free: level. */
  { "line-through-centre", 2, { -3, 3 }, { 0, 0 }, { 1, 1 }, { 0, 0, 1 } },
  /* The same with a low step on one side: the tilt across stays at nought, for the step does not
   * force it. */
  { "line-and-step", 3, { -3, 3, 0 }, { 0, 0, 4 }, { 1, 1, 0.5 }, { 0, 0, 1 } },
  /* With a high step it must tilt just so far: 1 + 4b >= 2. */
  { "line-and-high-step", 3, { -3, 3, 0 }, { 0, 0, 4 }, { 1, 1, 2 }, { 0, 0.25, 1 } },
};

/* Of points anywhere: each is a row by itself. */
static PpPlane
find_lowest (const double *x,
             const double *y,
             const double *h,
             guint         n)
{
  g_autofree PpLpRow *rows = g_new (PpLpRow, n);

  for (guint i = 0; i < n; i++)
    rows[i] = (PpLpRow) { x[i], y[i], 1 };
  return pp_lp_lowest_plane (rows, n, h, NULL);
}

static void
test_case (gconstpointer data)
{
  const Case *row = data;
  PpPlane plane = find_lowest (row->x, row->y, row->h, row->n);

  g_assert_cmpfloat_with_epsilon (plane.a, row->plane.a, 1e-8);
  g_assert_cmpfloat_with_epsilon (plane.b, row->plane.b, 1e-8);
  g_assert_cmpfloat_with_epsilon (plane.c, row->plane.c, 1e-8);
}

static double
lowest_c (const double *x,
          const double *y,
          const double *h,
          guint         n,
          double        a,
          double        b)
{
  double c = -INFINITY;

  for (guint i = 0; i < n; i++)
    c = fmax (c, h[i] - a * x[i] - b * y[i]);
  return c;
}

#define MANY 3000

/* No plane of a fine fan of slopes lies lower; it clears every point; it touches one. */
static void
test_brute (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);

  for (guint k = 0; k < 60; k++)
    {
      double x[MANY], y[MANY], h[MANY];
      guint n = k < 30 ? 3 + k : MANY;
      double bend = g_rand_double_range (rand, -0.02, 0.02);
      PpPlane plane;

      for (guint i = 0; i < n; i++)
        {
          x[i] = 0.5 * g_rand_int_range (rand, -80, 60);
          y[i] = 0.5 * g_rand_int_range (rand, -60, 90);
          h[i] = bend * x[i] * y[i] + g_rand_double (rand) * (k % 3);
        }
      plane = find_lowest (x, y, h, n);
      g_assert_cmpfloat_with_epsilon (plane.c, lowest_c (x, y, h, n, plane.a, plane.b), 1e-12);
      for (int i = -40; i <= 40; i++)
        for (int j = -40; j <= 40; j++)
          {
            double c = lowest_c (x, y, h, MIN (n, 400), i / 40.0, j / 40.0);

            if (n <= 400)
              g_assert_cmpfloat (plane.c, <=, c + 1e-9 + 1e-12);
          }
    }
}

/* A surface of thousands of points, all but three of them on one plane below: the three decide. */
static void
test_needles (void)
{
  double x[MANY], y[MANY], h[MANY];
  PpPlane plane;

  for (guint i = 0; i < MANY; i++)
    {
      x[i] = (double) (i % 60) - 30;
      y[i] = i / 60 - 25.0;
      h[i] = 0.1 * x[i] - 0.2 * y[i] - 1;
    }
  h[0] += 1;    /* (-30, -25) */
  h[59] += 1;   /* (29, -25) */
  h[2940] += 1; /* (-30, 24) */
  plane = find_lowest (x, y, h, MANY);
  /* About the centre the lowest plane goes through the two ends of the long diagonal; across it
   * the rest of the ground leaves it free, so it lies as level as the third lets it. */
  g_assert_cmpfloat_with_epsilon (29 * plane.a - 25 * plane.b + plane.c, h[59], 2e-9);
  g_assert_cmpfloat_with_epsilon (-30 * plane.a + 24 * plane.b + plane.c, h[2940], 2e-9);
}

#define SAME 1e-12 /* rows round by start and step, a point by its own product */

/* Rows of every length, whole, and each of their points by itself. */
static void
test_rows (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (6);

  for (guint k = 0; k < 60; k++)
    {
      PpLpRow rows[100];
      double x[MANY * 4], y[MANY * 4], h[MANY * 4];
      guint n = 0, n_rows = (guint) g_rand_int_range (rand, 1, G_N_ELEMENTS (rows));
      PpPlane plane, other;

      for (guint r = 0; r < n_rows; r++)
        {
          rows[r] = (PpLpRow) { g_rand_int_range (rand, -90, 40) * PP_CELL + 0.125,
                                r * PP_CELL - 20.25,
                                (guint) g_rand_int_range (rand, 1, k % 2 == 0 ? 120 : 4) };
          for (guint i = 0; i < rows[r].n; i++, n++)
            {
              x[n] = rows[r].x + i * PP_CELL;
              y[n] = rows[r].y;
              h[n] = 0.01 * x[n] * y[n] + g_rand_double (rand) * (k % 3);
            }
        }
      plane = pp_lp_lowest_plane (rows, n_rows, h, NULL);
      other = find_lowest (x, y, h, n);
      g_assert_cmpfloat_with_epsilon (plane.a, other.a, SAME);
      g_assert_cmpfloat_with_epsilon (plane.b, other.b, SAME);
      g_assert_cmpfloat_with_epsilon (plane.c, other.c, SAME);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/lp/", cases[i].name, NULL);

      g_test_add_data_func (path, &cases[i], test_case);
    }
  g_test_add_func ("/lp/brute", test_brute);
  g_test_add_func ("/lp/needles", test_needles);
  g_test_add_func ("/lp/rows", test_rows);
  return g_test_run ();
}
