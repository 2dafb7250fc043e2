/* test-nagging.c: what is said of a panel just begun, and what waits.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/nagging.h"

#include "small-panel.h"

/* The codes of each question, in one string. */
static const char * const questions[] = {
#define PP_QUESTION(name, ...) #__VA_ARGS__,
#include "check/questions.list"
#undef PP_QUESTION
};

/* Said elsewhere than in a question. */
static const char * const others[] = { "mix-small", "art-left-out" };

/* Every code there is: TRUE if the next piece may put it right by itself. */
static const struct
{
  const char *code;
  gboolean    passes;
} codes[] = {
  { "hole-edge", FALSE },     { "hole-wire", FALSE },     { "hole-border", FALSE },
  { "hole-pocket", FALSE },   { "hole-small", FALSE },    { "hole-large", FALSE },
  { "hole-corner", FALSE },   { "hole-hole", FALSE },     { "knot-small", FALSE },
  { "tips", FALSE },          { "floats", FALSE },        { "unsteady", FALSE },
  { "slope", FALSE },         { "overhang", FALSE },      { "no-joint", FALSE },
  { "strain", FALSE },        { "joint-small", FALSE },   { "squeeze", FALSE },
  { "glue-shows", FALSE },    { "flat-on-shaped", FALSE }, { "stock", FALSE },
  { "expansion", FALSE },     { "fire-slower", FALSE },   { "fused-over", FALSE },
  { "seam", FALSE },          { "pocket-closed", FALSE }, { "stem-thick", FALSE },
  { "stem-astray", FALSE },   { "stems-wide", FALSE },    { "stem-short", FALSE },
  { "wire-shows", TRUE },     { "hidden-barely", TRUE },  { "hole-shows", TRUE },
  { "art-left-out", FALSE },  { "knot-shows", TRUE },     { "knot-barely", TRUE },
  { "shows-aslant", TRUE },   { "turns-over", FALSE },    { "wire-short", FALSE },
  { "wire-taut", FALSE },     { "not-level", TRUE },      { "slips", TRUE },
  { "wire-load", FALSE },     { "leans", TRUE },          { "hook-load", FALSE },
  { "even-group", TRUE },     { "mix-small", FALSE },
};

static gboolean
waits (const char    *code,
       const PpPanel *panel)
{
  PpFinding finding = { .code = code, .level = PP_LEVEL_FAULT, .about = PP_ABOUT ("wire") };

  return pp_finding_waits (&finding, panel);
}

static void
test_codes (void)
{
  const SmallPanel words = { .tray = "oxeye fern sedge", .placements = "p1" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);

  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    {
      g_test_message ("%s", codes[i].code);
      g_assert_cmpint (waits (codes[i].code, panel), ==, codes[i].passes);
    }
}

static gboolean
has_code (const char *code)
{
  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    if (strcmp (codes[i].code, code) == 0)
      return TRUE;
  return FALSE;
}

/* The codes above are those that may be found, and no more. */
static void
test_all (void)
{
  guint n = G_N_ELEMENTS (others);

  for (guint i = 0; i < G_N_ELEMENTS (questions); i++)
    {
      g_auto (GStrv) listed = g_strsplit (questions[i], ", ", -1);

      for (char **code = listed; *code != NULL; code++, n++)
        g_assert_true (has_code (*code));
    }
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    g_assert_true (has_code (others[i]));
  g_assert_cmpuint (G_N_ELEMENTS (codes), ==, n);
}

/* Every level passes: it is the code that tells. */
static void
test_levels (void)
{
  const SmallPanel words = { .tray = "oxeye fern", .placements = "p1" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);

  for (PpLevel level = PP_LEVEL_FAULT; level <= PP_LEVEL_NOTE; level++)
    {
      PpFinding knot = { .code = "knot-shows", .level = level, .about = PP_ABOUT ("left") };
      PpFinding edge = { .code = "hole-edge", .level = level, .about = PP_ABOUT ("left") };

      g_assert_true (pp_finding_waits (&knot, panel));
      g_assert_false (pp_finding_waits (&edge, panel));
    }
}

/* When a panel is no longer just begun. */
static const struct
{
  const char *name;
  gboolean    begun;
  SmallPanel  words;
} rows[] = {
  { "empty", TRUE, { .tray = "oxeye" } },
  { "nothing-anywhere", TRUE, { .title = "Sedge" } },
  { "one", TRUE, { .tray = "oxeye fern sedge reed campion mallow", .placements = "a" } },
  { "four", TRUE, { .tray = "oxeye fern sedge reed campion mallow", .placements = "a b c d" } },
  { "five", FALSE, { .tray = "oxeye fern sedge reed campion mallow", .placements = "a b c d e" } },
  { "tray-emptied", FALSE, { .tray = "oxeye fern", .placements = "a b:fern" } },
  { "more-than-the-tray", FALSE, { .tray = "oxeye fern", .placements = "a b c" } },
  { "order-accepted", FALSE, { .tray = "oxeye fern", .placements = "a", .plan = "a" } },
  { "bench-begun", FALSE, { .tray = "oxeye fern", .placements = "a", .log = "mixed a" } },
};

static void
test_begun (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (PpPanel) panel = small_panel_good (&rows[i].words);

  g_assert_cmpint (waits ("wire-shows", panel), ==, rows[i].begun);
  g_assert_false (waits ("floats", panel));
}

static PpPanel *
panel_glued (const char *placement_at,
             const char *knot_at)
{
  const SmallPanel words = { .holes = "left right", .tray = "oxeye fern", .placements = "a" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  PpPanel draft = *panel;
  PpWire wire = pp_wire_draft ();
  PpPlacement placement = *pp_panel_placement (panel, 0);
  PpPanel *next;

  wire.from = "left";
  wire.to = "right";
  wire.knotted_at = knot_at;
  placement.glued_at = placement_at;
  draft.wire = pp_wire_new (&wire, NULL);
  draft.placements = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  g_ptr_array_add (draft.placements, pp_placement_new (&placement, NULL));
  next = pp_panel_new (&draft, NULL);
  g_assert_nonnull (next);
  pp_wire_unref (draft.wire);
  g_ptr_array_unref (draft.placements);
  return next;
}

static void
test_glued (void)
{
  const char *at = "2026-05-02T14:30:00+02:00";
  g_autoptr (PpPanel) dry = panel_glued (NULL, NULL);
  g_autoptr (PpPanel) glued = panel_glued (at, NULL);
  g_autoptr (PpPanel) knotted = panel_glued (NULL, at);

  g_assert_true (waits ("knot-shows", dry));
  g_assert_false (waits ("knot-shows", glued));
  g_assert_false (waits ("knot-shows", knotted));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nagging/codes", test_codes);
  g_test_add_func ("/nagging/all", test_all);
  g_test_add_func ("/nagging/levels", test_levels);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/nagging/begun/", rows[i].name, NULL);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_begun);
    }
  g_test_add_func ("/nagging/glued", test_glued);
  return g_test_run ();
}
