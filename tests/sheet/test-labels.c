/* test-labels.c: numbers on a plan neither collide nor leave it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/labels.h"

#include <glib.h>

#define GAP 0.5
#define SLACK 1e-9 /* mm, of sums of doubles */

static const PpBox bounds = { 10, 20, 190, 240 };

static PpSheetLabel
make_label (double x,
            double y)
{
  return (PpSheetLabel) { .anchor = { x, y }, .width = 6, .height = 4 };
}

static gboolean
box_meets_box (PpBox a,
               PpBox b)
{
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

static void
assert_clear (const PpSheetLabel *labels,
              guint               n)
{
  for (guint i = 0; i < n; i++)
    {
      PpBox box = pp_label_box (&labels[i]);

      g_assert_true (labels[i].placed);
      g_assert_cmpfloat (box.x0, >=, bounds.x0);
      g_assert_cmpfloat (box.y0, >=, bounds.y0);
      g_assert_cmpfloat (box.x1, <=, bounds.x1);
      g_assert_cmpfloat (box.y1, <=, bounds.y1);
      for (guint j = 0; j < i; j++)
        g_assert_false (box_meets_box (pp_box_grow (box, GAP - SLACK),
                                       pp_label_box (&labels[j])));
    }
}

static void
test_alone (void)
{
  PpSheetLabel label = make_label (100, 100);

  pp_labels_place (&label, 1, bounds, NULL, 0, GAP);
  g_assert_true (label.placed);
  g_assert_cmpfloat (pp_point_distance (label.at, label.anchor), ==, 0);
}

static void
test_corner (void)
{
  PpSheetLabel labels[] = { make_label (10, 20), make_label (190, 240), make_label (400, 20) };

  pp_labels_place (labels, 2, bounds, NULL, 0, GAP);
  assert_clear (labels, 2);
  pp_labels_place (&labels[2], 1, bounds, NULL, 0, GAP);
  g_assert_false (labels[2].placed);
}

static void
test_heap (void)
{
  PpSheetLabel labels[30];

  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    labels[i] = make_label (100, 100);
  pp_labels_place (labels, G_N_ELEMENTS (labels), bounds, NULL, 0, GAP);
  assert_clear (labels, G_N_ELEMENTS (labels));
}

static void
test_obstacle (void)
{
  const PpBox dab = { 98, 98, 102, 102 };
  PpSheetLabel label = make_label (100, 100);

  pp_labels_place (&label, 1, bounds, &dab, 1, GAP);
  assert_clear (&label, 1);
  g_assert_false (box_meets_box (pp_label_box (&label), dab));
}

static void
test_crowd (void)
{
  PpSheetLabel labels[120];
  PpSheetLabel again[G_N_ELEMENTS (labels)];
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);

  for (guint round = 0; round < 20; round++)
    {
      for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
        again[i] = labels[i] = make_label (g_rand_double_range (rand, 10, 190),
                                           g_rand_double_range (rand, 20, 240));
      pp_labels_place (labels, G_N_ELEMENTS (labels), bounds, NULL, 0, GAP);
      pp_labels_place (again, G_N_ELEMENTS (again), bounds, NULL, 0, GAP);
      assert_clear (labels, G_N_ELEMENTS (labels));
      for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
        g_assert_cmpfloat (pp_point_distance (labels[i].at, again[i].at), ==, 0);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/labels/alone", test_alone);
  g_test_add_func ("/labels/corner", test_corner);
  g_test_add_func ("/labels/heap", test_heap);
  g_test_add_func ("/labels/obstacle", test_obstacle);
  g_test_add_func ("/labels/crowd", test_crowd);
  return g_test_run ();
}
