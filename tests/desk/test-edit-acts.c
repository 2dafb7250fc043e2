/* test-edit-acts.c: what is done to the chosen things, what it is called, and what it tells.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/edit-acts.h"

#include "panel/edit.h"
#include "panel/tolerance.h"

#include "small-panel.h"

#include <string.h>

/* A document, and what it last refused. */
typedef struct
{
  PpDocument *document;
  char       *refused;
} Desk;

static void
refused_cb (PpDocument *document,
            const char *sentence,
            Desk       *desk)
{
  g_free (desk->refused);
  desk->refused = g_strdup (sentence);
}

static void
choose (Desk       *desk,
        PpChosen    chosen,
        const char *ids)
{
  g_auto (GStrv) words = g_strsplit (ids, " ", -1);

  pp_document_choose (desk->document, chosen, (const char * const *) words);
}

static const SmallPanel start = {
  .holes = "left right top", .wire = "left right", .tray = "oxeye", .placements = "p1 p2 p3 p4",
};

/* The i-th piece lies at (i, 2 i), turned by 15 i degrees (small-panel.h). */
static Desk *
desk_new (const char *chosen)
{
  Desk *desk = g_new0 (Desk, 1);
  g_autoptr (PpPanel) panel = small_panel_good (&start);

  desk->document = pp_document_new (panel, NULL);
  g_signal_connect (desk->document, "refused", G_CALLBACK (refused_cb), desk);
  choose (desk, PP_CHOSEN_PLACEMENTS, chosen);
  return desk;
}

static void
desk_free (Desk *desk)
{
  g_object_unref (desk->document);
  g_free (desk->refused);
  g_free (desk);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Desk, desk_free)

static const PpPanel *
get_panel (Desk *desk)
{
  return pp_document_get_panel (desk->document);
}

static const PpPlacement *
get (Desk       *desk,
     const char *id)
{
  return pp_panel_find_placement (get_panel (desk), id, NULL);
}

/* Replaces the panel, outside of any act. */
static void
prepare (Desk    *desk,
         PpPanel *next)
{
  g_assert_true (pp_document_take (desk->document, next, NULL, "before", NULL));
}

static void
pin (Desk       *desk,
     const char *id)
{
  const char * const ids[] = { id, NULL };

  prepare (desk, pp_edit_pin (get_panel (desk), ids, TRUE, NULL));
}

static void
join (Desk       *desk,
      const char *ids,
      const char *name)
{
  g_auto (GStrv) words = g_strsplit (ids, " ", -1);

  prepare (desk, pp_edit_group (get_panel (desk), (const char * const *) words, name, NULL));
}

static void
check_stack (Desk       *desk,
             const char *expected)
{
  const SmallPanel words = { .placements = expected };

  small_panel_compare (get_panel (desk), &words);
}

static void
check_chosen (Desk       *desk,
              const char *expected)
{
  g_autofree char *ids
    = g_strjoinv (" ", (char **) pp_document_get_chosen_ids (desk->document));

  g_assert_cmpstr (ids, ==, expected);
}

static void
check_at (Desk       *desk,
          const char *id,
          double      x,
          double      y)
{
  g_assert_cmpfloat_with_epsilon (get (desk, id)->x, x, PP_TIE);
  g_assert_cmpfloat_with_epsilon (get (desk, id)->y, y, PP_TIE);
}

/* By hand: (0, 0) and (2, 4) a quarter clockwise, y down, about (1, 2). */
static void
test_turn (void)
{
  g_autoptr (Desk) desk = desk_new ("p1 p3");

  pp_edit_acts_turn (desk->document, 90);
  check_at (desk, "p1", 3, 1);
  check_at (desk, "p3", -1, 3);
  check_at (desk, "p2", 1, 2);
  g_assert_cmpfloat (get (desk, "p1")->rotation, ==, 90);
  g_assert_cmpfloat (get (desk, "p3")->rotation, ==, 120);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Turn 2 pieces");
  g_assert_null (desk->refused);
}

static void
test_turn_one (void)
{
  g_autoptr (Desk) desk = desk_new ("p3");

  pp_edit_acts_turn (desk->document, 1);
  g_assert_cmpfloat (get (desk, "p3")->x, ==, 2);
  g_assert_cmpfloat (get (desk, "p3")->y, ==, 4);
  g_assert_cmpfloat (get (desk, "p3")->rotation, ==, 31);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Turn oxeye");
}

/* All the way round in steps, which are one step of undo. */
static void
test_turn_round (void)
{
  g_autoptr (Desk) desk = desk_new ("p1 p2 p4");
  const PpPanel *before = get_panel (desk);

  for (guint i = 0; i < 24; i++)
    pp_edit_acts_turn (desk->document, 15);
  check_at (desk, "p1", 0, 0);
  check_at (desk, "p2", 1, 2);
  check_at (desk, "p4", 3, 6);
  pp_document_undo (desk->document);
  g_assert_true (get_panel (desk) == before);
  g_assert_null (pp_document_get_undo (desk->document));
}

static void
test_turn_others (void)
{
  g_autoptr (Desk) desk = desk_new ("p1");
  g_autoptr (PpPanel) first = NULL;

  pp_edit_acts_turn (desk->document, 15);
  first = pp_panel_ref (get_panel (desk));
  choose (desk, PP_CHOSEN_PLACEMENTS, "p2");
  pp_edit_acts_turn (desk->document, 15);
  pp_document_undo (desk->document);
  g_assert_true (get_panel (desk) == first);
}

/* Squares 20 mm wide, the second turned by 30 degrees: their box reaches from -10 to
 * 40 + 10 (sin 30 + cos 30). */
static void
test_mirror (void)
{
  g_autoptr (Desk) desk = desk_new ("p1 p3");
  double axis = (-10 + 40 + 10 * (0.5 + 0.86602540378443865)) / 2;

  prepare (desk, pp_edit_set_pose (get_panel (desk), "p3", (PpPose) { 40, 4, 30, FALSE }, NULL));
  pp_edit_acts_mirror (desk->document);
  check_at (desk, "p1", 2 * axis, 0);
  check_at (desk, "p3", 2 * axis - 40, 4);
  g_assert_true (get (desk, "p1")->mirrored);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Mirror 2 pieces");
  pp_edit_acts_mirror (desk->document);
  check_at (desk, "p1", 0, 0);
  check_at (desk, "p3", 40, 4);
  g_assert_false (get (desk, "p1")->mirrored);
}

/* Both turned by 45 degrees, 40 mm apart: the foot of p1 is in the pocket of the jug, which
 * reaches 10 mm from (0, 0); of a quarter turn about the middle it comes 28 mm above that. */
static Desk *
desk_new_with_stem (void)
{
  Desk *desk = desk_new ("p1 p3");
  g_autoptr (PpFused) jug = small_fused ("jug+");
  PpPiece draft = *pp_panel_find_piece (get_panel (desk), "oxeye", NULL);
  g_autoptr (PpPiece) stem = NULL;

  draft.kind = PP_KIND_STEM;
  stem = pp_piece_new (&draft, NULL);
  prepare (desk, pp_edit_set_piece (get_panel (desk), stem, NULL));
  prepare (desk, pp_edit_set_fused (get_panel (desk), jug, NULL));
  prepare (desk, pp_edit_set_pose (get_panel (desk), "p1", (PpPose) { 0, -8, 45, FALSE }, NULL));
  prepare (desk, pp_edit_set_pose (get_panel (desk), "p3", (PpPose) { 40, -8, 45, FALSE }, NULL));
  prepare (desk, pp_edit_set_pocket (get_panel (desk), "p1", "jug", NULL));
  return desk;
}

static void
test_turn_stem (void)
{
  g_autoptr (Desk) desk = desk_new_with_stem ();

  pp_edit_acts_turn (desk->document, 90);
  check_at (desk, "p1", 20, -28);
  g_assert_null (get (desk, "p1")->pocket);
  pp_edit_acts_turn (desk->document, -90);
  g_assert_cmpstr (get (desk, "p1")->pocket, ==, "jug");
  g_assert_null (get (desk, "p3")->pocket);
}

static void
test_mirror_stem (void)
{
  g_autoptr (Desk) desk = desk_new_with_stem ();

  pp_edit_acts_mirror (desk->document);
  check_at (desk, "p3", 0, -8);
  g_assert_null (get (desk, "p1")->pocket);
  g_assert_cmpstr (get (desk, "p3")->pocket, ==, "jug");
}

static void
test_some_stay_put (void)
{
  g_autoptr (Desk) desk = desk_new ("p1 p2");

  pin (desk, "p2");
  pp_edit_acts_turn (desk->document, 15);
  g_assert_cmpfloat (get (desk, "p1")->rotation, ==, 15);
  g_assert_cmpfloat (get (desk, "p1")->x, ==, 0);
  g_assert_cmpfloat (get (desk, "p2")->rotation, ==, 15);
  g_assert_cmpstr (desk->refused, ==, "oxeye stays put and was left as it is.");
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Turn oxeye");
  pp_edit_acts_mirror (desk->document);
  g_assert_true (get (desk, "p1")->mirrored);
  g_assert_false (get (desk, "p2")->mirrored);
}

static void
test_all_stay_put (void)
{
  g_autoptr (Desk) desk = desk_new ("p1 p2");
  const PpPanel *before;

  pin (desk, "p1");
  pin (desk, "p2");
  before = get_panel (desk);
  pp_edit_acts_turn (desk->document, 15);
  pp_edit_acts_mirror (desk->document);
  g_assert_true (get_panel (desk) == before);
  g_assert_cmpstr (desk->refused, ==, "2 pieces stay put. Let them go on their card first.");
}

typedef struct
{
  const char      *chosen;
  const PpActKind *act;
  const char      *stack;
  const char      *label; /* NULL: nothing to do */
} Restack;

static const Restack restacks[] = {
  { "p1", &pp_lift_act, "p2 p1 p3 p4", "Lift oxeye" },
  { "p1 p2", &pp_lift_act, "p3 p1 p2 p4", "Lift 2 pieces" },
  { "p4", &pp_lift_act, "p1 p2 p3 p4", NULL },
  { "p2", &pp_lower_act, "p2 p1 p3 p4", "Lower oxeye" },
  { "p1", &pp_lower_act, "p1 p2 p3 p4", NULL },
  { "p1 p3", &pp_to_top_act, "p2 p4 p1 p3", "Lift 2 pieces to the top" },
  { "p3 p4", &pp_to_top_act, "p1 p2 p3 p4", NULL },
  { "p2", &pp_to_top_act, "p1 p3 p4 p2", "Lift oxeye to the top" },
  { "p2 p4", &pp_to_bottom_act, "p2 p4 p1 p3", "Lower 2 pieces to the bottom" },
  { "p1 p2 p3", &pp_to_bottom_act, "p1 p2 p3 p4", NULL },
};

static void
test_restack (gconstpointer data)
{
  const Restack *row = data;
  g_autoptr (Desk) desk = desk_new (row->chosen);

  pp_edit_acts_do (desk->document, row->act);
  check_stack (desk, row->stack);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, row->label);
  check_chosen (desk, row->chosen);
}

static void
test_group (void)
{
  g_autoptr (Desk) desk = desk_new ("p1 p3");

  pp_edit_acts_do (desk->document, &pp_group_act);
  g_assert_cmpstr (get (desk, "p1")->group, ==, "group-1");
  g_assert_cmpstr (get (desk, "p3")->group, ==, "group-1");
  g_assert_null (get (desk, "p2")->group);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Group 2 pieces");
  pp_edit_acts_do (desk->document, &pp_ungroup_act);
  g_assert_null (get (desk, "p1")->group);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Ungroup 2 pieces");
}

static void
test_pin (void)
{
  g_autoptr (Desk) desk = desk_new ("p2");

  pp_edit_acts_pin (desk->document, TRUE);
  g_assert_true (get (desk, "p2")->pinned);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Let oxeye stay put");
  pp_edit_acts_pin (desk->document, FALSE);
  g_assert_false (get (desk, "p2")->pinned);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Let oxeye go");
}

static void
test_duplicate (void)
{
  g_autoptr (Desk) desk = desk_new ("p2 p3");

  pp_edit_acts_duplicate (desk->document);
  check_stack (desk, "p1 p2 p3 p4 p5 p6");
  check_chosen (desk, "p5 p6");
  check_at (desk, "p5", 11, 12);
  check_at (desk, "p6", 12, 14);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Duplicate 2 pieces");
  prepare (desk, pp_edit_set_units (get_panel (desk), PP_UNITS_INCH));
  pp_edit_acts_duplicate (desk->document);
  check_at (desk, "p7", 11 + 12.7, 12 + 12.7);
}

/* "bed" is copied whole; of "edge" one is. */
static void
test_duplicate_groups (void)
{
  g_autoptr (Desk) desk = desk_new ("p1 p2 p3");

  join (desk, "p1 p2", "bed");
  join (desk, "p3 p4", "edge");
  pp_edit_acts_duplicate (desk->document);
  check_chosen (desk, "p5 p6 p7");
  g_assert_cmpstr (get (desk, "p5")->group, ==, "group-1");
  g_assert_cmpstr (get (desk, "p6")->group, ==, "group-1");
  g_assert_cmpstr (get (desk, "p7")->group, ==, "edge");
  g_assert_cmpstr (get (desk, "p1")->group, ==, "bed");
}

static void
test_remove (void)
{
  g_autoptr (Desk) desk = desk_new ("p2 p4");

  pp_edit_acts_remove (desk->document, PP_ACT_REMOVE);
  check_stack (desk, "p1 p3");
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Take 2 pieces off");
  g_assert_true (pp_document_get_chosen (desk->document) == PP_CHOSEN_NOTHING);
  choose (desk, PP_CHOSEN_PLACEMENTS, "p1");
  pp_edit_acts_remove (desk->document, PP_ACT_CUT);
  g_assert_cmpstr (pp_document_get_undo (desk->document), ==, "Cut oxeye");
}

static void
test_remove_wire (void)
{
  g_autoptr (Desk) desk = desk_new ("");
  const SmallPanel words = { .holes = "right top", .wire = "" };

  choose (desk, PP_CHOSEN_HOLE, "left");
  pp_edit_acts_remove (desk->document, PP_ACT_REMOVE);
  g_assert_nonnull (desk->refused);
  g_assert_null (pp_document_get_undo (desk->document));
  choose (desk, PP_CHOSEN_WIRE, "");
  pp_edit_acts_remove (desk->document, PP_ACT_REMOVE);
  choose (desk, PP_CHOSEN_HOLE, "left");
  pp_edit_acts_remove (desk->document, PP_ACT_REMOVE);
  small_panel_compare (get_panel (desk), &words);
}

/* The glass itself, or nothing: no act does anything, and none says so. */
static void
test_nothing (void)
{
  g_autoptr (Desk) desk = desk_new ("");
  const PpPanel *before = get_panel (desk);

  for (PpChosen chosen = PP_CHOSEN_NOTHING; chosen <= PP_CHOSEN_GLASS;
       chosen += PP_CHOSEN_GLASS - PP_CHOSEN_NOTHING)
    {
      choose (desk, chosen, "");
      pp_edit_acts_turn (desk->document, 15);
      pp_edit_acts_mirror (desk->document);
      pp_edit_acts_pin (desk->document, TRUE);
      pp_edit_acts_duplicate (desk->document);
      pp_edit_acts_do (desk->document, &pp_group_act);
      pp_edit_acts_remove (desk->document, PP_ACT_REMOVE);
      for (guint i = 0; i < G_N_ELEMENTS (restacks); i++)
        pp_edit_acts_do (desk->document, restacks[i].act);
    }
  g_assert_true (get_panel (desk) == before);
  g_assert_null (desk->refused);
}

static void
test_choose_all (void)
{
  g_autoptr (Desk) desk = desk_new ("p2");

  pp_edit_acts_choose_all (desk->document);
  check_chosen (desk, "p1 p2 p3 p4");
}

static void
test_too_many (void)
{
  g_autoptr (Desk) desk = desk_new ("p1");

  for (guint i = 0; i < 20 && desk->refused == NULL; i++)
    {
      pp_edit_acts_choose_all (desk->document);
      pp_edit_acts_duplicate (desk->document);
    }
  g_assert_cmpuint (get_panel (desk)->placements->len, ==, 1024);
  g_assert_cmpstr (desk->refused, ==,
                   "That is more than fits: a panel has at most 2000 pieces, of 2000 kinds.");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/edit-acts/turn/several", test_turn);
  g_test_add_func ("/edit-acts/turn/one", test_turn_one);
  g_test_add_func ("/edit-acts/turn/round", test_turn_round);
  g_test_add_func ("/edit-acts/turn/others", test_turn_others);
  g_test_add_func ("/edit-acts/turn/stem", test_turn_stem);
  g_test_add_func ("/edit-acts/mirror/several", test_mirror);
  g_test_add_func ("/edit-acts/mirror/stem", test_mirror_stem);
  g_test_add_func ("/edit-acts/some-stay-put", test_some_stay_put);
  g_test_add_func ("/edit-acts/all-stay-put", test_all_stay_put);
  for (guint i = 0; i < G_N_ELEMENTS (restacks); i++)
    {
      g_autofree char *path = g_strdup_printf ("/edit-acts/restack/%u", i);

      g_test_add_data_func (path, &restacks[i], test_restack);
    }
  g_test_add_func ("/edit-acts/group", test_group);
  g_test_add_func ("/edit-acts/pin", test_pin);
  g_test_add_func ("/edit-acts/duplicate/pieces", test_duplicate);
  g_test_add_func ("/edit-acts/duplicate/groups", test_duplicate_groups);
  g_test_add_func ("/edit-acts/remove/pieces", test_remove);
  g_test_add_func ("/edit-acts/remove/wire", test_remove_wire);
  g_test_add_func ("/edit-acts/nothing", test_nothing);
  g_test_add_func ("/edit-acts/choose-all", test_choose_all);
  g_test_add_func ("/edit-acts/too-many", test_too_many);
  return g_test_run ();
}
