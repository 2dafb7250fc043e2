/* test-pocket.c: fused parts, their pockets and the stems in them, by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The jug is a rectangle from (100, 200) to (200, 350), its pocket's insert one from (115, 195) to
 * (185, 330): the mouth at y = 200 is 70 wide, the seams are 15 at the sides and 20 below.
 */
#include "check/questions.h"

#include "rings.h"
#include "stack.h"

#define JUG "100 200, 200 200, 200 350, 100 350"
#define INSERT "115 195, 185 195, 185 330, 115 330"

typedef struct
{
  TestStack *stack;
  PpFindings findings;
} Answer;

static void
answer_init (Answer    *self,
             TestDraft *draft)
{
  self->stack = test_stack_new (draft);
  pp_findings_init (&self->findings, self->stack->panel);
  pp_ask_pocket (&self->findings, &(PpCheck) { .scene = self->stack->scene });
}

static void
answer_clear (Answer *self)
{
  pp_findings_clear (&self->findings);
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

/* `insert` NULL: no pocket. */
static void
begin (TestDraft  *draft,
       const char *jug,
       const char *insert,
       double      gap,
       double      expansion)
{
  PpFused fused = pp_fused_draft ();
  g_autoptr (PpOutline) outline = test_outline (jug);
  g_autoptr (PpOutline) kept_open = insert != NULL ? test_outline (insert) : NULL;
  g_autoptr (GError) error = NULL;

  test_draft_init (draft, 300, 400, 6);
  fused.id = "jug";
  fused.name = "Amber jug";
  fused.outline = outline;
  fused.thickness = 3;
  fused.glass.expansion = expansion;
  fused.has_pocket = insert != NULL;
  fused.pocket = (PpPocket) { .insert_thickness = 6, .gap = gap, .insert = kept_open };
  g_ptr_array_add (draft->panel.fused, pp_fused_new (&fused, &error));
  g_assert_no_error (error);
}

static void
add_stem (TestDraft  *draft,
          const char *id,
          const char *outline,
          double      thickness)
{
  PpPlacement placement = pp_placement_draft ();
  PpPiece piece = pp_piece_draft ();
  g_autofree char *tray = g_strconcat ("t-", id, NULL);

  piece.kind = PP_KIND_STEM;
  test_draft_add_piece (draft, tray, outline, thickness, NAN, &piece);
  placement.id = id;
  placement.piece = tray;
  placement.pocket = "jug";
  g_ptr_array_add (draft->panel.placements, pp_placement_new (&placement, NULL));
}

static void
assert_value (const Answer *answer,
              const char   *code,
              double        value,
              double        limit)
{
  const PpFinding *finding = find (answer, code);

  g_assert_nonnull (finding);
  g_assert_cmpfloat_with_epsilon (finding->value, value, PP_TIE);
  g_assert_cmpfloat_with_epsilon (finding->limit, limit, PP_TIE);
}

static void
test_sound (void)
{
  TestDraft draft;
  Answer answer;

  begin (&draft, JUG, INSERT, NAN, NAN);
  add_stem (&draft, "sedge", "140 50, 146 50, 146 328, 140 328", 5.5);
  answer_init (&answer, &draft);
  g_assert_cmpuint (answer.findings.list->len, ==, 1);
  g_assert_nonnull (find (&answer, "fire-slower"));
  answer_clear (&answer);
}

/* Expansions as makers name them: 96 and 96 go together, 96 and 90 do not. */
static void
test_glass (void)
{
  static const struct
  {
    double   expansion;
    gboolean said;
  } rows[] = { { 9.0e-6, FALSE }, { 9.1e-6, FALSE }, { 9.11e-6, TRUE }, { 9.6e-6, TRUE },
               { 8.89e-6, TRUE }, { NAN, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Answer answer;

      begin (&draft, JUG, NULL, NAN, rows[i].expansion);
      answer_init (&answer, &draft);
      g_assert_cmpint (find (&answer, "expansion") != NULL, ==, rows[i].said);
      answer_clear (&answer);
    }
}

static void
test_beyond (void)
{
  TestDraft draft;
  Answer answer;

  begin (&draft, "100 200, 305 200, 305 350, 100 350", NULL, NAN, NAN);
  answer_init (&answer, &draft);
  assert_value (&answer, "fused-over", 750, 1);
  answer_clear (&answer);
}

/* The seam at the sides, slanting to a lower corner, and none where the insert runs out beside. */
static void
test_seam (void)
{
  static const struct
  {
    const char *insert;
    double      seam; /* NAN: wide enough */
  } rows[] = {
    { "110 195, 185 195, 185 330, 110 330", NAN },
    { "109 195, 185 195, 185 330, 109 330", 9 },
    { "115 195, 185 195, 185 344, 115 344", 6 },
    { "115 195, 185 195, 185 330, 180 330, 108 330, 115 300", 8 },
    { "115 195, 185 195, 205 330, 115 330", 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Answer answer;

      begin (&draft, JUG, rows[i].insert, NAN, NAN);
      answer_init (&answer, &draft);
      if (isnan (rows[i].seam))
        g_assert_null (find (&answer, "seam"));
      else
        assert_value (&answer, "seam", rows[i].seam, 10);
      answer_clear (&answer);
    }
}

static void
test_closed (void)
{
  TestDraft draft;
  Answer answer;

  begin (&draft, JUG, "115 200.5, 185 200.5, 185 330, 115 330", NAN, NAN);
  answer_init (&answer, &draft);
  g_assert_null (find (&answer, "pocket-closed"));
  answer_clear (&answer);
  begin (&draft, JUG, "115 202, 185 202, 185 330, 115 330", NAN, NAN);
  answer_init (&answer, &draft);
  assert_value (&answer, "pocket-closed", 2, 0.5);
  answer_clear (&answer);
}

/* Room of 5.5 mm, unless it was gauged. */
static void
test_thick (void)
{
  static const struct
  {
    double gap;
    double thickness;
    double room;
    int    said;
  } rows[] = { { NAN, 5.5, 5.5, 0 }, { NAN, 5.6, 5.5, 1 }, { 5.8, 5.6, 5.8, 0 }, { 5, 5.4, 5, 1 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Answer answer;

      begin (&draft, JUG, INSERT, rows[i].gap, NAN);
      add_stem (&draft, "sedge", "140 50, 146 50, 146 328, 140 328", rows[i].thickness);
      answer_init (&answer, &draft);
      g_assert_cmpint (find (&answer, "stem-thick") != NULL, ==, rows[i].said);
      if (rows[i].said)
        assert_value (&answer, "stem-thick", rows[i].thickness, rows[i].room);
      answer_clear (&answer);
    }
}

/* Beside the insert by 2 mm over 130 mm; 40 mm over the pocket's floor; not in at all. */
static void
test_places (void)
{
  TestDraft draft;
  Answer answer;

  begin (&draft, JUG, INSERT, NAN, NAN);
  add_stem (&draft, "sedge", "113 50, 119 50, 119 330, 113 330", 5);
  answer_init (&answer, &draft);
  assert_value (&answer, "stem-astray", 260, 1);
  g_assert_cmpstr (find (&answer, "stem-astray")->about[1], ==, "jug");
  g_assert_null (find (&answer, "stem-short"));
  answer_clear (&answer);
  begin (&draft, JUG, INSERT, NAN, NAN);
  add_stem (&draft, "sedge", "140 50, 146 50, 146 290, 140 290", 5);
  answer_init (&answer, &draft);
  assert_value (&answer, "stem-short", 40, 5);
  answer_clear (&answer);
  begin (&draft, JUG, INSERT, NAN, NAN);
  add_stem (&draft, "sedge", "140 50, 146 50, 146 150, 140 150", 5);
  answer_init (&answer, &draft);
  assert_value (&answer, "stem-short", 130, 5);
  answer_clear (&answer);
}

/* Stems of 30 and 41 in a mouth of 70; of a funnel, whose mouth is taken 1 mm down: 20 - 2·0.1. */
static void
test_wide (void)
{
  TestDraft draft;
  Answer answer;

  begin (&draft, JUG, INSERT, NAN, NAN);
  add_stem (&draft, "one", "116 50, 146 50, 146 328, 116 328", 5);
  add_stem (&draft, "two", "140 50, 181 50, 181 328, 140 328", 5);
  answer_init (&answer, &draft);
  assert_value (&answer, "stems-wide", 71, 70);
  g_assert_cmpstr (find (&answer, "stems-wide")->about[0], ==, "jug");
  g_assert_cmpstr (find (&answer, "stems-wide")->about[2], ==, "two");
  answer_clear (&answer);
  begin (&draft, JUG, "140 200, 160 200, 150 300", NAN, NAN);
  add_stem (&draft, "one", "135 50, 165 50, 165 280, 135 280", 5);
  answer_init (&answer, &draft);
  assert_value (&answer, "stems-wide", 30, 19.8);
  answer_clear (&answer);
}

/* An insert that lies elsewhere leaves no mouth; nothing of it breaks. */
static void
test_missed (void)
{
  TestDraft draft;
  Answer answer;

  begin (&draft, JUG, "10 10, 60 10, 60 60, 10 60", NAN, NAN);
  add_stem (&draft, "sedge", "140 50, 146 50, 146 328, 140 328", 7);
  answer_init (&answer, &draft);
  g_assert_null (find (&answer, "seam"));
  g_assert_null (find (&answer, "stem-short"));
  assert_value (&answer, "stem-thick", 7, 5.5);
  assert_value (&answer, "stem-astray", 6 * 128, 1);
  assert_value (&answer, "stems-wide", 6, 0);
  answer_clear (&answer);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pocket/sound", test_sound);
  g_test_add_func ("/pocket/glass", test_glass);
  g_test_add_func ("/pocket/beyond", test_beyond);
  g_test_add_func ("/pocket/seam", test_seam);
  g_test_add_func ("/pocket/closed", test_closed);
  g_test_add_func ("/pocket/thick", test_thick);
  g_test_add_func ("/pocket/places", test_places);
  g_test_add_func ("/pocket/wide", test_wide);
  g_test_add_func ("/pocket/missed", test_missed);
  return g_test_run ();
}
