/* test-distance.c: the exact distance transform against its definition.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/distance.h"

#include <string.h>

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

/* Row by row; the grid's border is empty. */
static guint
find_spans (const guint8 *full,
            int           width,
            int           height,
            PpSpan       *spans)
{
  guint n = 0;

  for (int at = 1; at < width * height; at++)
    {
      if (full[at] && !full[at - 1])
        spans[n++] = (PpSpan) { at / width, at % width, at % width };
      if (full[at])
        spans[n - 1].i1++;
    }
  return n;
}

/* Those beside each other that are one span, are two that touch. */
static guint
part_spans (PpSpan *spans,
            guint   n)
{
  guint parted = n;

  for (guint s = n; s-- > 0;)
    if (spans[s].i1 - spans[s].i0 > 2)
      {
        memmove (spans + s + 1, spans + s, (parted - s) * sizeof *spans);
        spans[s].i1 = spans[s + 1].i0 += 2;
        parted++;
      }
  return parted;
}

static void
compare_spans (const guint8 *full,
               int           width,
               int           height,
               const PpSpan *spans,
               guint         n_spans,
               int           enough)
{
  g_autofree int *squared = g_new (int, width * height);
  g_autofree int *farthest = g_new (int, n_spans + 1);
  const int *next = squared;

  pp_distance_squared (spans, n_spans, enough, squared, farthest);
  for (guint s = 0; s < n_spans; s++)
    {
      int greatest = 0;

      for (int i = spans[s].i0; i < spans[s].i1; i++)
        {
          int nearest = nearest_empty (full, width, height, i, spans[s].j);

          if (enough < 128)
            nearest = MIN (nearest, enough * enough);
          greatest = MAX (greatest, nearest);
          g_assert_cmpint (*next++, ==, nearest);
        }
      g_assert_cmpint (farthest[s], ==, greatest);
    }
}

static void
compare (const guint8 *full,
         int           width,
         int           height)
{
  const int enough[] = { 1, 2, 5, 127, 128, 30000 };
  g_autofree PpSpan *spans = g_new (PpSpan, width * height);
  guint n = find_spans (full, width, height, spans);

  for (guint k = 0; k < G_N_ELEMENTS (enough); k++)
    compare_spans (full, width, height, spans, n, enough[k]);
  n = part_spans (spans, n);
  for (guint k = 0; k < G_N_ELEMENTS (enough); k++)
    compare_spans (full, width, height, spans, n, enough[k]);
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
  for (int x = 1; x < 8; x++)
    full[2 * 9 + x] = FALSE;
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
