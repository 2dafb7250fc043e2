/* test-stand.c: stems and the pockets they stand in, by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The jug is a rectangle from (100, 200) to (200, 350), its pocket's insert one from (115, 195) to
 * (185, 330). A stem is a strip 10 mm wide from 60 mm over its origin to 40 mm under it.
 */
#include "panel/edit.h"
#include "panel/new-panel.h"
#include "panel/tolerance.h"
#include "shape/stand.h"

#include "rings.h"

static PpPiece *
make_piece (const char *id,
            PpKind      kind)
{
  g_autoptr (PpOutline) strip = test_outline ("-5 -60, 5 -60, 5 40, -5 40");
  PpPiece draft = pp_piece_draft ();
  PpPiece *piece;

  draft.id = id;
  draft.kind = kind;
  draft.count = 9;
  draft.thickness = 4;
  draft.outline = strip;
  piece = pp_piece_new (&draft, NULL);
  g_assert_nonnull (piece);
  return piece;
}

static PpFused *
make_jug (void)
{
  g_autoptr (PpOutline) jug = test_outline ("100 200, 200 200, 200 350, 100 350");
  g_autoptr (PpOutline) insert = test_outline ("115 195, 185 195, 185 330, 115 330");
  PpFused draft = pp_fused_draft ();
  PpFused *fused;

  draft.id = "jug";
  draft.thickness = 3;
  draft.outline = jug;
  draft.has_pocket = TRUE;
  draft.pocket.insert_thickness = 6;
  draft.pocket.insert = insert;
  fused = pp_fused_new (&draft, NULL);
  g_assert_nonnull (fused);
  return fused;
}

/* Glass of 300 x 400 mm with the jug; places of stems and then of flowers, which are p1, p2, ... */
static PpPanel *
make_panel (const PpPose *stems,
            guint         n_stems,
            const PpPose *flowers,
            guint         n_flowers)
{
  g_autoptr (GPtrArray) tray
    = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  g_autoptr (PpFused) jug = make_jug ();
  PpNewPanel wish = pp_new_panel_wish (PP_UNITS_MM);
  g_autoptr (PpPanel) bare = NULL;
  PpPanel *panel;

  g_ptr_array_add (tray, make_piece ("sedge", PP_KIND_STEM));
  g_ptr_array_add (tray, make_piece ("oxeye", PP_KIND_FLOWER));
  wish.width = 300;
  wish.height = 400;
  bare = pp_new_panel (&wish, tray, NULL);
  panel = pp_edit_set_fused (bare, jug, NULL);
  for (guint i = 0; i < n_stems + n_flowers; i++)
    {
      g_autoptr (PpPanel) before = panel;

      panel = i < n_stems ? pp_edit_place (before, "sedge", stems[i], NULL, NULL)
                          : pp_edit_place (before, "oxeye", flowers[i - n_stems], NULL, NULL);
      g_assert_nonnull (panel);
    }
  return panel;
}

/* Where a stem lies, and whether its foot is in the pocket. */
static const struct
{
  PpPose   pose;
  gboolean stands;
} rows[] = {
  { { 150, 280, 0, FALSE }, TRUE },
  { { 150, 295, 0, FALSE }, FALSE },  /* through the bottom */
  { { 150, 150, 0, FALSE }, FALSE },  /* above the rim, though over the insert */
  { { 150, 159, 0, FALSE }, FALSE },
  { { 150, 161, 0, FALSE }, TRUE },
  { { 105, 260, 0, FALSE }, FALSE },  /* in the seam */
  { { 150, 240, 180, FALSE }, TRUE }, /* upside down: its other end is the foot */
  { { 150, 300, 180, FALSE }, FALSE },
  { { 50, 280, 0, FALSE }, FALSE },
  { { 150, 280, 30, FALSE }, TRUE },
  { { 128, 280, -30, FALSE }, TRUE },
};

static void
test_find (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (PpPanel) panel = make_panel (&rows[i].pose, 1, &rows[i].pose, 1);
      const PpFused *fused = pp_stand_find (panel, "p1");

      g_assert_cmpint (fused != NULL, ==, rows[i].stands);
      g_assert_null (pp_stand_find (panel, "p2"));
      g_assert_null (pp_stand_find (panel, "jug"));
    }
}

static const char *
get_pocket (const PpPanel *panel,
            const char    *id)
{
  return pp_panel_find_placement (panel, id, NULL)->pocket;
}

static void
test_follow (void)
{
  const PpPose at[] = { { 50, 280, 0, FALSE }, { 60, 280, 0, FALSE } };
  const char * const both[] = { "p1", "p3", NULL };
  g_autoptr (PpPanel) panel = make_panel (at, 2, at, 1);
  g_autoptr (PpPanel) in = pp_stand_follow (pp_edit_move (panel, both, 100, 0, NULL), both, NULL);
  g_autoptr (PpPanel) out = pp_stand_follow (pp_edit_move (in, both, -100, 0, NULL), both, NULL);
  PpPanel *same = pp_stand_follow (pp_panel_ref (out), both, NULL);
  g_autoptr (PpPanel) by_hand = NULL;

  g_assert_cmpstr (get_pocket (in, "p1"), ==, "jug");
  g_assert_null (get_pocket (in, "p2"));
  g_assert_null (get_pocket (in, "p3")); /* no stem */
  g_assert_null (get_pocket (out, "p1"));
  g_assert_true (same == out);
  pp_panel_unref (same);
  g_assert_null (pp_stand_follow (NULL, both, NULL));
  /* What is no stem stays in a pocket that it was put into by hand. */
  by_hand = pp_stand_follow (pp_edit_set_pocket (out, "p3", "jug", NULL), both, NULL);
  g_assert_cmpstr (get_pocket (by_hand, "p3"), ==, "jug");
}

/* What takes its place stands in it only if it is a stem too. */
static void
test_swap (void)
{
  const PpPose at = { 150, 280, 0, FALSE };
  const char * const one[] = { "p1", NULL };
  g_autoptr (PpPanel) panel = make_panel (&at, 1, NULL, 0);
  g_autoptr (PpPanel) in = pp_edit_set_pocket (panel, one[0], "jug", NULL);
  g_autoptr (PpPanel) stem = pp_edit_swap (in, one[0], "sedge", NULL);
  g_autoptr (PpPanel) flower = pp_edit_swap (in, one[0], "oxeye", NULL);

  g_assert_cmpstr (get_pocket (stem, one[0]), ==, "jug");
  g_assert_null (get_pocket (flower, one[0]));
}

/* Three stems side by side over 70 mm, in the order they came in, their feet 1 mm over the bottom. */
static void
test_into (void)
{
  const PpPose at[] = { { 250, 90, 0, FALSE }, { 40, 300, 0, FALSE }, { 130, 60, 180, FALSE } };
  const char * const all[] = { "p1", "p2", "p3", "p4", NULL };
  g_autoptr (PpPanel) panel = make_panel (at, 3, at, 1);
  g_autoptr (PpPanel) next = pp_stand_into (panel, all, "jug", NULL);
  const struct
  {
    const char *id;
    PpPoint     at;
  } then[] = {
    { "p2", { 115 + 70 / 6.0, 329 - 40 } },
    { "p3", { 150, 329 - 60 } },
    { "p1", { 115 + 70 * 5 / 6.0, 329 - 40 } },
    { "p4", { 250, 90 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (then); i++)
    {
      const PpPlacement *placed = pp_panel_find_placement (next, then[i].id, NULL);

      g_assert_cmpfloat_with_epsilon (placed->x, then[i].at.x, PP_TIE);
      g_assert_cmpfloat_with_epsilon (placed->y, then[i].at.y, PP_TIE);
      g_assert_cmpstr (placed->pocket, ==, i < 3 ? "jug" : NULL);
      if (i < 3)
        g_assert_nonnull (pp_stand_find (next, then[i].id));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stand/find", test_find);
  g_test_add_func ("/stand/follow", test_follow);
  g_test_add_func ("/stand/swap", test_swap);
  g_test_add_func ("/stand/into", test_into);
  return g_test_run ();
}
