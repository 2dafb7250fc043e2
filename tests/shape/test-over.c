/* test-over.c: what lies over and under a piece in the stack, by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Slips of 40 x 20 mm, from the bottom: a at (100, 100), b beside it and apart, c over a by a hair, d
 * half over a and over c, e across a and d.
 */
#include "panel/edit.h"
#include "panel/new-panel.h"
#include "shape/over.h"

#include "rings.h"

#define A 0
#define B 1
#define C 2
#define D 3
#define E 4

static const PpPose poses[] = {
  [A] = { 100, 100, 0, FALSE },
  [B] = { 200, 100, 0, FALSE },
  [C] = { 139.96, 100, 0, FALSE }, /* 0.8 mm² of it over a: less than counts */
  [D] = { 120, 100, 0, FALSE },
  [E] = { 100, 100, 90, FALSE },
};

/* (transfer full) */
static PpPanel *
make_panel (void)
{
  g_autoptr (PpOutline) outline = test_outline ("-20 -10, 20 -10, 20 10, -20 10");
  g_autoptr (GPtrArray) tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  PpNewPanel wish = pp_new_panel_wish (PP_UNITS_MM);
  PpPiece draft = pp_piece_draft ();
  PpPanel *panel;

  draft.id = "slip";
  draft.count = 9;
  draft.thickness = 3;
  draft.outline = outline;
  g_ptr_array_add (tray, pp_piece_new (&draft, NULL));
  panel = pp_new_panel (&wish, tray, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (poses); i++)
    {
      g_autoptr (PpPanel) before = panel;

      panel = pp_edit_place (before, "slip", poses[i], NULL, NULL);
    }
  return panel;
}

static const struct
{
  guint index;
  int   over;
  int   under;
} rows[] = {
  { A, D, PP_NO_INDEX },
  { B, PP_NO_INDEX, PP_NO_INDEX },
  { C, D, PP_NO_INDEX },
  { D, E, C },
  { E, PP_NO_INDEX, D },
};

static void
test_next (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_assert_cmpint (pp_over_next (scene, rows[i].index, TRUE), ==, rows[i].over);
      g_assert_cmpint (pp_over_next (scene, rows[i].index, FALSE), ==, rows[i].under);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/over/next", test_next);
  return g_test_run ();
}
