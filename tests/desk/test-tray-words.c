/* test-tray-words.c: what the tray says about a piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/tray-words.h"

#include "small-panel.h"

#define INCH 25.4

static PpPiece *
make_piece (const char *name,
            PpKind      kind,
            guint       count,
            double      width,
            double      height)
{
  const PpPoint corners[] = { { 0, 0 }, { width, 0 }, { width, height }, { 0, height } };
  g_autoptr (PpPiece) square = small_piece ("cornflower", NULL);
  g_autoptr (PpOutline) outline = pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
  PpPiece draft = *square;

  draft.name = name;
  draft.kind = kind;
  draft.count = count;
  draft.outline = outline;
  return pp_piece_new (&draft, NULL);
}

static void
test_left (void)
{
  static const struct
  {
    guint       count;
    guint       placed;
    const char *expected;
  } rows[] = {
    { 6, 0, "6 of 6 left" },
    { 3, 1, "2 of 3 left" },
    { 3, 2, "1 of 3 left" },
    { 3, 3, "none left" },
    { 0, 0, "none left" },
    { 3, 4, "1 too many" },
    { 0, 12, "12 too many" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *left = pp_tray_words_left (rows[i].count, rows[i].placed);

      g_assert_cmpstr (left, ==, rows[i].expected);
    }
}

static void
test_all (void)
{
  static const struct
  {
    const char *name;
    PpKind      kind;
    double      width;
    double      height;
    PpUnits     units;
    const char *expected;
  } rows[] = {
    { "Cornflower", PP_KIND_FLOWER, 50, 50, PP_UNITS_MM,
      "Cornflower, flower, 4 of 6 left, 50 mm across" },
    { "Cornflower", PP_KIND_FLOWER, 2 * INCH, 2 * INCH, PP_UNITS_INCH,
      "Cornflower, flower, 4 of 6 left, 2 in across" },
    { "Sedge", PP_KIND_STEM, 6, 184, PP_UNITS_MM, "Sedge, stem, 4 of 6 left, 184 mm long" },
    { "Fern", PP_KIND_LEAF, 184, 6, PP_UNITS_MM, "Fern, leaf, 4 of 6 left, 184 mm long" },
    { "", PP_KIND_BUD, 30, 20, PP_UNITS_MM, "cornflower, bud, 4 of 6 left, 30 mm across" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (PpPiece) piece = make_piece (rows[i].name, rows[i].kind, 6, rows[i].width,
                                              rows[i].height);
      g_autofree char *all = pp_tray_words_all (piece, 2, rows[i].units);

      g_assert_cmpstr (all, ==, rows[i].expected);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tray-words/left", test_left);
  g_test_add_func ("/tray-words/all", test_all);
  return g_test_run ();
}
