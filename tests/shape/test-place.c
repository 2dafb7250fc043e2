/* test-place.c: placing a piece, to the panel frame and back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "rings.h"
#include "shape/place.h"
#include "shape/polygon.h"

/* By hand from the formula: (u, v) = (10, 4), origin at (100, 50). Clockwise as seen, y down: a
 * quarter turn sends right to down. */
typedef struct
{
  const char *name;
  double      rotation;
  gboolean    mirrored;
  PpPoint     placed;
} Placed;

static const Placed placed[] = {
  { "as-it-is", 0, FALSE, { 110, 54 } },
  { "quarter", 90, FALSE, { 96, 60 } },
  { "half", 180, FALSE, { 90, 46 } },
  { "three-quarters-back", -90, FALSE, { 104, 40 } },
  { "round-and-a-quarter", 450, FALSE, { 96, 60 } },
  { "mirrored", 0, TRUE, { 90, 54 } },
  { "mirrored-then-quarter", 90, TRUE, { 96, 40 } },
  { "thirty", 30, FALSE, { 100 + 10 * 0.86602540378443865 - 4 * 0.5,
                           50 + 10 * 0.5 + 4 * 0.86602540378443865 } },
};

static PpFrame
frame_of (const Placed *row)
{
  PpPlacement placement = pp_placement_draft ();

  placement.x = 100;
  placement.y = 50;
  placement.rotation = row->rotation;
  placement.mirrored = row->mirrored;
  return pp_frame_of (&placement);
}

static void
test_placed (gconstpointer data)
{
  const Placed *row = data;
  PpFrame frame = frame_of (row);
  PpPoint own = { 10, 4 };
  PpPoint there = pp_frame_to_panel (&frame, own);
  PpPoint back = pp_frame_to_piece (&frame, there);

  g_assert_cmpfloat_with_epsilon (there.x, row->placed.x, 1e-12);
  g_assert_cmpfloat_with_epsilon (there.y, row->placed.y, 1e-12);
  g_assert_cmpfloat_with_epsilon (back.x, own.x, 1e-12);
  g_assert_cmpfloat_with_epsilon (back.y, own.y, 1e-12);
}

/* Right angles must not smear coordinates: a square stays on the grid's lines. */
static void
test_exact (void)
{
  for (int turn = -8; turn <= 8; turn++)
    {
      Placed row = { .rotation = 90.0 * turn };
      PpFrame frame = frame_of (&row);
      PpPoint p = pp_frame_to_panel (&frame, (PpPoint) { 0.25, 0.75 });

      g_assert_cmpfloat (p.x * 4, ==, round (p.x * 4));
      g_assert_cmpfloat (p.y * 4, ==, round (p.y * 4));
    }
}

static void
test_outline_placed (void)
{
  g_autoptr (PpOutline) own = test_outline ("0 0, 6 0, 6 4, 0 4; 1 1, 2 1, 2 2, 1 2");
  PpPiece piece = pp_piece_draft ();
  PpPlacement placement = pp_placement_draft ();
  g_autoptr (PpOutline) there = NULL;
  PpPoint centroid;

  piece.outline = own;
  placement.x = 10;
  placement.y = 20;
  placement.rotation = 90;
  placement.mirrored = TRUE;
  there = pp_place_outline (&piece, &placement);
  centroid = pp_outline_centroid (own);
  g_assert_cmpuint (pp_outline_get_n_rings (there), ==, 2);
  g_assert_cmpfloat_with_epsilon (pp_outline_area (there), 23, 1e-12);
  g_assert_cmpfloat_with_epsilon (pp_outline_centroid (there).x, 10 - centroid.y, 1e-12);
  g_assert_cmpfloat_with_epsilon (pp_outline_centroid (there).y, 20 - centroid.x, 1e-12);
}

/* Made by hand: a panel with two placements of a piece 6 x 4 mm whose origin is its corner. */
static PpPanel *
make_panel (void)
{
  g_autoptr (PpOutline) own = test_outline ("0 0, 6 0, 6 4, 0 4");
  PpBackground background_draft = pp_background_draft ();
  PpPiece piece_draft = pp_piece_draft ();
  PpPlacement draft = pp_placement_draft ();
  g_autoptr (GPtrArray) tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  g_autoptr (PpBackground) background = NULL;
  PpPanel panel = pp_panel_draft ();

  background_draft.width = background_draft.height = 100;
  background_draft.thickness = 6;
  background = pp_background_new (&background_draft, NULL);
  piece_draft.id = "sedge";
  piece_draft.thickness = 5;
  piece_draft.outline = own;
  g_ptr_array_add (tray, pp_piece_new (&piece_draft, NULL));
  draft.piece = "sedge";
  draft.id = "a";
  draft.x = 10;
  g_ptr_array_add (list, pp_placement_new (&draft, NULL));
  draft.id = "b";
  draft.y = 20;
  draft.rotation = 90;
  g_ptr_array_add (list, pp_placement_new (&draft, NULL));
  panel.background = background;
  panel.tray = tray;
  panel.placements = list;
  return pp_panel_new (&panel, NULL);
}

typedef struct
{
  const char *ids;
  PpBox       box;
} Boxed;

static const Boxed boxed[] = {
  { "a", { 10, 0, 16, 4 } },
  { "b", { 6, 20, 10, 26 } },
  { "a b", { 6, 0, 16, 26 } },
  { "b left a", { 6, 0, 16, 26 } },
};

static void
test_box (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  const char * const none[] = { "left", NULL };

  for (guint i = 0; i < G_N_ELEMENTS (boxed); i++)
    {
      g_auto (GStrv) ids = g_strsplit (boxed[i].ids, " ", -1);
      PpBox box = pp_place_box (panel, (const char * const *) ids);

      g_assert_cmpfloat (box.x0, ==, boxed[i].box.x0);
      g_assert_cmpfloat (box.y0, ==, boxed[i].box.y0);
      g_assert_cmpfloat (box.x1, ==, boxed[i].box.x1);
      g_assert_cmpfloat (box.y1, ==, boxed[i].box.y1);
    }
  g_assert_true (pp_box_is_empty (pp_place_box (panel, none)));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (placed); i++)
    {
      g_autofree char *path = g_strconcat ("/place/", placed[i].name, NULL);

      g_test_add_data_func (path, &placed[i], test_placed);
    }
  g_test_add_func ("/place/exact", test_exact);
  g_test_add_func ("/place/outline", test_outline_placed);
  g_test_add_func ("/place/box", test_box);
  return g_test_run ();
}
