/* test-ticks.c: the lines of a ruler.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Common practice, no source: a metric rule is divided in 1, 2 and 5, an inch rule in halves down
 * to sixteenths; on both a figure stands at whole millimetres or whole inches.
 */
#include "desk/ticks.h"

#define LEAST 5.0   /* px between lines */
#define FIGURE 40.0 /* px between figures */

typedef struct
{
  const char *name;
  double      scale; /* px a mm */
  PpUnits     units;
  double      small; /* mm */
  double      figures; /* mm between figures */
} Row;

/* Worked out by hand: the finest division with 5 px between lines and 40 px between figures. */
static const Row rows[] = {
  { "mm-large", 40, PP_UNITS_MM, 1, 10 },
  { "mm-true-size", 96 / 25.4, PP_UNITS_MM, 2, 50 },
  { "mm-small", 0.6, PP_UNITS_MM, 10, 100 },
  { "mm-smallest", 0.05, PP_UNITS_MM, 100, 1000 },
  { "inch-large", 40, PP_UNITS_INCH, 25.4 / 16, 25.4 },
  { "inch-true-size", 96 / 25.4, PP_UNITS_INCH, 25.4 / 16, 25.4 },
  { "inch-small", 0.6, PP_UNITS_INCH, 25.4, 101.6 },
};

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  PpTicks ticks = pp_ticks_choose (row->scale, row->units, LEAST, FIGURE);

  g_assert_cmpfloat (ticks.small, ==, row->small);
  g_assert_cmpfloat_with_epsilon (ticks.small * ticks.large, row->figures, 1e-9);
}

/* At every scale that the window can take: room enough, and figures at whole numbers. */
static void
test_any_scale (gconstpointer data)
{
  PpUnits units = (PpUnits) GPOINTER_TO_INT (data);
  double unit = units == PP_UNITS_INCH ? 25.4 : 1;

  for (double scale = 0.05; scale <= 40; scale *= 1.07)
    {
      PpTicks ticks = pp_ticks_choose (scale, units, LEAST, FIGURE);
      double figures = ticks.small * ticks.large;

      g_assert_cmpfloat (ticks.small * scale, >=, LEAST);
      g_assert_cmpfloat (figures * scale, >=, FIGURE);
      g_assert_cmpfloat_with_epsilon (figures / unit, round (figures / unit), 1e-9);
      g_assert_cmpuint (ticks.large % ticks.medium, ==, 0);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/ticks/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  g_test_add_data_func ("/ticks/any-scale/mm", GINT_TO_POINTER (PP_UNITS_MM), test_any_scale);
  g_test_add_data_func ("/ticks/any-scale/inch", GINT_TO_POINTER (PP_UNITS_INCH), test_any_scale);
  return g_test_run ();
}
