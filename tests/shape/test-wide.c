/* test-wide.c: sums side by side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/wide.h"

#define MOST 40

/* Of squares, which are whole numbers and so have no rounding: n (n + 1) (2n + 1) / 6. */
static void
test_squares (void)
{
  double x[MOST];

  for (guint i = 0; i < MOST; i++)
    x[i] = (i + 1.0) * (i + 1.0);
  for (guint n = 0; n <= MOST; n++)
    g_assert_cmpfloat (pp_wide_sum (x, n), ==, n * (n + 1.0) * (2.0 * n + 1) / 6);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wide/squares", test_squares);
  return g_test_run ();
}
