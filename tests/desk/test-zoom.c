/* test-zoom.c: from the panel to the widget and back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected px are worked out by hand from: px = origin + scale · mm, x the other way from behind.
 */
#include "desk/zoom.h"

#define NEAR 1e-9 /* px or mm: rounding of a few operations on numbers below 10000 */

static const PpZoom zooms[] = {
  { 1, 0, 0, FALSE },
  { 2.5, 40, -30, FALSE },
  { 2.5, 640, -30, TRUE },
  { PP_ZOOM_MIN, 1e3, 2e3, FALSE },
  { PP_ZOOM_MAX, -5e3, -2e3, TRUE },
};

static void
test_there_and_back (gconstpointer data)
{
  const PpZoom *zoom = data;

  for (int i = -3; i <= 3; i++)
    {
      PpPoint mm = { i * 37.5, 11 - i * 20 };
      PpPoint back = pp_zoom_to_panel (zoom, pp_zoom_to_widget (zoom, mm));

      g_assert_cmpfloat_with_epsilon (back.x, mm.x, NEAR);
      g_assert_cmpfloat_with_epsilon (back.y, mm.y, NEAR);
    }
}

static void
test_by_hand (void)
{
  PpPoint px = pp_zoom_to_widget (&zooms[1], (PpPoint) { 100, 20 });

  g_assert_cmpfloat_with_epsilon (px.x, 290, NEAR);
  g_assert_cmpfloat_with_epsilon (px.y, 20, NEAR);
  px = pp_zoom_to_widget (&zooms[2], (PpPoint) { 100, 20 });
  g_assert_cmpfloat_with_epsilon (px.x, 390, NEAR);
}

/* 300 x 200 mm in 860 x 700 px with 50 px about it: 760 / 300 is less than 600 / 200. */
static void
test_fit (gconstpointer data)
{
  gboolean from_behind = GPOINTER_TO_INT (data);
  PpZoom zoom = pp_zoom_fit ((PpBox) { 0, 0, 300, 200 }, 860, 700, 50, from_behind);
  PpPoint left = pp_zoom_to_widget (&zoom, (PpPoint) { from_behind ? 300 : 0, 100 });
  PpPoint right = pp_zoom_to_widget (&zoom, (PpPoint) { from_behind ? 0 : 300, 100 });

  g_assert_cmpfloat_with_epsilon (zoom.scale, 760.0 / 300, NEAR);
  g_assert_cmpfloat_with_epsilon (left.x, 50, NEAR);
  g_assert_cmpfloat_with_epsilon (right.x, 810, NEAR);
  g_assert_cmpfloat_with_epsilon (left.y, 350, NEAR);
}

static void
test_fit_extremes (void)
{
  g_assert_cmpfloat (pp_zoom_fit ((PpBox) { 0, 0, 1, 1 }, 4000, 4000, 0, FALSE).scale, ==,
                     PP_ZOOM_MAX);
  g_assert_cmpfloat (pp_zoom_fit ((PpBox) { 0, 0, 3000, 3000 }, 10, 10, 20, FALSE).scale, ==,
                     PP_ZOOM_MIN);
}

/* What lies under the pointer stays there, at the limits too. */
static void
test_around (gconstpointer data)
{
  const PpZoom *zoom = data;
  static const double factors[] = { 0.001, 0.8, 1, 1.25, 1000 };
  PpPoint px = { 123, 456 };
  PpPoint before = pp_zoom_to_panel (zoom, px);

  for (guint i = 0; i < G_N_ELEMENTS (factors); i++)
    {
      PpZoom next = pp_zoom_around (zoom, px, factors[i]);
      PpPoint after = pp_zoom_to_panel (&next, px);

      g_assert_cmpfloat_with_epsilon (after.x, before.x, 1e-6);
      g_assert_cmpfloat_with_epsilon (after.y, before.y, 1e-6);
      g_assert_cmpfloat (next.scale, >=, PP_ZOOM_MIN);
      g_assert_cmpfloat (next.scale, <=, PP_ZOOM_MAX);
      g_assert_true (next.from_behind == zoom->from_behind);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (zooms); i++)
    {
      g_autofree char *back = g_strdup_printf ("/zoom/there-and-back/%u", i);
      g_autofree char *around = g_strdup_printf ("/zoom/around/%u", i);

      g_test_add_data_func (back, &zooms[i], test_there_and_back);
      g_test_add_data_func (around, &zooms[i], test_around);
    }
  g_test_add_func ("/zoom/by-hand", test_by_hand);
  g_test_add_data_func ("/zoom/fit/from-the-front", GINT_TO_POINTER (FALSE), test_fit);
  g_test_add_data_func ("/zoom/fit/from-behind", GINT_TO_POINTER (TRUE), test_fit);
  g_test_add_func ("/zoom/fit/extremes", test_fit_extremes);
  return g_test_run ();
}
