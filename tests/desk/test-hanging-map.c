/* test-hanging-map.c: how the panel hangs, and where that is drawn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Held against the definition of an ellipse (the legs together are the wire) and of hanging (the
 * mass is straight under the hook).
 */
#include "desk/hanging-map.h"

#include "check/check.h"
#include "panel/edit.h"
#include "panel/new-panel.h"

#define NEAR 1e-6 /* mm, degrees */

/* An empty panel with its right hole moved, so that it does not hang level by itself. */
static PpCheck *
make (PpPoint by,
      double  longer)
{
  PpNewPanel wish = pp_new_panel_wish (PP_UNITS_MM);
  g_autoptr (PpPanel) first = pp_new_panel (&wish, NULL, NULL);
  PpHole hole = *pp_panel_find_hole (first, "right", NULL);
  PpWire wire = *first->wire;
  g_autoptr (PpHole) moved = NULL;
  g_autoptr (PpWire) longer_wire = NULL;
  g_autoptr (PpPanel) second = NULL, third = NULL;

  hole.x += by.x;
  hole.y += by.y;
  wire.length += longer;
  moved = pp_hole_new (&hole, NULL);
  longer_wire = pp_wire_new (&wire, NULL);
  second = pp_edit_set_hole (first, moved, NULL);
  third = pp_edit_set_wire (second, longer_wire, NULL);
  return pp_check_new (third, NULL, NULL, NULL, NULL, NULL);
}

static double
get_legs (const PpScene *scene,
          PpPoint        hook)
{
  double sum = 0;

  for (guint k = 0; k < 2; k++)
    {
      const PpHole *hole = pp_scene_knot_hole (scene, k);

      sum += hypot (hole->x - hook.x, hole->y - hook.y);
    }
  return sum;
}

static void
test_hung (void)
{
  const PpHungHow ways[] = { PP_HUNG_LEVEL, PP_HUNG_MIDDLE, PP_HUNG_SLIPPED };
  g_autoptr (PpCheck) check = make ((PpPoint) { 20, 6 }, 12);

  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      PpHung hung;
      PpHangingMap map;
      PpPoint hook, mass;

      g_assert_true (pp_hung_of (check->scene, &check->mass, check->hang, ways[i], &hung));
      g_assert_cmpfloat_with_epsilon (get_legs (check->scene, hung.hook),
                                      check->panel->wire->length, NEAR);
      map = pp_hanging_map_fit ((PpBox) { 0, 0, 300, 400 }, &hung.hook, hung.tilt,
                                (PpBox) { 0, 0, 600, 800 }, 0);
      hook = pp_hanging_map_to_px (&map, hung.hook);
      mass = pp_hanging_map_to_px (&map, (PpPoint) { check->mass.x, check->mass.y });
      g_assert_cmpfloat_with_epsilon (hook.x, mass.x, NEAR);
      g_assert_cmpfloat (hook.y, <, mass.y);
    }
}

/* With the holes to either side, so that the more tilted one is now the first and now the second. */
static void
test_slips_most (void)
{
  guint n_first = 0, n_second = 0;

  for (double by = -3; by <= 3; by += 2)
    {
      g_autoptr (PpCheck) check = make ((PpPoint) { by, 0 }, by - 12);
      const double *tilts = check->hang->slips_to;
      PpHung hung;

      if (check->hang->n_slips_to < 2)
        continue;
      g_assert_true (pp_hung_of (check->scene, &check->mass, check->hang, PP_HUNG_SLIPPED, &hung));
      g_assert_cmpfloat_with_epsilon (fabs (hung.tilt), fmax (fabs (tilts[0]), fabs (tilts[1])),
                                      NEAR);
      if (fabs (tilts[0]) > fabs (tilts[1]))
        n_first++;
      else
        n_second++;
    }
  g_assert_cmpuint (n_first, >, 0);
  g_assert_cmpuint (n_second, >, 0);
}

/* The length for a hook, and back: the panel with that length has its level hook there. */
static void
test_length (void)
{
  g_autoptr (PpCheck) check = make ((PpPoint) { 10, 3 }, 0);
  PpPoint wanted = { check->hang->level_hook.x, check->hang->level_hook.y - 17 };
  double length = pp_hung_wire_length (check->scene, &check->mass, wanted);
  g_autoptr (PpCheck) longer = make ((PpPoint) { 10, 3 }, length - check->panel->wire->length);

  g_assert_cmpfloat_with_epsilon (length, get_legs (check->scene, wanted), NEAR);
  g_assert_cmpfloat_with_epsilon (longer->hang->level_hook.y, wanted.y, 0.01);
}

/* Pulled under its holes it is nearly taut, never shorter than their distance. */
static void
test_short (void)
{
  g_autoptr (PpCheck) check = make ((PpPoint) { 0, 0 }, 0);
  PpPoint below = { check->mass.x, check->mass.y };
  double length = pp_hung_wire_length (check->scene, &check->mass, below);

  g_assert_cmpfloat (length, >, check->hang->hole_distance);
  g_assert_cmpfloat (length, <, check->hang->hole_distance + 1);
}

static void
test_map (void)
{
  const PpPoint hook = { 150, -60 };
  const PpBox box = { 0, 0, 300, 400 }, area = { 20, 30, 720, 830 };

  for (double tilt = -60; tilt <= 60; tilt += 15)
    {
      PpHangingMap map = pp_hanging_map_fit (box, &hook, tilt, area, 50);
      PpPoint a = pp_hanging_map_to_px (&map, (PpPoint) { 40, 70 });
      PpPoint b = pp_hanging_map_to_px (&map, (PpPoint) { 43, 66 });
      PpPoint by = pp_hanging_map_turn_back (&map, (PpPoint) { b.x - a.x, b.y - a.y });
      PpBox seen = pp_hanging_map_get_box (&map, box);
      PpPoint top = pp_hanging_map_to_px (&map, hook);

      g_assert_cmpfloat_with_epsilon (by.x, 3, NEAR);
      g_assert_cmpfloat_with_epsilon (by.y, -4, NEAR);
      seen = pp_box_add_point (seen, top);
      g_assert_cmpfloat (seen.x0, >=, area.x0 - NEAR);
      g_assert_cmpfloat (seen.x1 + 50 * map.scale, <=, area.x1 + NEAR);
      g_assert_cmpfloat (seen.y0, >=, area.y0 - NEAR);
      g_assert_cmpfloat (seen.y1, <=, area.y1 + NEAR);
    }
}

static void
test_taut (void)
{
  g_autoptr (PpCheck) check = make ((PpPoint) { 0, 0 }, -40);
  PpHung hung;

  g_assert_true (check->hang->is_taut);
  for (guint how = PP_HUNG_LEVEL; how <= PP_HUNG_SLIPPED; how++)
    g_assert_false (pp_hung_of (check->scene, &check->mass, check->hang, (PpHungHow) how, &hung));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hanging-map/hung", test_hung);
  g_test_add_func ("/hanging-map/slips-most", test_slips_most);
  g_test_add_func ("/hanging-map/length", test_length);
  g_test_add_func ("/hanging-map/short", test_short);
  g_test_add_func ("/hanging-map/map", test_map);
  g_test_add_func ("/hanging-map/taut", test_taut);
  return g_test_run ();
}
