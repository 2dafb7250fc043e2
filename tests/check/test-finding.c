/* test-finding.c: the list of findings, and those of pieces that do not sit firm.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/questions.h"

#include "stack.h"

#include <string.h>

static void
test_names (void)
{
  g_assert_cmpstr (pp_level_get_name (PP_LEVEL_FAULT), ==, "fault");
  g_assert_cmpstr (pp_level_get_name (PP_LEVEL_CAUTION), ==, "caution");
  g_assert_cmpstr (pp_level_get_name (PP_LEVEL_NOTE), ==, "note");
  g_assert_cmpstr (pp_origin_get_name (PP_ORIGIN_OWN), ==, "own");
  g_assert_cmpstr (pp_origin_get_name (PP_ORIGIN_STANDARD), ==, "std");
  g_assert_cmpstr (pp_origin_get_name (PP_ORIGIN_PRACTICE), ==, "practice");
}

static const PpFinding *
finding_at (const PpFindings *findings,
            guint             i)
{
  g_assert_cmpuint (i, <, findings->list->len);
  return g_ptr_array_index (findings->list, i);
}

static void
add (PpFindings *findings,
     const char *code,
     PpLevel     level,
     double      x,
     double      y)
{
  PpFinding finding = {
    .code = code,
    .level = level,
    .at = { x, y },
    .about = PP_ABOUT ("p1"),
    .value = NAN,
    .limit = NAN,
  };

  pp_findings_add (findings, finding, g_strdup (code));
}

/* Worst first, then from the top, then from the left; equals stay as they came. */
static void
test_order (void)
{
  const char *sorted[] = { "fault-low", "caution-left", "caution-right", "note-top", "note-first",
                           "note-second" };
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  PpFindings findings;

  test_draft_init (&draft, 300, 400, 6);
  stack = test_stack_new (&draft);
  pp_findings_init (&findings, stack->panel);
  add (&findings, "note-first", PP_LEVEL_NOTE, 10, 10);
  add (&findings, "caution-right", PP_LEVEL_CAUTION, 20, 50);
  add (&findings, "note-second", PP_LEVEL_NOTE, 10, 10);
  add (&findings, "caution-left", PP_LEVEL_CAUTION, 10, 50);
  add (&findings, "note-top", PP_LEVEL_NOTE, 90, 5);
  add (&findings, "fault-low", PP_LEVEL_FAULT, 90, 300);
  g_ptr_array_sort (findings.list, pp_finding_compare);
  for (guint i = 0; i < G_N_ELEMENTS (sorted); i++)
    g_assert_cmpstr (finding_at (&findings, i)->code, ==, sorted[i]);
  pp_findings_clear (&findings);
}

/* What the maker knows is quiet, but a fault never is. */
static void
test_quiet (void)
{
  const PpLevel levels[] = { PP_LEVEL_FAULT, PP_LEVEL_CAUTION, PP_LEVEL_NOTE };
  PpQuiet quiet = pp_quiet_draft ();
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  g_autoptr (GError) error = NULL;
  PpFindings findings;

  quiet.code = "strain";
  quiet.about = PP_ABOUT ("p1");
  test_draft_init (&draft, 300, 400, 6);
  draft.panel.quiet = g_ptr_array_new_with_free_func (
    (GDestroyNotify) (void (*) (void)) pp_quiet_unref);
  g_ptr_array_add (draft.panel.quiet, pp_quiet_new (&quiet, &error));
  g_assert_no_error (error);
  stack = test_stack_new (&draft);
  g_ptr_array_unref (draft.panel.quiet);
  pp_findings_init (&findings, stack->panel);
  for (guint i = 0; i < G_N_ELEMENTS (levels); i++)
    add (&findings, "strain", levels[i], 0, 0);
  add (&findings, "slips", PP_LEVEL_NOTE, 0, 0);
  g_assert_false (finding_at (&findings, 0)->quiet);
  g_assert_true (finding_at (&findings, 1)->quiet);
  g_assert_true (finding_at (&findings, 2)->quiet);
  g_assert_false (finding_at (&findings, 3)->quiet);
  pp_findings_clear (&findings);
}

typedef struct
{
  const char *name;
  double      x;          /* of a leaf of 40 x 12 mm, 3 mm thick */
  double      y;
  PpFormKind  below;      /* of a piece that lies under it at (150, 150), 24 x 24 mm, 5 thick */
  const char *codes[3];
  PpLevel     level;      /* of the first */
  PpOrigin    origin;
  const char *about[3];   /* of the first */
} Row;

static const Row rows[] = {
  { "sits-firm", 60, 60, PP_FORM_FLAT, { NULL } },
  { "floats", 400, 60, PP_FORM_FLAT, { "floats" }, PP_LEVEL_FAULT, PP_ORIGIN_OWN, { "p2" } },
  /* Its middle is just beyond the edge of the glass, or just short of it. */
  { "tips", 301, 60, PP_FORM_FLAT, { "tips" }, PP_LEVEL_CAUTION, PP_ORIGIN_OWN, { "p2" } },
  { "unsteady", 298, 60, PP_FORM_FLAT, { "unsteady" }, PP_LEVEL_NOTE, PP_ORIGIN_OWN, { "p2" } },
  { "flat-on-flat", 150, 150, PP_FORM_FLAT, { NULL } },
  { "flat-on-shaped", 150, 150, PP_FORM_DOMED, { "flat-on-shaped" }, PP_LEVEL_CAUTION,
    PP_ORIGIN_PRACTICE, { "p2", "p1" } },
  /* One end on the piece, the other on the glass: 5 mm down over some 20. */
  { "slope", 172, 150, PP_FORM_FLAT, { "slope" }, PP_LEVEL_CAUTION, PP_ORIGIN_OWN, { "p2" } },
};

static void
test_rests (gconstpointer data)
{
  const Row *row = data;
  PpPiece below = pp_piece_draft ();
  PpPiece leaf = pp_piece_draft ();
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  PpFindings findings;
  guint n = 0;

  below.form.kind = row->below;
  below.form.rise = row->below == PP_FORM_FLAT ? 0 : 1;
  below.name = "Mallow";
  leaf.name = "Dock leaf";
  test_draft_init (&draft, 300, 400, 6);
  draft.panel.limits.value[PP_LIMIT_SLOPE] = 8;
  draft.panel.limits.value[PP_LIMIT_CONTACT] = 0.2;
  test_draft_add_piece (&draft, "mallow", "-12 -12, 12 -12, 12 12, -12 12", 5, 20, &below);
  test_draft_add_piece (&draft, "dock", "-20 -6, 20 -6, 20 6, -20 6", 3, 8, &leaf);
  test_draft_place (&draft, "p1", "mallow", 150, 150);
  test_draft_place (&draft, "p2", "dock", row->x, row->y);
  stack = test_stack_new (&draft);
  pp_findings_init (&findings, stack->panel);
  pp_ask_rest (&findings, &(PpCheck) { .scene = stack->scene, .rests = stack->rests });
  while (row->codes[n] != NULL)
    n++;
  for (guint i = 0; i < MIN (n, findings.list->len); i++)
    g_assert_cmpstr (finding_at (&findings, i)->code, ==, row->codes[i]);
  g_assert_cmpuint (findings.list->len, ==, n);
  if (n > 0)
    {
      g_assert_cmpint (finding_at (&findings, 0)->level, ==, row->level);
      g_assert_cmpint (finding_at (&findings, 0)->origin, ==, row->origin);
      g_assert_true (g_strv_equal (finding_at (&findings, 0)->about, row->about));
      g_assert_nonnull (strstr (finding_at (&findings, 0)->text, "Dock leaf"));
    }
  pp_findings_clear (&findings);
}

/* Values and limits of a piece that rocks, and its place where there are two of its name. */
static void
test_unsteady (void)
{
  PpPiece leaf = pp_piece_draft ();
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  PpFindings findings;

  leaf.name = "Dock leaf";
  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_piece (&draft, "dock", "-20 -4, 20 -4, 20 4, -20 4", 3, 8, &leaf);
  test_draft_place (&draft, "p1", "dock", 60, 120);
  test_draft_place (&draft, "p2", "dock", 299, 120);
  stack = test_stack_new (&draft);
  pp_findings_init (&findings, stack->panel);
  pp_ask_rest (&findings, &(PpCheck) { .scene = stack->scene, .rests = stack->rests });
  g_assert_cmpuint (findings.list->len, ==, 1);
  /* Its last supported cell is at 299.75; a quarter of its 8 mm is less than 3 mm. */
  g_assert_cmpfloat_with_epsilon (finding_at (&findings, 0)->value, 0.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (finding_at (&findings, 0)->limit, 2, 1e-9);
  g_assert_nonnull (strstr (finding_at (&findings, 0)->text, "299 mm from the left"));
  pp_findings_clear (&findings);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/finding/names", test_names);
  g_test_add_func ("/finding/order", test_order);
  g_test_add_func ("/finding/quiet", test_quiet);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/finding/rests/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_rests);
    }
  g_test_add_func ("/finding/unsteady", test_unsteady);
  return g_test_run ();
}
