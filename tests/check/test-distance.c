/* test-distance.c: the exact distance transform against its definition.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/distance.h"

/* From every full square to every other, as the words say. */
static int
nearest_empty (const guint8 *full,
               int             width,
               int             height,
               int             x,
               int             y)
{
  int least = G_MAXINT;

  for (int j = 0; j < height; j++)
    for (int i = 0; i < width; i++)
      if (!full[j * width + i])
        least = MIN (least, (i - x) * (i - x) + (j - y) * (j - y));
  return least;
}

static void
compare (const guint8 *full,
         int             width,
         int             height)
{
  const int enough[] = { 1, 2, 5, 127, 128, 30000 };

  for (guint k = 0; k < G_N_ELEMENTS (enough); k++)
    {
      g_autofree int *squared = pp_distance_squared (full, width, height, enough[k]);

      for (int y = 0; y < height; y++)
        for (int x = 0; x < width; x++)
          {
            int nearest = nearest_empty (full, width, height, x, y);

            if (enough[k] < 128)
              nearest = MIN (nearest, enough[k] * enough[k]);
            g_assert_cmpint (squared[y * width + x], ==, nearest);
          }
    }
}

/* Seeded grids of every density, thin ones too. */
static void
test_random (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20);

  for (int run = 0; run < 400; run++)
    {
      int width = g_rand_int_range (random, 2, 28), height = g_rand_int_range (random, 2, 28);
      double density = 1 - g_rand_double_range (random, 0.001, 0.3);
      g_autofree guint8 *full = g_new0 (guint8, width * height);

      for (int y = 1; y < height - 1; y++)
        for (int x = 1; x < width - 1; x++)
          full[y * width + x] = (guint8) (g_rand_double (random) < density);
      compare (full, width, height);
    }
}

static void
test_plain (void)
{
  g_autofree guint8 *full = g_new0 (guint8, 9 * 7);

  compare (full, 9, 7);
  for (int y = 1; y < 6; y++)
    for (int x = 1; x < 8; x++)
      full[y * 9 + x] = TRUE;
  compare (full, 9, 7);
  full[3 * 9 + 4] = FALSE;
  compare (full, 9, 7);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/distance/plain", test_plain);
  g_test_add_func ("/distance/random", test_random);
  return g_test_run ();
}
