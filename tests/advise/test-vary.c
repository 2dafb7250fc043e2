/* test-vary.c: a layout much like another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/vary.h"

#include "file/panel-read.h"
#include "panel/edit.h"

#define NUMBERS 40 /* layouts looked at */
#define NEAR 1e-9  /* mm: rounding of a few sums */
#define STEP 0.01  /* mm: of a difference quotient */

/* Nine tiles on a grid of 50 mm; the one in the middle has neighbours STEP away on two sides. */
static PpPanel *
make_panel (void)
{
  g_autoptr (GString) text = g_string_new (
      "{\"format\": \"petalpane-panel\", \"version\": 1, \"background\": {\"shape\": \"rectangle\", "
      "\"width\": 200, \"height\": 300, \"thickness\": 6}, \"tray\": [{\"id\": \"tile\", "
      "\"kind\": \"filler\", \"count\": 30, \"thickness\": 4, \"outline\": {\"type\": \"Polygon\", "
      "\"coordinates\": [[[-15,-15],[15,-15],[15,15],[-15,15],[-15,-15]]]}}], \"placements\": [");
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  PpPanel *panel;

  for (int i = 0; i < 9; i++)
    g_string_append_printf (text, "{\"id\": \"p%d\", \"piece\": \"tile\", \"x\": %d, \"y\": %d, "
                            "\"rotation\": %d}, ", i, 50 + 50 * (i % 3), 75 + 75 * (i / 3), 10 * i);
  g_string_append (text, "{\"id\": \"east\", \"piece\": \"tile\", \"x\": 100.01, \"y\": 150}, "
                   "{\"id\": \"south\", \"piece\": \"tile\", \"x\": 100, \"y\": 150.01}, "
                   "{\"id\": \"edge\", \"piece\": \"tile\", \"x\": 0, \"y\": 100}, "
                   "{\"id\": \"pinned\", \"piece\": \"tile\", \"x\": 60, \"y\": 60, \"pinned\": true}, "
                   "{\"id\": \"glued\", \"piece\": \"tile\", \"x\": 70, \"y\": 220, "
                   "\"glued_at\": \"2026-06-01T10:00:00+01:00\"}]}");
  bytes = g_bytes_new (text->str, text->len);
  panel = pp_panel_read (bytes, &error);
  g_assert_no_error (error);
  return panel;
}

static PpPoint
get_way (const PpPanel *from,
         const PpPanel *to,
         const char    *id)
{
  const PpPlacement *a = pp_panel_find_placement (from, id, NULL);
  const PpPlacement *b = pp_panel_find_placement (to, id, NULL);

  return (PpPoint) { b->x - a->x, b->y - a->y };
}

static double
get_turn (const PpPanel *from,
          const PpPanel *to,
          const char    *id)
{
  return pp_panel_find_placement (to, id, NULL)->rotation
         - pp_panel_find_placement (from, id, NULL)->rotation;
}

static void
test_itself (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpPanel) same = pp_vary_new (panel, 0);

  g_assert_true (same == panel);
}

static void
test_bounded (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  double farthest = 0;

  for (guint n = 1; n <= NUMBERS; n++)
    {
      g_autoptr (PpPanel) varied = pp_vary_new (panel, n);

      g_assert_cmpuint (varied->placements->len, ==, panel->placements->len);
      for (guint i = 0; i < panel->placements->len; i++)
        {
          const char *id = pp_panel_placement (panel, i)->id;
          PpPoint way = get_way (panel, varied, id);

          farthest = fmax (farthest, hypot (way.x, way.y));
          g_assert_cmpfloat (hypot (way.x, way.y), <=, PP_VARY_SHARE * 200);
          g_assert_cmpfloat (fabs (get_turn (panel, varied, id)), <=, PP_VARY_TURN);
        }
      /* nothing is pulled across an edge */
      g_assert_cmpfloat_with_epsilon (get_way (panel, varied, "edge").x, 0, NEAR);
    }
  /* and it is seen that it is another layout */
  g_assert_cmpfloat (farthest, >, PP_VARY_SHARE * 200 / 3);
}

static void
test_held (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpPanel) varied = pp_vary_new (panel, 3);

  for (guint i = 0; i < 2; i++)
    {
      const char *id = i == 0 ? "pinned" : "glued";
      PpPoint way = get_way (panel, varied, id);

      g_assert_cmpfloat (hypot (way.x, way.y), ==, 0);
      g_assert_cmpfloat (get_turn (panel, varied, id), ==, 0);
    }
  g_assert_true (varied->tray == panel->tray || varied->tray->len == panel->tray->len);
  g_assert_true (varied->background == panel->background);
}

/* A piece turns as its surroundings do: half the curl, here by difference quotients. In the middle
 * of the glass, where nothing fades. */
static void
test_turns_with_surroundings (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  guint n_turned = 0;

  for (guint n = 1; n <= NUMBERS; n++)
    {
      g_autoptr (PpPanel) varied = pp_vary_new (panel, n);
      PpPoint here = get_way (panel, varied, "p4");
      PpPoint east = get_way (panel, varied, "east");
      PpPoint south = get_way (panel, varied, "south");
      double curl = (east.y - here.y) / STEP - (south.x - here.x) / STEP;
      double turn = get_turn (panel, varied, "p4");

      g_assert_cmpfloat_with_epsilon (turn, CLAMP (curl / 2 * 180 / G_PI, -PP_VARY_TURN,
                                                   PP_VARY_TURN), 0.05);
      n_turned += fabs (turn) > 1;
    }
  g_assert_cmpuint (n_turned, >, NUMBERS / 2);
}

static void
test_numbers (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpPanel) one = pp_vary_new (panel, 1);
  g_autoptr (PpPanel) again = pp_vary_new (panel, 1);
  g_autoptr (PpPanel) two = pp_vary_new (panel, 2);
  PpPoint way = get_way (one, again, "p4");
  PpPoint other = get_way (one, two, "p4");

  g_assert_cmpfloat (hypot (way.x, way.y), ==, 0);
  g_assert_cmpfloat (hypot (other.x, other.y), >, 0.1);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/vary/itself", test_itself);
  g_test_add_func ("/vary/bounded", test_bounded);
  g_test_add_func ("/vary/held", test_held);
  g_test_add_func ("/vary/turns-with-surroundings", test_turns_with_surroundings);
  g_test_add_func ("/vary/numbers", test_numbers);
  return g_test_run ();
}
