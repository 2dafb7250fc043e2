/* test-composition.c: groups, weight for the eye, vase, overhang and stock, by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/overhang.h"
#include "check/questions.h"
#include "panel/edit.h"

#include "stack.h"

#define EXACT 1e-9
#define SQUARE "0 0, 20 0, 20 20, 0 20"

typedef struct
{
  TestStack     *stack;
  PpComposition *composition;
  PpFindings     findings;
} Answer;

static void
answer_init (Answer    *self,
             TestDraft *draft)
{
  g_autoptr (PpPieceNames) names = NULL;

  self->stack = test_stack_new (draft);
  names = pp_piece_names_new (self->stack->scene, NULL);
  self->composition = pp_composition_new (self->stack->scene, NULL, NULL);
  pp_findings_init (&self->findings, self->stack->panel);
  pp_ask_composition (&self->findings, &(PpCheck) { .scene = self->stack->scene,
                                                    .composition = self->composition,
                                                    .names = names });
}

static void
answer_clear (Answer *self)
{
  pp_findings_clear (&self->findings);
  pp_composition_free (self->composition);
  test_stack_free (self->stack);
}

static const PpFinding *
find (const Answer *self,
      const char   *code)
{
  for (guint i = 0; i < self->findings.list->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (self->findings.list, i);

      if (g_str_equal (finding->code, code))
        return finding;
    }
  return NULL;
}

static void
begin (TestDraft *draft)
{
  test_draft_init (draft, 300, 400, 6);
}

static void
add_kind (TestDraft  *draft,
          const char *id,
          const char *outline,
          PpKind      kind,
          double      transmittance)
{
  PpPiece piece = pp_piece_draft ();

  piece.kind = kind;
  piece.transmittance = transmittance;
  test_draft_add_piece (draft, id, outline, 4, NAN, &piece);
}

static void
place (TestDraft  *draft,
       const char *id,
       const char *piece,
       double      x,
       double      y,
       const char *group)
{
  PpPlacement placement = pp_placement_draft ();

  placement.id = id;
  placement.piece = piece;
  placement.x = x;
  placement.y = y;
  placement.group = group;
  g_ptr_array_add (draft->panel.placements, pp_placement_new (&placement, NULL));
}

/* Squares of 20 mm: 15 mm apart they are one chain, farther they are not; leaves are in no group
 * unless named, and a named group may lie apart and hold leaves. */
static void
test_groups (void)
{
  TestDraft draft;
  Answer answer;
  const PpGroup *groups;

  begin (&draft);
  add_kind (&draft, "oxeye", SQUARE, PP_KIND_FLOWER, 0);
  add_kind (&draft, "fern", SQUARE, PP_KIND_LEAF, 0);
  place (&draft, "fern1", "fern", 10, 10, NULL);
  place (&draft, "a1", "oxeye", 10, 100, NULL);
  place (&draft, "n1", "oxeye", 10, 300, "left hand");
  place (&draft, "a3", "oxeye", 80, 100, NULL);
  place (&draft, "lone", "oxeye", 115.1, 100, NULL);
  place (&draft, "n2", "fern", 200, 10, "left hand");
  place (&draft, "a2", "oxeye", 45, 100, NULL);
  answer_init (&answer, &draft);
  groups = answer.composition->groups;
  g_assert_cmpuint (answer.composition->n_groups, ==, 3);
  g_assert_null (groups[0].name);
  g_assert_cmpuint (groups[0].n_members, ==, 3);
  g_assert_cmpuint (groups[0].members[0], ==, 1);
  g_assert_cmpuint (groups[0].members[1], ==, 3);
  g_assert_cmpuint (groups[0].members[2], ==, 6);
  g_assert_cmpuint (groups[0].flowers, ==, 3);
  g_assert_cmpstr (groups[1].name, ==, "left hand");
  g_assert_cmpuint (groups[1].n_members, ==, 2);
  g_assert_cmpuint (groups[1].flowers, ==, 1);
  g_assert_cmpuint (groups[2].n_members, ==, 1);
  g_assert_cmpuint (groups[2].members[0], ==, 4);
  g_assert_null (find (&answer, "even-group"));
  answer_clear (&answer);
}

static void
test_even (void)
{
  for (guint n = 0; n <= 10; n++)
    {
      TestDraft draft;
      Answer answer;
      const PpFinding *finding;

      begin (&draft);
      add_kind (&draft, "oxeye", SQUARE, PP_KIND_FLOWER, 0);
      for (guint i = 0; i < n; i++)
        {
          g_autofree char *id = g_strdup_printf ("f%u", i);

          place (&draft, id, "oxeye", 10 + 25 * i, 100, NULL);
        }
      answer_init (&answer, &draft);
      finding = find (&answer, "even-group");
      g_assert_cmpint (finding != NULL, ==, n == 2 || n == 4 || n == 6 || n == 8);
      if (finding != NULL)
        {
          g_assert_cmpuint (g_strv_length ((char **) finding->about), ==, n);
          g_assert_cmpfloat (finding->value, ==, n);
          g_assert_true (isnan (finding->limit));
          g_assert_cmpint (finding->origin, ==, PP_ORIGIN_PRACTICE);
        }
      answer_clear (&answer);
    }
}

/* The middle of a panel 300 wide is x = 150. A triangle from 140 to 170 with a hole; by hand: the
 * part left of 150 is 1/9 of 30·40/2 = 600, and the hole from 148 to 153 is 5 by 2. */
static void
test_weight (void)
{
  TestDraft draft;
  Answer answer;

  begin (&draft);
  add_kind (&draft, "square", SQUARE, PP_KIND_LEAF, 0.25);
  add_kind (&draft, "sail", "0 0, 30 0, 30 40; 8 5, 13 5, 13 7, 8 7", PP_KIND_LEAF, 0);
  place (&draft, "s", "square", 145, 100, NULL);
  place (&draft, "t", "sail", 140, 200, NULL);
  test_draft_add_fused (&draft, "jug", "0 300, 100 300, 100 310, 0 310", 3, NAN);
  answer_init (&answer, &draft);
  g_assert_cmpfloat_with_epsilon (answer.composition->left,
                                  0.75 * 100 + 600 / 9.0 - 4 + (1 - 0.9) * 1000, EXACT);
  g_assert_cmpfloat_with_epsilon (answer.composition->right, 0.75 * 300 + 600 * 8 / 9.0 - 6,
                                  EXACT);
  g_assert_true (isnan (answer.composition->vase_ratio));
  answer_clear (&answer);
}

/* A triangle on one side of the middle, wherever it lies, leaves nothing to the other: not even what
 * rounding takes from two sums for one area. */
static void
test_one_side (void)
{
  for (guint i = 0; i < 200; i++)
    {
      TestDraft draft;
      Answer answer;
      gboolean on_left = i % 2 == 0;

      begin (&draft);
      add_kind (&draft, "sail", "0 0, 31.7 0.3, 7.1 40.9", PP_KIND_LEAF, 0);
      place (&draft, "s", "sail", (on_left ? 0 : 160) + i * 0.37, 100 + i * 0.61, NULL);
      answer_init (&answer, &draft);
      g_assert_cmpfloat (on_left ? answer.composition->right : answer.composition->left, >=, 0);
      g_assert_cmpfloat (on_left ? answer.composition->left : answer.composition->right, >, 1);
      answer_clear (&answer);
    }
}

/* A vase 100 high from y = 250, a flower reaching up to y = 70: 180 / 100. */
static void
test_vase (void)
{
  static const struct
  {
    PpKind kind;
    double y;
    double ratio;
  } rows[] = { { PP_KIND_FLOWER, 70, 1.8 }, { PP_KIND_BUD, 70, 1.8 }, { PP_KIND_LEAF, 70, NAN },
               { PP_KIND_FLOWER, 300, 0 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      PpFused jug = pp_fused_draft ();
      const PpPoint ring[] = { { 100, 250 }, { 200, 250 }, { 200, 350 }, { 100, 350 } };
      g_autoptr (PpOutline) outline = pp_outline_new_ring (ring, G_N_ELEMENTS (ring));
      TestDraft draft;
      Answer answer;

      begin (&draft);
      jug.id = "jug";
      jug.outline = outline;
      jug.thickness = 3;
      jug.role = PP_ROLE_VASE;
      g_ptr_array_add (draft.panel.fused, pp_fused_new (&jug, NULL));
      add_kind (&draft, "piece", SQUARE, rows[i].kind, 0);
      place (&draft, "p", "piece", 50, rows[i].y, NULL);
      answer_init (&answer, &draft);
      if (isnan (rows[i].ratio))
        g_assert_true (isnan (answer.composition->vase_ratio));
      else
        g_assert_cmpfloat_with_epsilon (answer.composition->vase_ratio, rows[i].ratio, EXACT);
      answer_clear (&answer);
    }
}

/* A square of 20: over the right edge by 5, 10 and 15 mm, and over the corner by 3 and 4, where
 * the farthest vertex is 5 away. */
static void
test_overhang (void)
{
  static const struct
  {
    double x;
    double y;
    double overhang;
    int    level;
  } rows[] = {
    { 280, 100, PP_NO_OVERHANG, -1 },
    { 280.00000002, 100, PP_NO_OVERHANG, -1 }, /* less than 1e-6 mm² */
    { 285, 100, 5, PP_LEVEL_NOTE },
    { 290, 100, 10, PP_LEVEL_NOTE },
    { 295, 100, 15, PP_LEVEL_CAUTION },
    { 283, 384, 5, PP_LEVEL_NOTE },
    { 400, 100, 120, PP_LEVEL_CAUTION },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Answer answer;
      const PpFinding *finding;

      begin (&draft);
      add_kind (&draft, "leaf", SQUARE, PP_KIND_LEAF, 0);
      place (&draft, "p", "leaf", rows[i].x, rows[i].y, NULL);
      answer_init (&answer, &draft);
      finding = find (&answer, "overhang");
      g_assert_cmpfloat_with_epsilon (answer.composition->overhang[0], rows[i].overhang, EXACT);
      g_assert_cmpint (finding != NULL ? (int) finding->level : -1, ==, rows[i].level);
      if (finding != NULL)
        {
          g_assert_cmpfloat_with_epsilon (finding->value, rows[i].overhang, EXACT);
          g_assert_cmpfloat_with_epsilon (finding->limit, 10, EXACT);
        }
      answer_clear (&answer);
    }
}

static void
test_stock (void)
{
  for (guint count = 1; count <= 3; count++)
    {
      PpPiece piece = pp_piece_draft ();
      const PpPoint ring[] = { { 0, 0 }, { 20, 0 }, { 0, 20 } };
      g_autoptr (PpOutline) outline = pp_outline_new_ring (ring, G_N_ELEMENTS (ring));
      TestDraft draft;
      Answer answer;
      const PpFinding *finding;

      begin (&draft);
      piece.id = "oxeye";
      piece.name = "Oxeye";
      piece.count = count;
      piece.outline = outline;
      piece.thickness = 4;
      g_ptr_array_add (draft.panel.tray, pp_piece_new (&piece, NULL));
      place (&draft, "p1", "oxeye", 10, 10, NULL);
      place (&draft, "p2", "oxeye", 10, 60, NULL);
      answer_init (&answer, &draft);
      finding = find (&answer, "stock");
      g_assert_cmpint (finding != NULL, ==, count == 1);
      if (finding != NULL)
        {
          g_assert_cmpfloat (finding->value, ==, 2);
          g_assert_cmpfloat (finding->limit, ==, 1);
          g_assert_cmpstr (finding->about[0], ==, "oxeye");
          g_assert_cmpfloat_with_epsilon (finding->at.y, 60 + 20 / 3.0, EXACT);
          g_assert_cmpstr (finding->text, ==,
                           "Oxeye: 2 are placed, but there are only 1. Make more or take some "
                           "off.");
        }
      answer_clear (&answer);
    }
}

/* The check of a panel with one of its placements moved down, after that of the panel. */
static const PpCheck *
move (const PpCheck *check,
      const char    *placement,
      double         down)
{
  const char *moved[] = { placement, NULL };
  g_autoptr (PpPanel) panel = pp_edit_move (check->panel, moved, 0, down, NULL);

  return pp_check_new (panel, check, NULL, NULL, NULL, NULL);
}

static const PpFinding *
find_stock (const PpCheck *check)
{
  for (guint i = 0; i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);

      if (g_str_equal (finding->code, "stock"))
        return finding;
    }
  g_return_val_if_reached (NULL);
}

/* Another piece moved, the same is said of it; a copy moved, where it lies is told anew. */
static void
test_stock_again (void)
{
  PpPiece piece = pp_piece_draft ();
  const PpPoint ring[] = { { 0, 0 }, { 20, 0 }, { 0, 20 } };
  g_autoptr (PpOutline) outline = pp_outline_new_ring (ring, G_N_ELEMENTS (ring));
  const PpCheck *first, *other, *copy;
  TestDraft draft;
  TestStack *stack;

  begin (&draft);
  piece.id = "oxeye";
  piece.count = 1;
  piece.outline = outline;
  piece.thickness = 4;
  g_ptr_array_add (draft.panel.tray, pp_piece_new (&piece, NULL));
  test_draft_add_piece (&draft, "campion", SQUARE, 4, NAN, NULL);
  place (&draft, "p1", "oxeye", 10, 10, NULL);
  place (&draft, "p2", "oxeye", 10, 60, NULL);
  place (&draft, "p3", "campion", 200, 200, NULL);
  stack = test_stack_new (&draft);
  first = pp_check_new (stack->panel, NULL, NULL, NULL, NULL, NULL);
  other = move (first, "p3", 30);
  copy = move (other, "p2", 30);
  g_assert_true (find_stock (other) == find_stock (first));
  g_assert_cmpfloat_with_epsilon (find_stock (copy)->at.y, find_stock (first)->at.y + 30, EXACT);
  pp_check_unref (copy);
  pp_check_unref (other);
  pp_check_unref (first);
  test_stack_free (stack);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/composition/groups", test_groups);
  g_test_add_func ("/composition/even", test_even);
  g_test_add_func ("/composition/weight", test_weight);
  g_test_add_func ("/composition/one-side", test_one_side);
  g_test_add_func ("/composition/vase", test_vase);
  g_test_add_func ("/composition/overhang", test_overhang);
  g_test_add_func ("/composition/stock", test_stock);
  g_test_add_func ("/composition/stock-again", test_stock_again);
  return g_test_run ();
}
