/* test-rig.c: holes and wire for a panel that lacks them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/rig.h"

#include "panel/edit.h"
#include "panel/new-panel.h"
#include "panel/panel-error.h"
#include "panel/resize.h"
#include "panel/tolerance.h"

#include "small-panel.h"

#define CLEAR 10.0 /* mm between two rims, least */
#define MILLIMETRE 0.5

static void
assert_apart (const PpPanel *panel)
{
  for (guint i = 0; i < panel->holes->len; i++)
    for (guint j = 0; j < i; j++)
      {
        const PpHole *a = pp_panel_hole (panel, i);
        const PpHole *b = pp_panel_hole (panel, j);

        g_assert_cmpfloat (hypot (a->x - b->x, a->y - b->y) - (a->diameter + b->diameter) / 2,
                           >=, CLEAR - PP_TIE);
      }
}

/* The first two lie where a new panel has them, the others clear of all before. */
static void
add_holes_to (double width,
              double height)
{
  const SmallPanel words = { .tray = "oxeye" };
  PpNewPanel wish = pp_new_panel_wish (PP_UNITS_MM);
  g_autoptr (PpPanel) middling = small_panel_good (&words);
  g_autoptr (PpPanel) panel = pp_edit_resize (middling, width, height, NULL);
  g_autoptr (PpPanel) alike = NULL;

  wish.width = panel->background->width;
  wish.height = panel->background->height;
  wish.corner_radius = panel->background->corner_radius;
  wish.thickness = panel->background->thickness;
  alike = pp_new_panel (&wish, NULL, NULL);
  for (guint n = 1; n <= 10; n++)
    {
      g_autofree char *id = NULL;
      g_autoptr (PpPanel) before = g_steal_pointer (&panel);
      const PpHole *hole;

      panel = pp_rig_add_hole (before, &id, NULL);
      hole = pp_panel_find_hole (panel, id, NULL);
      g_assert_cmpuint (panel->holes->len, ==, n);
      g_assert_false (hole->drilled);
      g_assert_true (hole->x > hole->diameter && hole->x < wish.width - hole->diameter);
      g_assert_true (hole->y > hole->diameter && hole->y < wish.height - hole->diameter);
      if (n > 2)
        continue;
      g_assert_cmpstr (id, ==, n == 1 ? "left" : "right");
      g_assert_cmpfloat (hole->x, ==, pp_panel_hole (alike, n - 1)->x);
      g_assert_cmpfloat (hole->y, ==, pp_panel_hole (alike, n - 1)->y);
    }
  assert_apart (panel);
}

/* On the smaller glass the places looked at lie closer than holes may. */
static void
test_add_holes (void)
{
  add_holes_to (300, 420);
  add_holes_to (150, 150);
}

/* A free outline keeps the frame it is written in. */
static void
test_add_holes_far (void)
{
  const SmallPanel words = { .tray = "oxeye" };
  const PpPoint corners[] = { { 1000, 500 }, { 1300, 500 }, { 1300, 900 }, { 1000, 900 } };
  g_autoptr (PpPanel) near = small_panel_good (&words);
  g_autoptr (PpOutline) outline = pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
  PpBackground draft = *near->background;
  g_autoptr (PpBackground) glass = NULL;
  g_autoptr (PpPanel) panel = NULL;

  draft.shape = PP_SHAPE_FREE;
  draft.outline = outline;
  glass = pp_background_new (&draft, NULL);
  panel = pp_edit_set_background (near, glass, NULL);
  for (guint n = 1; n <= 4; n++)
    {
      g_autofree char *id = NULL;
      g_autoptr (PpPanel) before = g_steal_pointer (&panel);
      const PpHole *hole;

      panel = pp_rig_add_hole (before, &id, NULL);
      hole = pp_panel_find_hole (panel, id, NULL);
      g_assert_true (hole->x > 1000 + hole->diameter && hole->x < 1300 - hole->diameter);
      g_assert_true (hole->y > 500 + hole->diameter && hole->y < 900 - hole->diameter);
      if (n <= 2)
        g_assert_cmpstr (id, ==, hole->x < 1150 ? "left" : "right");
    }
  assert_apart (panel);
}

static void
test_full (void)
{
  const SmallPanel words = { .tray = "oxeye" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  g_autoptr (GError) error = NULL;

  for (guint n = 0; n < PP_PANEL_MAX_HOLES; n++)
    {
      g_autoptr (PpPanel) before = g_steal_pointer (&panel);

      panel = pp_rig_add_hole (before, NULL, &error);
      g_assert_no_error (error);
    }
  g_assert_null (pp_rig_add_hole (panel, NULL, &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT);
}

/* Legs that rise by 30 degrees make the wire 2/sqrt 3 of the holes' distance. */
static void
assert_wire (const PpPanel *panel)
{
  const PpHole *from = pp_panel_find_hole (panel, panel->wire->from, NULL);
  const PpHole *to = pp_panel_find_hole (panel, panel->wire->to, NULL);
  double apart = hypot (to->x - from->x, to->y - from->y);

  g_assert_cmpfloat (from->x, <=, to->x);
  g_assert_cmpfloat_with_epsilon (panel->wire->length, apart * 2 / sqrt (3), MILLIMETRE);
  g_assert_cmpfloat (panel->wire->knot_diameter, >, fmax (from->diameter, to->diameter));
}

static void
test_wire_on_bare_glass (void)
{
  const SmallPanel words = { .tray = "oxeye" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  g_autoptr (PpPanel) rigged = pp_rig_put_wire_on (panel, NULL);

  g_assert_cmpuint (rigged->holes->len, ==, 2);
  assert_wire (rigged);
}

static PpPanel *
with_hole (const PpPanel *panel,
           const char    *id,
           double         x,
           double         y)
{
  g_autoptr (PpHole) hole = NULL;
  PpHole draft = pp_hole_draft ();

  draft.id = id;
  draft.x = x;
  draft.y = y;
  draft.diameter = 12;
  hole = pp_hole_new (&draft, NULL);
  return pp_edit_set_hole (panel, hole, NULL);
}

/* Holes that are there are kept, and the outermost taken. */
static void
test_wire_on_holes (void)
{
  const SmallPanel words = { .tray = "oxeye" };
  g_autoptr (PpPanel) bare = small_panel_good (&words);
  g_autoptr (PpPanel) one = with_hole (bare, "mid", 150, 60);
  g_autoptr (PpPanel) two = with_hole (one, "east", 250, 60);
  g_autoptr (PpPanel) three = with_hole (two, "west", 50, 90);
  g_autoptr (PpPanel) rigged = pp_rig_put_wire_on (three, NULL);

  g_assert_cmpuint (rigged->holes->len, ==, 3);
  g_assert_cmpstr (rigged->wire->from, ==, "west");
  g_assert_cmpstr (rigged->wire->to, ==, "east");
  assert_wire (rigged);
}

/* One above the other is a pair too. */
static void
test_wire_on_plumb_holes (void)
{
  const SmallPanel words = { .tray = "oxeye" };
  g_autoptr (PpPanel) bare = small_panel_good (&words);
  g_autoptr (PpPanel) one = with_hole (bare, "upper", 150, 60);
  g_autoptr (PpPanel) two = with_hole (one, "lower", 150, 160);
  g_autoptr (PpPanel) rigged = pp_rig_put_wire_on (two, NULL);

  g_assert_cmpstr (rigged->wire->from, !=, rigged->wire->to);
  assert_wire (rigged);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rig/add-holes", test_add_holes);
  g_test_add_func ("/rig/add-holes-far", test_add_holes_far);
  g_test_add_func ("/rig/full", test_full);
  g_test_add_func ("/rig/wire-on-bare-glass", test_wire_on_bare_glass);
  g_test_add_func ("/rig/wire-on-holes", test_wire_on_holes);
  g_test_add_func ("/rig/wire-on-plumb-holes", test_wire_on_plumb_holes);
  return g_test_run ();
}
