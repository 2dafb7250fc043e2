/* test-placement-words.c: a placed piece in words, and what is said of how it rests.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/placement-words.h"

#include "panel/edit.h"

#include "small-panel.h"

#define INCH 25.4

/* Thirteen oxeyes, and a cornflower at `at` put into place 3 from the bottom. */
static PpPanel *
make_stack (PpUnits units,
            PpPoint at)
{
  const SmallPanel words = { .tray = "oxeye",
                             .placements = "q1 q2 q3 q4 q5 q6 q7 q8 q9 r1 r2 r3 r4" };
  g_autoptr (PpPanel) stack = small_panel_good (&words);
  g_autoptr (PpPanel) with_piece = NULL, placed = NULL, lowered = NULL;
  g_autoptr (PpPiece) oxeye = small_piece ("cornflower", NULL);
  g_autoptr (PpPiece) piece = NULL;
  g_autofree char *id = NULL;
  PpPiece draft = *oxeye;
  PpPose pose = { at.x, at.y, 0, FALSE };

  draft.name = "Cornflower";
  piece = pp_piece_new (&draft, NULL);
  with_piece = pp_edit_add_piece (stack, piece, NULL, NULL);
  placed = pp_edit_place (with_piece, "cornflower", pose, &id, NULL);
  lowered = pp_edit_restack (placed, id, 2, NULL);
  return pp_edit_set_units (lowered, units);
}

static void
test_name (void)
{
  static const struct
  {
    PpUnits     units;
    PpPoint     at;
    const char *expected;
  } rows[] = {
    /* The sentence of the design. */
    { PP_UNITS_INCH, { 4.75 * INCH, 6 * INCH },
      "Cornflower, 3 of 14, 4 3/4 in from the left, 6 in from the top" },
    { PP_UNITS_MM, { 120, 45 }, "Cornflower, 3 of 14, 120 mm from the left, 45 mm from the top" },
    { PP_UNITS_MM, { 0, 4.5 }, "Cornflower, 3 of 14, 0 mm from the left, 4.5 mm from the top" },
    { PP_UNITS_MM, { -12, 45 }, "Cornflower, 3 of 14, -12 mm from the left, 45 mm from the top" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (PpPanel) panel = make_stack (rows[i].units, rows[i].at);
      g_autofree char *name = pp_placement_words_name (panel, 2);

      g_assert_cmpstr (name, ==, rows[i].expected);
    }
}

/* Without a name a piece goes by its id. */
static void
test_nameless (void)
{
  const SmallPanel words = { .tray = "oxeye", .placements = "p1" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  g_autofree char *name = pp_placement_words_name (panel, 0);

  g_assert_cmpstr (name, ==, "oxeye, 1 of 1, 0 mm from the left, 0 mm from the top");
}

static void
test_rest (void)
{
  const PpOwner glass = PP_OWNER (PP_OWNER_BACKGROUND, 0);
  const PpOwner jug = PP_OWNER (PP_OWNER_FUSED, 0);
  const PpOwner knot = PP_OWNER (PP_OWNER_KNOT, 1);
  const PpOwner fern = PP_OWNER (PP_OWNER_PLACEMENT, 0);
  const PpOwner fern_again = PP_OWNER (PP_OWNER_PLACEMENT, 1);
  const PpOwner sedge = PP_OWNER (PP_OWNER_PLACEMENT, 2);
  const PpOwner iris = PP_OWNER (PP_OWNER_PLACEMENT, 3);
  const SmallPanel words = { .fused = "jug", .holes = "a b", .wire = "a b",
                             .tray = "fern sedge iris",
                             .placements = "p1:fern p2:fern p3:sedge p4:iris" };
  const struct
  {
    PpState     state;
    guint       n;
    PpOwner     owners[5];
    const char *expected;
  } rows[] = {
    { PP_STATE_STEADY, 1, { fern }, "on fern, sits firm" },
    { PP_STATE_STEADY, 2, { glass, fern }, "on fern and the glass, sits firm" },
    { PP_STATE_UNSTEADY, 2, { fern, fern_again }, "on fern, needs holding" },
    { PP_STATE_TIPS, 3, { jug, knot, sedge }, "on sedge, a knot and jug, needs a prop" },
    { PP_STATE_STEADY, 5, { glass, jug, fern, sedge, iris },
      "on iris, sedge and 3 more, sits firm" },
    { PP_STATE_STEADY, 5, { glass, fern, fern_again, sedge, iris },
      "on iris, sedge and 2 more, sits firm" },
    { PP_STATE_FLOATS, 0, { 0 }, "nothing under it" },
    { PP_STATE_STEADY, 0, { 0 }, "sits firm" },
  };
  g_autoptr (PpPanel) panel = small_panel_good (&words);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      PpRest rest = { .state = rows[i].state, .n_rests_on = rows[i].n,
                      .rests_on = (PpOwner *) rows[i].owners };
      g_autofree char *text = pp_placement_words_rest (panel, &rest);

      g_assert_cmpstr (text, ==, rows[i].expected);
    }
}

static void
note_cb (PpDocument *document,
         gboolean   *checked)
{
  *checked = TRUE;
}

/* The same through a document: nothing before the check, then what the check found. Two flat
 * squares nearly one upon the other, in the middle of the glass. */
static void
test_state (void)
{
  const SmallPanel words = { .tray = "fern oxeye", .placements = "p1:fern p2:oxeye" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  g_autoptr (PpPanel) laid
      = pp_edit_move (panel, (const char * const[]) { "p1", "p2", NULL }, 150, 200, NULL);
  g_autoptr (PpDocument) document = pp_document_new (laid, NULL);
  g_autofree char *before = pp_placement_words_state (document, "p1");
  g_autofree char *under = NULL, *over = NULL;
  gboolean checked = FALSE;

  g_assert_cmpstr (before, ==, "");
  g_signal_connect (document, "checked", G_CALLBACK (note_cb), &checked);
  while (!checked)
    g_main_context_iteration (NULL, TRUE);
  under = pp_placement_words_state (document, "p1");
  over = pp_placement_words_state (document, "p2");
  g_assert_cmpstr (under, ==, "on the glass, sits firm");
  g_assert_cmpstr (over, ==, "on fern, sits firm");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/placement-words/name", test_name);
  g_test_add_func ("/placement-words/nameless", test_nameless);
  g_test_add_func ("/placement-words/rest", test_rest);
  g_test_add_func ("/placement-words/state", test_state);
  return g_test_run ();
}
