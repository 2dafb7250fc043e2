/* test-hit.c: what lies under a point.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected answers are read off the arrangement by hand; where the line between two answers lies
 * is no part of the contract and not asked.
 */
#include "art/hit.h"

#include "panel/edit.h"

/* Glass of 100 x 80 with holes at (20, 10) and (80, 10), 4 wide, a wire between them; a bar of
 * 40 x 2 mm, a square of 20 mm with a hole of 10 mm in it, and a second square over its right half. */
static PpPanel *
make_panel (void)
{
  static const PpPoint bar[] = { { 0, 0 }, { 40, 0 }, { 40, 2 }, { 0, 2 }, { 0, 0 } };
  static const PpPoint frame[] = { { 0, 0 }, { 20, 0 }, { 20, 20 }, { 0, 20 }, { 0, 0 },
                                   { 5, 5 }, { 5, 15 }, { 15, 15 }, { 15, 5 }, { 5, 5 } };
  static const guint frame_lengths[] = { 5, 5 };
  static const PpPoint square[] = { { 0, 0 }, { 20, 0 }, { 20, 20 }, { 0, 20 }, { 0, 0 } };
  PpOutline *outlines[] = {
    pp_outline_new_ring (bar, 5), pp_outline_new (frame_lengths, 2, frame, NULL, NULL),
    pp_outline_new_ring (square, 5) };
  static const char * const ids[] = { "bar", "frame", "square" };
  static const PpPoint places[] = { { 10, 40 }, { 60, 40 }, { 70, 40 } };
  PpBackground glass = pp_background_draft ();
  PpPanel draft = pp_panel_draft ();
  PpWire wire = pp_wire_draft ();
  g_autoptr (GPtrArray) holes = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_hole_unref);
  g_autoptr (GPtrArray) tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  g_autoptr (GPtrArray) placements
    = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  PpPanel *panel;

  glass.width = 100;
  glass.height = 80;
  glass.thickness = 4;
  draft.background = pp_background_new (&glass, NULL);
  for (guint i = 0; i < 2; i++)
    {
      PpHole hole = pp_hole_draft ();

      hole.id = i == 0 ? "left" : "right";
      hole.x = i == 0 ? 20 : 80;
      hole.y = 10;
      hole.diameter = 4;
      g_ptr_array_add (holes, pp_hole_new (&hole, NULL));
    }
  wire.from = "left";
  wire.to = "right";
  draft.wire = pp_wire_new (&wire, NULL);
  for (guint i = 0; i < 3; i++)
    {
      PpPiece piece = pp_piece_draft ();
      PpPlacement placement = pp_placement_draft ();

      piece.id = ids[i];
      piece.name = ids[i];
      piece.thickness = 3;
      piece.outline = outlines[i];
      g_ptr_array_add (tray, pp_piece_new (&piece, NULL));
      placement.id = i == 0 ? "p1" : i == 1 ? "p2" : "p3";
      placement.piece = ids[i];
      placement.x = places[i].x;
      placement.y = places[i].y;
      g_ptr_array_add (placements, pp_placement_new (&placement, NULL));
      pp_outline_unref (outlines[i]);
    }
  draft.holes = holes;
  draft.tray = tray;
  draft.placements = placements;
  panel = pp_panel_new (&draft, NULL);
  g_assert_nonnull (panel);
  pp_background_unref (draft.background);
  pp_wire_unref (draft.wire);
  return panel;
}

typedef struct
{
  const char *name;
  PpPoint     p;
  double      reach;
  int         body;
} Row;

static const Row rows[] = {
  { "on-the-bar", { 30, 41 }, 0, 0 },
  { "beside-the-bar", { 30, 44 }, 0, PP_NO_INDEX },
  { "beside-the-bar-within-reach", { 30, 44 }, 2.5, 0 },
  { "beside-the-bar-past-reach", { 30, 44 }, 1.5, PP_NO_INDEX },
  { "on-the-frame", { 62, 50 }, 0, 1 },
  { "in-the-hole-of-the-frame", { 67, 50 }, 0, PP_NO_INDEX },
  { "hole-of-the-frame-within-reach-of-both", { 67, 50 }, 4, 1 },
  { "the-upper-of-two", { 78, 50 }, 0, 2 },
  { "upper-exactly-wins-over-near-lower", { 71, 50 }, 4, 2 },
  { "on-nothing", { 5, 75 }, 3, PP_NO_INDEX },
};

static void
test_body (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);

  g_assert_cmpint (pp_hit_body (scene, row->p, row->reach), ==, row->body);
}

static void
test_hole (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);

  g_assert_cmpint (pp_hit_hole (scene, (PpPoint) { 21, 11 }, 0), ==, 0);
  g_assert_cmpint (pp_hit_hole (scene, (PpPoint) { 78.5, 10 }, 0), ==, 1);
  g_assert_cmpint (pp_hit_hole (scene, (PpPoint) { 23, 10 }, 0), ==, PP_NO_INDEX);
  g_assert_cmpint (pp_hit_hole (scene, (PpPoint) { 23, 10 }, 1.5), ==, 0);
  g_assert_cmpint (pp_hit_hole (scene, (PpPoint) { 49, 10 }, 100), ==, 0);
}

static void
test_wire_and_glass (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);
  g_autoptr (PpPanel) bare = pp_edit_set_wire (panel, NULL, NULL);
  g_autoptr (PpScene) without = pp_scene_new (bare, NULL);

  g_assert_true (pp_hit_wire (scene, (PpPoint) { 50, 10.5 }, 0));
  g_assert_false (pp_hit_wire (scene, (PpPoint) { 50, 12 }, 1));
  g_assert_true (pp_hit_wire (scene, (PpPoint) { 50, 12 }, 2));
  g_assert_false (pp_hit_wire (scene, (PpPoint) { 90, 10 }, 2));
  g_assert_false (pp_hit_wire (without, (PpPoint) { 50, 10 }, 2));
  g_assert_true (pp_hit_glass (scene, (PpPoint) { 99, 79 }));
  g_assert_false (pp_hit_glass (scene, (PpPoint) { 101, 79 }));
}

static void
test_framed (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);

  g_assert_true (pp_hit_is_framed (scene, 0, (PpBox) { 9, 39, 51, 43 }));
  g_assert_false (pp_hit_is_framed (scene, 0, (PpBox) { 11, 39, 51, 43 }));
  g_assert_false (pp_hit_is_framed (scene, 0, (PpBox) { 9, 39, 51, 41 }));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/hit/body/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_body);
    }
  g_test_add_func ("/hit/hole", test_hole);
  g_test_add_func ("/hit/wire-and-glass", test_wire_and_glass);
  g_test_add_func ("/hit/framed", test_framed);
  return g_test_run ();
}
