/* test-cells.c: the anchored grid, its tie rule, and spans against cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "rings.h"
#include "shape/cells.h"

/* Counted by hand: cells have their centres at 0.25, 0.75, 1.25, ... mm. */
typedef struct
{
  const char *name;
  const char *outline;
  guint       n_cells;
  PpCellBox   box;
} Count;

static const Count counts[] = {
  { "one-mm", "0 0, 1 0, 1 1, 0 1", 4, { 0, 0, 2, 2 } },
  /* Borders through centres: left and upper ones count, right and lower ones do not. */
  { "on-centres", "0.25 0.25, 1.25 0.25, 1.25 1.25, 0.25 1.25", 4, { 0, 0, 2, 2 } },
  { "just-inside", "0.2500001 0.2500001, 1.25 0.25, 1.25 1.25, 0.25 1.25", 4, { 0, 0, 2, 2 } },
  { "negative", "-1 -1, 0 -1, 0 0, -1 0", 4, { -2, -2, 0, 0 } },
  { "other-way-round", "0 0, 0 1, 1 1, 1 0", 4, { 0, 0, 2, 2 } },
  /* Centres with x + y < 2, x, y > 0: rows of 3, 2, 1 and the diagonal 0.25 + 1.75 = 2 is a
   * right border. */
  { "triangle", "0 0, 2 0, 0 2", 6, { 0, 0, 3, 3 } },
  { "hole", "0 0, 2 0, 2 2, 0 2; 0.5 0.5, 1.5 0.5, 1.5 1.5, 0.5 1.5", 12, { 0, 0, 4, 4 } },
  { "between-centres", "0.3 0.3, 0.7 0.3, 0.7 0.7, 0.3 0.7", 0, { 0, 0, 0, 0 } },
  { "thin-row", "0 0.2, 3 0.2, 3 0.3, 0 0.3", 6, { 0, 0, 6, 1 } },
};

static void
test_count (gconstpointer data)
{
  const Count *row = data;
  g_autoptr (PpOutline) outline = test_outline (row->outline);
  g_autoptr (PpCells) cells = pp_cells_new (outline);

  g_assert_cmpuint (cells->n_cells, ==, row->n_cells);
  g_assert_cmpmem (&cells->box, sizeof cells->box, &row->box, sizeof row->box);
}

/* Two outlines that share a border share no cell, and leave none out. */
static void
test_partition (void)
{
  g_autoptr (PpOutline) whole = test_outline ("0 0, 10 0, 10 8, 0 8");
  g_autoptr (PpOutline) left = test_outline ("0 0, 4 0, 6.25 3.25, 5.25 5.75, 5 8, 0 8");
  g_autoptr (PpOutline) right = test_outline ("4 0, 10 0, 10 8, 5 8, 5.25 5.75, 6.25 3.25");
  g_autoptr (PpCells) all = pp_cells_new (whole);
  g_autoptr (PpCells) a = pp_cells_new (left);
  g_autoptr (PpCells) b = pp_cells_new (right);

  g_assert_cmpuint (a->n_cells + b->n_cells, ==, all->n_cells);
  for (int i = 0; i < 20; i++)
    for (int j = 0; j < 16; j++)
      g_assert_cmpint (pp_cells_contain (a, i, j) + pp_cells_contain (b, i, j), ==, 1);
}

/* Even-odd by its textbook form: crossings of a ray to the left. */
static gboolean
is_inside (const PpOutline *outline,
           PpPoint          c)
{
  gboolean inside = FALSE;

  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        if ((p[i].y > c.y) != (p[i + 1].y > c.y)
            && c.x > p[i].x + (c.y - p[i].y) / (p[i + 1].y - p[i].y) * (p[i + 1].x - p[i].x))
          inside = !inside;
    }
  return inside;
}

static void
test_brute (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);

  for (guint k = 0; k < 60; k++)
    {
      PpPoint points[30];
      guint n = 3 + k % 28;
      g_autoptr (PpOutline) outline = NULL;
      g_autoptr (PpCells) cells = NULL;
      guint inside = 0;

      for (guint i = 0; i < n; i++)
        {
          double r = g_rand_double_range (rand, 1, 20), t = 2 * G_PI * i / n;

          points[i] = (PpPoint) { 3 + r * cos (t), -4 + r * sin (t) };
        }
      outline = pp_outline_new_ring (points, n);
      cells = pp_cells_new (outline);
      for (int i = -50; i < 60; i++)
        for (int j = -60; j < 50; j++)
          {
            gboolean here = is_inside (outline, (PpPoint) { pp_cell_centre (i), pp_cell_centre (j) });

            inside += here;
            g_assert_cmpint (pp_cells_contain (cells, i, j), ==, here);
          }
      g_assert_cmpuint (cells->n_cells, ==, inside);
    }
}

#define TEETH 2400

/* A comb of so many sides that its rows are cut in several goes, and each many times over. */
static void
test_comb (void)
{
  g_autofree PpPoint *points = g_new (PpPoint, 2 * TEETH + 2);
  g_autoptr (PpOutline) outline = NULL;
  g_autoptr (PpCells) cells = NULL;
  guint n = 0, inside = 0;

  for (guint i = 0; i < TEETH; i++)
    {
      points[n++] = (PpPoint) { 0.25 * i, 30 + (i % 7) };
      points[n++] = (PpPoint) { 0.25 * i + 0.13, 230 - (i % 5) };
    }
  points[n++] = (PpPoint) { 0.25 * TEETH, 300 };
  points[n++] = (PpPoint) { 0, 300 };
  outline = pp_outline_new_ring (points, n);
  cells = pp_cells_new (outline);
  for (int j = 50; j < 610; j += 37)
    for (int i = -2; i < TEETH / 2 + 2; i++)
      {
        gboolean here = is_inside (outline, (PpPoint) { pp_cell_centre (i), pp_cell_centre (j) });

        inside += here;
        g_assert_cmpint (pp_cells_contain (cells, i, j), ==, here);
      }
  g_assert_cmpuint (inside, >, 4 * TEETH);
}

static void
test_meet (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (8);
  guint meeting = 0;

  for (guint k = 0; k < 400; k++)
    {
      g_autoptr (PpOutline) ring = test_outline ("0 0, 9 2, 4 9, 3 3; 4 2, 5 2.5, 4 5");
      g_autoptr (PpCells) a = pp_cells_new (ring);
      g_autoptr (PpCells) b
          = pp_cells_new_disc ((PpPoint) { g_rand_double_range (rand, -3, 12),
                                           g_rand_double_range (rand, -3, 12) },
                               g_rand_double_range (rand, 0.1, 3));
      gboolean meet = FALSE;

      for (int i = -30; i < 40 && !meet; i++)
        for (int j = -30; j < 40 && !meet; j++)
          meet = pp_cells_contain (a, i, j) && pp_cells_contain (b, i, j);
      meeting += meet;
      g_assert_cmpint (pp_cells_meet (a, b), ==, meet);
      g_assert_cmpint (pp_cells_meet (b, a), ==, meet);
    }
  g_assert_cmpuint (meeting, >, 50);
  g_assert_cmpuint (meeting, <, 350);
}

static void
test_disc (void)
{
  PpPoint centre = { 0.25, 0.75 };
  g_autoptr (PpCells) cells = pp_cells_new_disc (centre, 1);
  guint n = 0;

  for (int i = -10; i < 10; i++)
    for (int j = -10; j < 10; j++)
      {
        double x = pp_cell_centre (i) - centre.x, y = pp_cell_centre (j) - centre.y;
        gboolean here = x * x + y * y <= 1;

        n += here;
        g_assert_cmpint (pp_cells_contain (cells, i, j), ==, here);
      }
  g_assert_cmpuint (cells->n_cells, ==, n);
  g_assert_cmpuint (n, ==, 13); /* lattice points within two steps: Gauss's circle, N(2) = 13 */
}

static void
test_cell_at (void)
{
  g_assert_cmpint (pp_cell_at (0.49), ==, 0);
  g_assert_cmpint (pp_cell_at (0.5), ==, 1);
  g_assert_cmpint (pp_cell_at (-0.01), ==, -1);
  for (int i = -5; i < 5; i++)
    g_assert_cmpint (pp_cell_at (pp_cell_centre (i)), ==, i);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    {
      g_autofree char *path = g_strconcat ("/cells/count/", counts[i].name, NULL);

      g_test_add_data_func (path, &counts[i], test_count);
    }
  g_test_add_func ("/cells/partition", test_partition);
  g_test_add_func ("/cells/brute", test_brute);
  g_test_add_func ("/cells/comb", test_comb);
  g_test_add_func ("/cells/meet", test_meet);
  g_test_add_func ("/cells/disc", test_disc);
  g_test_add_func ("/cells/cell-at", test_cell_at);
  return g_test_run ();
}
