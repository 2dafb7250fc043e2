/* test-fit.c: another size, another like this, and where to drill.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/again.h"
#include "advise/dice.h"
#include "advise/drill.h"
#include "advise/fit.h"
#include "file/panel-read.h"
#include "panel/edit.h"
#include "panel/panel-error.h"

#include "load-sample.h"

#define NEAR 1e-9 /* mm: rounding of a few sums */

static guint n_asked; /* whether to stop */
static guint most_asked = G_MAXUINT;

/* Stands before that of the library: stops after so many. */
gboolean
g_cancellable_is_cancelled (GCancellable *cancellable)
{
  return ++n_asked > most_asked;
}

static PpPanel *
read_text (const char *text)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (text, strlen (text));
  g_autoptr (GError) error = NULL;
  PpPanel *panel = pp_panel_read (bytes, &error);

  g_assert_no_error (error);
  return panel;
}

/* Two tiles, one glued, a jug with a stem, a drilled and an undrilled hole. */
#define PANEL(shape, glued) \
  "{\"format\": \"petalpane-panel\", \"version\": 1, \"title\": \"Sedge\", \"background\": " shape \
  ", \"fused\": [{\"id\": \"jug\", \"thickness\": 3, \"outline\": {\"type\": \"Polygon\", " \
  "\"coordinates\": [[[60,200],[140,200],[140,280],[60,280],[60,200]]]}, \"pocket\": " \
  "{\"insert_thickness\": 6, \"insert\": {\"type\": \"Polygon\", \"coordinates\": " \
  "[[[80,190],[120,190],[120,260],[80,260],[80,190]]]}}}], \"holes\": [{\"id\": \"left\", " \
  "\"x\": 50, \"y\": 60, \"diameter\": 6}, {\"id\": \"right\", \"x\": 150, \"y\": 60, " \
  "\"diameter\": 6}, {\"id\": \"low\", \"x\": 20, \"y\": 150, \"diameter\": 6, " \
  "\"drilled\": true}], \"wire\": {\"from\": \"left\", \"to\": \"right\", \"length\": 110, " \
  "\"knotted_at\": " glued "}, \"tray\": [{\"id\": \"tile\", \"kind\": \"filler\", \"count\": 3, " \
  "\"thickness\": 4, \"outline\": {\"type\": \"Polygon\", \"coordinates\": " \
  "[[[-15,-15],[15,-15],[15,15],[-15,15],[-15,-15]]]}}], \"placements\": [" \
  "{\"id\": \"a\", \"piece\": \"tile\", \"x\": 40, \"y\": 75, \"rotation\": 30}, " \
  "{\"id\": \"b\", \"piece\": \"tile\", \"x\": 100, \"y\": 215, \"pocket\": \"jug\", " \
  "\"glued_at\": " glued "}], \"log\": [{\"at\": \"2026-06-01T10:00:00+01:00\", " \
  "\"what\": \"paused\", \"about\": []}]}"
#define SQUARE "{\"shape\": \"rectangle\", \"width\": 200, \"height\": 300, \"thickness\": 6}"
#define WEDGE "{\"shape\": \"free\", \"thickness\": 6, \"outline\": {\"type\": \"Polygon\", " \
  "\"coordinates\": [[[0,0],[200,0],[200,300],[0,300],[0,0]]]}}"
#define AT "\"2026-06-01T10:00:00+01:00\""

static void
assert_hole (const PpPanel *panel,
             const char    *id,
             double         x,
             double         y)
{
  const PpHole *hole = pp_panel_find_hole (panel, id, NULL);

  g_assert_cmpfloat_with_epsilon (hole->x, x, NEAR);
  g_assert_cmpfloat_with_epsilon (hole->y, y, NEAR);
}

static void
assert_place (const PpPanel *panel,
              const char    *id,
              double         x,
              double         y)
{
  const PpPlacement *placement = pp_panel_find_placement (panel, id, NULL);

  g_assert_cmpfloat_with_epsilon (placement->x, x, NEAR);
  g_assert_cmpfloat_with_epsilon (placement->y, y, NEAR);
}

/* 200 x 300 to 300 x 240, by hand: 1.5 across, 0.8 down; the jug, 80 mm wide about x = 100, keeps
 * its 20 mm from the lower edge. */
static void
test_fit (gconstpointer text)
{
  g_autoptr (PpPanel) panel = read_text (text);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) fitted = pp_fit_new (panel, 300, 240, &error);
  PpBox jug, insert;

  g_assert_no_error (error);
  g_assert_cmpfloat (fitted->background->width, ==, 300);
  g_assert_cmpfloat (fitted->background->height, ==, 240);
  assert_hole (fitted, "left", 75, 48);
  assert_hole (fitted, "right", 225, 48);
  assert_hole (fitted, "low", 20, 150);
  assert_place (fitted, "a", 60, 60);
  assert_place (fitted, "b", 150, 155);
  g_assert_cmpfloat (pp_panel_find_placement (fitted, "a", NULL)->rotation, ==, 30);
  g_assert_cmpfloat_with_epsilon (fitted->wire->length, 165, NEAR);
  jug = pp_outline_get_box (pp_panel_fused (fitted, 0)->outline);
  insert = pp_outline_get_box (pp_panel_fused (fitted, 0)->pocket.insert);
  g_assert_cmpfloat_with_epsilon (jug.x0, 110, NEAR);
  g_assert_cmpfloat_with_epsilon (jug.x1, 190, NEAR);
  g_assert_cmpfloat_with_epsilon (jug.y1, 220, NEAR);
  g_assert_cmpfloat_with_epsilon (jug.y0, 140, NEAR);
  g_assert_cmpfloat_with_epsilon (insert.y0, 130, NEAR);
  g_assert_true (pp_panel_piece (fitted, 0) == pp_panel_piece (panel, 0));
}

static void
test_refused (void)
{
  g_autoptr (PpPanel) begun = read_text (PANEL (SQUARE, AT));
  g_autoptr (PpPanel) panel = read_text (PANEL (SQUARE, "null"));
  const double sizes[][2] = { { 0, 100 }, { 100, -1 }, { NAN, 100 }, { 100, 3001 } };
  g_autoptr (GError) error = NULL;

  g_assert_null (pp_fit_new (begun, 300, 240, &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE);
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_clear_error (&error);
      g_assert_null (pp_fit_new (panel, sizes[i][0], sizes[i][1], &error));
      g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE);
    }
}

static void
test_again (void)
{
  g_autoptr (PpPanel) panel = read_text (PANEL (SQUARE, AT));
  g_autoptr (PpPanel) again = pp_again_new (panel);
  g_autoptr (GArray) list = pp_again_list_to_make (panel);

  g_assert_cmpstr (again->title, ==, "Another Sedge");
  g_assert_cmpuint (again->log->len, ==, 0);
  g_assert_null (again->wire->knotted_at);
  g_assert_cmpfloat (again->wire->length, ==, 110);
  for (guint i = 0; i < again->holes->len; i++)
    g_assert_false (pp_panel_hole (again, i)->drilled);
  for (guint i = 0; i < again->placements->len; i++)
    {
      const PpPlacement *now = pp_panel_placement (again, i), *then = pp_panel_placement (panel, i);

      g_assert_null (now->glued_at);
      g_assert_cmpstr (now->id, ==, then->id);
      assert_place (again, then->id, then->x, then->y);
      g_assert_cmpfloat (now->rotation, ==, then->rotation);
    }
  g_assert_true (again->background == panel->background);
  /* Three on the tray, two of them laid: one is left, and two are needed. */
  g_assert_cmpuint (list->len, ==, 1);
  g_assert_cmpuint (g_array_index (list, PpToMake, 0).count, ==, 1);
}

/* What the order minds first: faults of holes and knots, then mm that would show. */
static void
judge (const PpCheck *check,
       double         keys[2])
{
  double limit = pp_panel_get_limit (check->panel, PP_LIMIT_KNOT_SHARE);

  keys[0] = 0;
  for (guint i = 0; i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);

      keys[0] += finding->level == PP_LEVEL_FAULT
                 && (g_str_has_prefix (finding->code, "hole-")
                     || g_str_has_prefix (finding->code, "knot-"));
    }
  keys[1] = check->conceal->barely;
  for (guint k = 0; k < 2; k++)
    keys[1] += check->panel->wire->knot_diameter * fmax (0, limit - check->conceal->knots[k].barely);
}

static PpPanel *
drill_at (const PpPanel *panel,
          PpPoint        a,
          PpPoint        b)
{
  const PpPoint places[] = { a, b };
  const char *ids[] = { panel->wire->from, panel->wire->to };
  PpPanel *next = pp_panel_ref (panel);

  for (guint k = 0; k < 2; k++)
    {
      PpHole draft = *pp_panel_find_hole (next, ids[k], NULL);
      g_autoptr (PpHole) hole = NULL;
      PpPanel *moved;

      draft.x = places[k].x;
      draft.y = places[k].y;
      hole = pp_hole_new (&draft, NULL);
      moved = pp_edit_set_hole (next, hole, NULL);
      pp_panel_unref (next);
      next = moved;
    }
  return next;
}

#define PAIRS 12

/* No pair that dice throw is better. */
static void
test_drill (void)
{
  g_autoptr (PpPanel) panel = load_sample ("towpath-in-june");
  g_autoptr (PpCheck) check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  g_autoptr (PpPanel) drilled = pp_drill_new (check, NULL);
  g_autoptr (PpCheck) after = NULL;
  const PpHole *left, *right;
  PpDice dice = { 5 };
  double before[2], best[2];

  g_assert_nonnull (drilled);
  after = pp_check_new (drilled, NULL, NULL, NULL, NULL, NULL);
  judge (check, before);
  judge (after, best);
  g_assert_cmpfloat (before[0], >, 0); /* or this shows nothing */
  g_assert_cmpfloat (best[0], ==, 0);
  g_assert_cmpfloat (best[1], <, before[1]);
  left = pp_panel_find_hole (drilled, panel->wire->from, NULL);
  right = pp_panel_find_hole (drilled, panel->wire->to, NULL);
  g_assert_cmpfloat_with_epsilon (left->y, right->y, NEAR);
  g_assert_cmpfloat_with_epsilon ((left->x + right->x) / 2, check->mass.x, 1);
  g_assert_true (pp_panel_placement (drilled, 0) == pp_panel_placement (panel, 0));
  for (guint i = 0; i < PAIRS; i++)
    {
      double y = pp_dice_between (&dice, 60, 300), half = pp_dice_between (&dice, 25, 100);
      g_autoptr (PpPanel) other = drill_at (panel, (PpPoint) { check->mass.x - half, y },
                                            (PpPoint) { check->mass.x + half, y });
      g_autoptr (PpCheck) its = pp_check_new (other, check, NULL, NULL, NULL, NULL);
      double keys[2];

      judge (its, keys);
      g_assert_true (keys[0] > best[0] || keys[1] > best[1] - 0.1);
    }
}

static void
test_drill_none (void)
{
  g_autoptr (PpPanel) knotted = read_text (PANEL (SQUARE, AT));
  g_autoptr (PpPanel) bare = read_text (PANEL (SQUARE, "null"));
  g_autoptr (PpCheck) first = pp_check_new (knotted, NULL, NULL, NULL, NULL, NULL);
  g_autoptr (PpCheck) second = pp_check_new (bare, NULL, NULL, NULL, NULL, NULL);

  g_assert_null (pp_drill_new (first, NULL));
  g_assert_null (pp_drill_new (second, NULL)); /* two tiles hide no pair of knots */
}

/* Two holes of 8 mm in glass of 18 mm, on a taut wire over which hardly any height is hidden: the
 * edge is as near wherever they go, and 36 mm from rim to rim are asked for. */
#define THICK \
  "{\"format\": \"petalpane-panel\", \"version\": 1, \"background\": {\"shape\": \"rectangle\", " \
  "\"width\": 300, \"height\": 400, \"thickness\": 18}, \"holes\": [{\"id\": \"left\", \"x\": 129, " \
  "\"y\": 30, \"diameter\": 8}, {\"id\": \"right\", \"x\": 171, \"y\": 30, \"diameter\": 8}], " \
  "\"wire\": {\"from\": \"left\", \"to\": \"right\", \"length\": null}, \"tray\": [{\"id\": " \
  "\"tile\", \"kind\": \"filler\", \"thickness\": 4, \"outline\": {\"type\": \"Polygon\", " \
  "\"coordinates\": [[[-50,-10],[50,-10],[50,10],[-50,10],[-50,-10]]]}}], \"placements\": [" \
  "{\"id\": \"a\", \"piece\": \"tile\", \"x\": 150, \"y\": 56}]}"

static void
test_drill_thick (void)
{
  g_autoptr (PpPanel) panel = read_text (THICK);
  g_autoptr (PpCheck) check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  g_autoptr (PpPanel) drilled = pp_drill_new (check, NULL);
  const PpHole *left, *right;

  g_assert_nonnull (drilled);
  left = pp_panel_find_hole (drilled, "left", NULL);
  right = pp_panel_find_hole (drilled, "right", NULL);
  g_assert_cmpfloat (left->y, >, 30);
  g_assert_cmpfloat (right->x - left->x - 8, >=, 2 * 18);
}

/* How often a search asks whether to stop. */
static guint
count_asked (const PpPanel *panel,
             guint          most)
{
  g_autoptr (PpCheck) check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  g_autoptr (PpPanel) drilled = NULL;

  n_asked = 0;
  most_asked = most;
  drilled = pp_drill_new (check, NULL);
  most_asked = G_MAXUINT;
  return n_asked;
}

/* Pieces too few are no reason to look at holes that lie unevenly. */
static void
test_drill_other (void)
{
  g_autoptr (PpPanel) panel = load_sample ("walled-garden");
  PpPiece draft = *pp_panel_piece (panel, 0);
  g_autoptr (PpPiece) piece = NULL;
  g_autoptr (PpPanel) short_of = NULL;
  guint n;

  draft.count = 0;
  piece = pp_piece_new (&draft, NULL);
  short_of = pp_edit_set_piece (panel, piece, NULL);
  n = count_asked (panel, G_MAXUINT);
  g_assert_cmpuint (count_asked (short_of, G_MAXUINT), ==, n);
  g_assert_cmpuint (count_asked (panel, n / 4), <=, n / 4 + 4); /* each loop asks once more */
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/fit/rectangle", PANEL (SQUARE, "null"), test_fit);
  g_test_add_data_func ("/fit/free", PANEL (WEDGE, "null"), test_fit);
  g_test_add_func ("/fit/refused", test_refused);
  g_test_add_func ("/fit/again", test_again);
  g_test_add_func ("/fit/drill", test_drill);
  g_test_add_func ("/fit/drill-none", test_drill_none);
  g_test_add_func ("/fit/drill-thick", test_drill_thick);
  g_test_add_func ("/fit/drill-other", test_drill_other);
  return g_test_run ();
}
