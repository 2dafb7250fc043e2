/* test-bands.c: the nearest of an outline's sides, against asking each of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/bands.h"

#define CORNERS 60
#define POINTS 200
#define SAME 1e-9

/* A ring about the middle with spikes, so that many sides are steep and some almost level. */
static PpOutline *
star_new (GRand *dice)
{
  PpPoint ring[CORNERS + 1];

  for (guint i = 0; i <= CORNERS; i++)
    {
      double turn = 2 * G_PI * (i % CORNERS) / CORNERS;
      double far = i == CORNERS ? 0 : g_rand_double_range (dice, 10, 50);

      ring[i] = (PpPoint) { far * cos (turn), far * sin (turn) };
    }
  ring[CORNERS] = ring[0];
  return pp_outline_new_ring (ring, CORNERS + 1);
}

/* The textbook's: the foot of the perpendicular, or the nearer end. */
static double
distance_to_side (PpPoint a,
                  PpPoint b,
                  PpPoint p)
{
  double dx = b.x - a.x, dy = b.y - a.y;
  double share = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy);
  double t = CLAMP (share, 0, 1);

  return hypot (p.x - a.x - t * dx, p.y - a.y - t * dy);
}

static double
find_distance (const PpOutline *outline,
               PpPoint          p)
{
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);
  double least = INFINITY;

  for (guint i = 0; i + 1 < n; i++)
    least = fmin (least, distance_to_side (ring[i], ring[i + 1], p));
  return least;
}

static void
test_nearest (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (11);

  for (guint k = 0; k < 40; k++)
    {
      g_autoptr (PpOutline) outline = star_new (dice);
      g_autoptr (PpBands) bands = (k % 2 == 0 ? pp_bands_new : pp_bands_new_far) (outline, 0.01);

      for (guint i = 0; i < POINTS; i++)
        {
          PpPoint p = { g_rand_double_range (dice, -80, 80), g_rand_double_range (dice, -80, 80) };
          PpPoint where;
          PpSide side;
          double is = find_distance (outline, p);

          g_assert_cmpfloat_with_epsilon (pp_bands_distance (bands, p, INFINITY), is, SAME);
          g_assert_cmpfloat_with_epsilon (pp_bands_distance (bands, p, 5), fmin (is, 5), SAME);
          g_assert_cmpfloat_with_epsilon (pp_bands_nearest (bands, p, INFINITY, 0, &side), is, SAME);
          where = pp_side_place_nearest (side, p);
          g_assert_cmpfloat_with_epsilon (pp_point_distance (p, where), is, SAME);
          g_assert_cmpfloat_with_epsilon (find_distance (outline, where), 0, SAME);
          g_assert_cmpfloat (pp_bands_nearest (bands, p, INFINITY, 20, NULL), <=, fmax (is, 20) + SAME);
        }
    }
}

/* Every side is in each band that it comes within reach of, and in the order of the ring. */
static void
test_sides (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (12);
  g_autoptr (PpOutline) outline = star_new (dice);
  g_autoptr (PpBands) bands = pp_bands_new (outline, 0.5);
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);

  for (guint band = 0; band < bands->n; band++)
    {
      double top = bands->start + band * bands->step;
      guint at = bands->first[band];

      for (guint i = 0; i + 1 < n; i++)
        {
          double least = MIN (ring[i].y, ring[i + 1].y) - 0.5;
          double greatest = MAX (ring[i].y, ring[i + 1].y) + 0.5;
          gboolean comes = (least <= top + bands->step || band == bands->n - 1)
                           && (greatest >= top || band == 0);

          if (at < bands->first[band + 1] && bands->sides[at] == &ring[i])
            at++;
          else
            g_assert_false (comes);
        }
      g_assert_cmpuint (at, ==, bands->first[band + 1]);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bands/nearest", test_nearest);
  g_test_add_func ("/bands/sides", test_sides);
  return g_test_run ();
}
