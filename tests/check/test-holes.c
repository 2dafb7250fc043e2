/* test-holes.c: distances of holes against the published rules.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "Rule A" is ASTM C1048: rim to edge 2t, rim to rim the greater of 10 mm and 2t, rim to corner
 * 6.5t. "Rule B" is EN 12150-1: diameter t. Both are as trade pages quote them and are for glass
 * to be heat treated.
 */
#include "check/questions.h"

#include "stack.h"

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
  pp_ask_holes (&self->findings, &(PpCheck) { .scene = self->stack->scene });
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

/* From one glazier's rule the distances to edge, rim and corner, from another's the diameter, which
 * this program raises to the first one's least of 6 mm, and 2t of the edge too. */
typedef struct
{
  double thickness;
  double diameter;
  double edge;
  double between;
  double corner;
} Rule;

static const Rule rules[] = {
  { 3, 6, 6, 10, 19.5 },     { 4, 6, 8, 10, 26 },       { 5, 6, 10, 10, 32.5 },
  { 6, 6, 12, 12, 39 },      { 8, 8, 16, 16, 52 },      { 10, 10, 20, 20, 65 },
  { 12, 12, 24, 24, 78 },    { 19, 19, 38, 38, 123.5 },
};

#define BIT 0.001 /* mm to either side of a limit */

static void
check_rule (const Rule *rule,
            double      off,
            gboolean    said)
{
  double d = rule->diameter + off, r = d / 2;
  double edge = rule->edge + off + r, diagonal = (rule->corner + off + r) / G_SQRT2;
  TestDraft draft;
  Answer answer;

  test_draft_init (&draft, 900, 900, rule->thickness);
  test_draft_add_hole (&draft, "edge", 450, edge, d);
  test_draft_add_hole (&draft, "near", 450 + d + rule->between + off, edge, d);
  test_draft_add_hole (&draft, "corner", 900 - diagonal, 900 - diagonal, d);
  answer_init (&answer, &draft);
  g_assert_cmpint (find (&answer, "hole-edge") != NULL, ==, said);
  g_assert_cmpint (find (&answer, "hole-small") != NULL, ==, said);
  g_assert_cmpint (find (&answer, "hole-hole") != NULL, ==, said);
  g_assert_cmpint (find (&answer, "hole-corner") != NULL, ==, said);
  if (said)
    {
      const PpFinding *finding = find (&answer, "hole-edge");

      g_assert_cmpfloat_with_epsilon (finding->value, rule->edge + off, PP_TIE);
      g_assert_cmpfloat_with_epsilon (finding->limit, rule->edge, PP_TIE);
      g_assert_cmpfloat_with_epsilon (find (&answer, "hole-corner")->limit, rule->corner, PP_TIE);
      g_assert_cmpfloat_with_epsilon (find (&answer, "hole-hole")->limit, rule->between, PP_TIE);
      g_assert_cmpfloat_with_epsilon (find (&answer, "hole-small")->limit, rule->diameter, PP_TIE);
      g_assert_cmpint (find (&answer, "hole-corner")->origin, ==, PP_ORIGIN_STANDARD);
    }
  answer_clear (&answer);
}

/* At the limit, as within a tie, it is met. */
static void
test_rules (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      check_rule (&rules[i], 0, FALSE);
      check_rule (&rules[i], BIT, FALSE);
      check_rule (&rules[i], -BIT, TRUE);
    }
}

/* By the distances of a right triangle: 6 mm glass, holes of 8 mm near the corner at (0, 0). */
static void
test_corner_rows (void)
{
  static const struct
  {
    double   x;
    double   y;
    double   edge;
    double   corner;
    gboolean edge_said;
    gboolean corner_said;
  } rows[] = {
    { 20, 20, 16, 24.28, FALSE, TRUE }, { 40, 40, 36, 52.57, FALSE, FALSE },
    { 16, 60, 12, 58.10, FALSE, FALSE }, { 15, 60, 11, 57.85, TRUE, FALSE },
    { 30.41, 30.41, 26.41, 39, FALSE, FALSE }, { 30.40, 30.40, 26.40, 39, FALSE, TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Answer answer;

      test_draft_init (&draft, 300, 400, 6);
      test_draft_add_hole (&draft, "a", rows[i].x, rows[i].y, 8);
      answer_init (&answer, &draft);
      g_assert_cmpint (find (&answer, "hole-edge") != NULL, ==, rows[i].edge_said);
      g_assert_cmpint (find (&answer, "hole-corner") != NULL, ==, rows[i].corner_said);
      if (rows[i].edge_said)
        g_assert_cmpfloat_with_epsilon (find (&answer, "hole-edge")->value, rows[i].edge, PP_TIE);
      if (rows[i].corner_said)
        g_assert_cmpfloat_with_epsilon (find (&answer, "hole-corner")->value, rows[i].corner, 0.02);
      answer_clear (&answer);
    }
}

/* A hole is at most a third of the shorter side. The edge: fault below t, caution below 2t;
 * over the edge the distance is negative. A drilled hole only hears of faults. */
static void
test_levels (void)
{
  static const struct
  {
    double      y;
    double      diameter;
    gboolean    drilled;
    const char *code;
    int         level; /* -1: silent */
    double      value;
  } rows[] = {
    { 14.9, 6, FALSE, "hole-edge", PP_LEVEL_CAUTION, 11.9 },
    { 9, 6, FALSE, "hole-edge", PP_LEVEL_CAUTION, 6 },
    { 8.9, 6, FALSE, "hole-edge", PP_LEVEL_FAULT, 5.9 },
    { -5, 6, FALSE, "hole-edge", PP_LEVEL_FAULT, -8 },
    { 14.9, 6, TRUE, "hole-edge", -1, 0 },
    { 8.9, 6, TRUE, "hole-edge", PP_LEVEL_FAULT, 5.9 },
    { 200, 101, FALSE, "hole-large", PP_LEVEL_NOTE, 101 },
    { 200, 100, FALSE, "hole-large", -1, 0 },
    { 200, 101, TRUE, "hole-large", -1, 0 },
    { 200, 5, TRUE, "hole-small", -1, 0 },
    { 385, 6, FALSE, "hole-edge", -1, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Answer answer;
      PpHole hole = pp_hole_draft ();
      const PpFinding *finding;

      test_draft_init (&draft, 300, 400, 6);
      hole.id = "a";
      hole.x = 150;
      hole.y = rows[i].y;
      hole.diameter = rows[i].diameter;
      hole.drilled = rows[i].drilled;
      g_ptr_array_add (draft.panel.holes, pp_hole_new (&hole, NULL));
      answer_init (&answer, &draft);
      finding = find (&answer, rows[i].code);
      g_assert_cmpint (finding != NULL ? (int) finding->level : -1, ==, rows[i].level);
      if (finding != NULL)
        g_assert_cmpfloat_with_epsilon (finding->value, rows[i].value, PP_TIE);
      if (g_str_equal (rows[i].code, "hole-edge") && finding != NULL)
        g_assert_cmpint (finding->origin, ==, finding->level == PP_LEVEL_FAULT
                                                  ? PP_ORIGIN_OWN : PP_ORIGIN_STANDARD);
      answer_clear (&answer);
    }
}

/* Glass fused over the hole's centre thickens it: 6 + 3 mm. */
static void
test_thickness (void)
{
  TestDraft draft;
  Answer answer;

  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_fused (&draft, "jug", "100 0, 200 0, 200 100, 100 100", 3, NAN);
  test_draft_add_hole (&draft, "thick", 150, 19, 6);
  answer_init (&answer, &draft);
  g_assert_cmpfloat_with_epsilon (find (&answer, "hole-edge")->limit, 18, PP_TIE);
  g_assert_cmpfloat_with_epsilon (find (&answer, "hole-small")->limit, 9, PP_TIE);
  g_assert_null (find (&answer, "hole-border"));
  answer_clear (&answer);
}

static void
test_border (void)
{
  static const struct
  {
    double   x;
    gboolean crosses;
  } rows[] = { { 104, FALSE }, { 103, FALSE }, { 102.9, TRUE }, { 100, TRUE }, { 97.1, TRUE },
               { 97, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Answer answer;
      const PpFinding *finding;

      test_draft_init (&draft, 300, 400, 6);
      test_draft_add_fused (&draft, "jug", "100 100, 200 100, 200 300, 100 300", 3, NAN);
      test_draft_add_hole (&draft, "a", rows[i].x, 200, 6);
      answer_init (&answer, &draft);
      finding = find (&answer, "hole-border");
      g_assert_cmpint (finding != NULL, ==, rows[i].crosses);
      if (finding != NULL)
        {
          g_assert_true (isnan (finding->value) && isnan (finding->limit));
          g_assert_cmpstr (finding->about[0], ==, "a");
          g_assert_cmpstr (finding->about[1], ==, "jug");
          g_assert_null (finding->about[2]);
        }
      answer_clear (&answer);
    }
}

/* A wire of 1.2 mm wants a hole of 1.7, a hole of 6 a knot of 7. */
static void
test_wire (void)
{
  TestDraft draft;
  Answer answer;

  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_hole (&draft, "a", 100, 100, 1.7);
  test_draft_add_hole (&draft, "b", 200, 100, 6);
  test_draft_add_hole (&draft, "other", 150, 300, 1);
  test_draft_add_wire (&draft, 150);
  draft.wire.knot_diameter = 7;
  answer_init (&answer, &draft);
  g_assert_null (find (&answer, "hole-wire"));
  g_assert_null (find (&answer, "knot-small"));
  answer_clear (&answer);
  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_hole (&draft, "a", 100, 100, 1.69);
  test_draft_add_hole (&draft, "b", 200, 100, 6);
  test_draft_add_wire (&draft, 150);
  draft.wire.knot_diameter = 6.9;
  answer_init (&answer, &draft);
  g_assert_cmpstr (find (&answer, "hole-wire")->about[0], ==, "a");
  g_assert_cmpfloat_with_epsilon (find (&answer, "hole-wire")->limit, 1.7, PP_TIE);
  g_assert_cmpstr (find (&answer, "knot-small")->about[0], ==, "b");
  g_assert_cmpfloat_with_epsilon (find (&answer, "knot-small")->limit, 7, PP_TIE);
  answer_clear (&answer);
}

/* Corners by shape: a hole 40 mm from where the box has its upper left and lower left corner. */
static void
test_shapes (void)
{
  static const struct
  {
    PpBackgroundShape shape;
    double            y;
    gboolean          said;
  } rows[] = {
    { PP_SHAPE_RECTANGLE, 25, TRUE }, { PP_SHAPE_RECTANGLE, 375, TRUE },
    { PP_SHAPE_ARCH, 375, TRUE },     { PP_SHAPE_ARCH, 200, FALSE },
    { PP_SHAPE_ARCH, 25, FALSE },     { PP_SHAPE_ELLIPSE, 25, FALSE },
    { PP_SHAPE_ELLIPSE, 375, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      PpBackground back = pp_background_draft ();
      TestDraft draft;
      Answer answer;

      test_draft_init (&draft, 300, 400, 6);
      back.shape = rows[i].shape;
      back.width = 300;
      back.height = 400;
      back.thickness = 6;
      test_draft_set_back (&draft, &back);
      test_draft_add_hole (&draft, "a", 25, rows[i].y, 6);
      answer_init (&answer, &draft);
      g_assert_cmpint (find (&answer, "hole-corner") != NULL, ==, rows[i].said);
      answer_clear (&answer);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/holes/rules", test_rules);
  g_test_add_func ("/holes/corner-rows", test_corner_rows);
  g_test_add_func ("/holes/levels", test_levels);
  g_test_add_func ("/holes/thickness", test_thickness);
  g_test_add_func ("/holes/border", test_border);
  g_test_add_func ("/holes/wire", test_wire);
  g_test_add_func ("/holes/shapes", test_shapes);
  return g_test_run ();
}
