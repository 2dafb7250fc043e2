/* test-even.c: places that even an arrangement out, and pieces at equal distances; by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/even.h"

#include "panel/edit.h"
#include "panel/panel-error.h"
#include "panel/tolerance.h"

#include "small-panel.h"

#define MIDDLE 150
#define REACH 4

static const PpPoint others[] = { { 40, 100 }, { 80, 110 }, { 200, 300 } };

static const struct
{
  PpPoint    asked;
  PpEvenKind kind;
  PpPoint    at;
} rows[] = {
  { { 61, 104 }, PP_EVEN_BETWEEN, { 60, 105 } },
  { { 122, 121 }, PP_EVEN_ONWARD, { 120, 120 } },   /* on from (40, 100) past (80, 110) */
  { { 0, 88 }, PP_EVEN_ONWARD, { 0, 90 } },         /* and the other way */
  { { 259, 101 }, PP_EVEN_OPPOSITE, { 260, 100 } },
  { { 102, 298 }, PP_EVEN_OPPOSITE, { 100, 300 } },
  { { 149, 20 }, PP_EVEN_MIDDLE, { 150, 20 } },
  { { 147, 20 }, PP_EVEN_MIDDLE, { 150, 20 } },
  { { 145, 20 }, PP_EVEN_NONE, { 145, 20 } },       /* out of reach */
  { { 250, 20 }, PP_EVEN_NONE, { 250, 20 } },
};

static void
test_find (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      PpEven even = pp_even_find (others, G_N_ELEMENTS (others), rows[i].asked, MIDDLE, REACH);

      g_assert_cmpint (even.kind, ==, rows[i].kind);
      g_assert_cmpfloat_with_epsilon (even.at.x, rows[i].at.x, PP_TIE);
      g_assert_cmpfloat_with_epsilon (even.at.y, rows[i].at.y, PP_TIE);
    }
}

/* What is found is even, wherever it is asked for and however many there are. */
static void
test_is_even (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (7);
  PpPoint many[60];
  guint n_found = 0;

  for (guint i = 0; i < G_N_ELEMENTS (many); i++)
    many[i] = (PpPoint) { g_rand_double_range (dice, 0, 300), g_rand_double_range (dice, 0, 400) };
  for (guint i = 0; i < 400; i++)
    {
      PpPoint p = { g_rand_double_range (dice, 0, 300), g_rand_double_range (dice, 0, 400) };
      PpEven even = pp_even_find (many, G_N_ELEMENTS (many), p, MIDDLE, 30);
      double a = pp_point_distance (even.at, even.a), b = pp_point_distance (even.at, even.b);

      g_assert_cmpfloat (pp_point_distance (even.at, p), <=, 30);
      n_found += even.kind != PP_EVEN_NONE;
      if (even.kind == PP_EVEN_BETWEEN)
        g_assert_cmpfloat_with_epsilon (a, b, PP_TIE);
      if (even.kind == PP_EVEN_ONWARD)
        {
          g_assert_cmpfloat_with_epsilon (b, pp_point_distance (even.a, even.b), PP_TIE);
          g_assert_cmpfloat_with_epsilon (a, 2 * b, PP_TIE);
        }
      if (even.kind == PP_EVEN_OPPOSITE)
        g_assert_cmpfloat_with_epsilon (even.at.x - MIDDLE, MIDDLE - even.a.x, PP_TIE);
    }
  g_assert_cmpuint (n_found, >, 200);
}

static void
test_few (void)
{
  const PpPoint twice[] = { { 10, 10 }, { 10, 10 }, { MIDDLE, 50 } };

  g_assert_cmpint (pp_even_find (NULL, 0, (PpPoint) { 9, 9 }, MIDDLE, REACH).kind, ==, PP_EVEN_NONE);
  g_assert_cmpint (pp_even_find (NULL, 0, (PpPoint) { 151, 9 }, MIDDLE, REACH).kind, ==,
                   PP_EVEN_MIDDLE);
  /* Two at one place are no pair, and one on the line is not opposite to itself. */
  g_assert_cmpint (pp_even_find (twice, 2, (PpPoint) { 11, 10 }, MIDDLE, REACH).kind, ==,
                   PP_EVEN_NONE);
  g_assert_cmpint (pp_even_find (twice + 2, 1, (PpPoint) { 150, 51 }, MIDDLE, REACH).kind, ==,
                   PP_EVEN_MIDDLE);
}

static PpPanel *
put_at (const PpPanel *panel,
        const char    *id,
        double         x,
        double         y)
{
  return pp_edit_set_pose (panel, id, (PpPose) { x, y, 0, FALSE }, NULL);
}

/* Four in a row that is wider than tall: only across, the outermost stay, and down they keep. */
static void
test_spaced (void)
{
  const SmallPanel words = { .tray = "oxeye", .placements = "p1 p2 p3 p4 p5" };
  const char * const ids[] = { "p3", "p1", "p4", "p2", NULL };
  const char * const two[] = { "p1", "p4", NULL };
  const char * const unknown[] = { "p1", "x", NULL };
  g_autoptr (PpPanel) start = small_panel_good (&words);
  g_autoptr (PpPanel) a = put_at (start, "p1", 100, 50);
  g_autoptr (PpPanel) b = put_at (a, "p2", 12, 70);
  g_autoptr (PpPanel) c = put_at (b, "p3", 90, 90);
  g_autoptr (PpPanel) d = put_at (c, "p4", 15, 60);
  g_autoptr (PpPanel) next = pp_edit_space_evenly (d, ids, NULL);
  g_autoptr (PpPanel) same = pp_edit_space_evenly (d, two, NULL);
  g_autoptr (GError) error = NULL;
  const double x[] = { 100, 12, 12 + 88.0 * 2 / 3, 12 + 88.0 / 3 }, y[] = { 50, 70, 90, 60 };

  for (guint i = 0; i < 4; i++)
    {
      g_assert_cmpfloat_with_epsilon (pp_panel_placement (next, i)->x, x[i], PP_TIE);
      g_assert_cmpfloat_with_epsilon (pp_panel_placement (next, i)->y, y[i], PP_TIE);
    }
  g_assert_true (pp_panel_placement (next, 4) == pp_panel_placement (d, 4));
  g_assert_true (pp_panel_placement (same, 0) == pp_panel_placement (d, 0));
  g_assert_null (pp_edit_space_evenly (d, unknown, &error));
  small_assert_error (error, PP_PANEL_ERROR_REFERENCE, "There is no “x”");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/even/find", test_find);
  g_test_add_func ("/even/is-even", test_is_even);
  g_test_add_func ("/even/few", test_few);
  g_test_add_func ("/even/spaced", test_spaced);
  return g_test_run ();
}
