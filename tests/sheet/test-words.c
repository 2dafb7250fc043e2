/* test-words.c: sizes of paper, hours and clocks as written, and the lie of a piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/words.h"

#include <math.h>

#define CLOSE 1e-9 /* mm */

static const struct
{
  const char *text;
  double      width; /* 0: not a paper */
  double      height;
} papers[] = {
  { "a4", 210, 297 },             /* ISO 216 */
  { "A3", 297, 420 },             /* ISO 216 */
  { "letter", 215.9, 279.4 },     /* 8.5 x 11 in */
  { "Legal", 215.9, 355.6 },      /* 8 1/2 by 14 in */
  { "tabloid", 279.4, 431.8 },    /* 11 by 17 in */
  { "300x420", 300, 420 },
  { "297.5X420", 297.5, 420 },
  { "120x5000", 120, 5000 },
  { "", 0, 0 },
  { "a5x", 0, 0 },
  { "300", 0, 0 },
  { "300x", 0, 0 },
  { "x300", 0, 0 },
  { "300x420mm", 0, 0 },
  { "300x420x2", 0, 0 },
  { " 300x420", 0, 0 },
  { "300x 420", 0, 0 },
  { "-300x420", 0, 0 },
  { "119x300", 0, 0 },
  { "300x5001", 0, 0 },
  { "0x300x400", 0, 0 },
  { "infx300", 0, 0 },
  { "nanxnan", 0, 0 },
};

static void
test_paper (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      PpPaper paper = { -1, -1 };
      gboolean is_paper = papers[i].width > 0;

      g_test_message ("%s", papers[i].text);
      g_assert_cmpint (pp_paper_parse (papers[i].text, &paper), ==, is_paper);
      g_assert_cmpfloat_with_epsilon (paper.width, is_paper ? papers[i].width : -1, CLOSE);
      g_assert_cmpfloat_with_epsilon (paper.height, is_paper ? papers[i].height : -1, CLOSE);
    }
}

static const struct
{
  PpPaper paper;
  PpPaper fitted;
  double  scale;
} fits[] = {
  { { 210, 297 }, { 210, 297 }, 1 },
  { { 5000, 120 }, { 5000, 120 }, 1 },
  { { 105, 148 }, { 120, 148.0 * 120 / 105 }, 105.0 / 120 }, /* ISO 216 A6 */
  { { 10000, 4000 }, { 5000, 2000 }, 2 },
  { { 50, 4000 }, { 120, 5000 }, 50.0 / 120 },
};

static void
test_paper_fit (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (fits); i++)
    {
      PpPaper paper = fits[i].paper;
      double scale = pp_paper_fit (&paper);

      g_test_message ("%g x %g", fits[i].paper.width, fits[i].paper.height);
      g_assert_cmpfloat_with_epsilon (paper.width, fits[i].fitted.width, CLOSE);
      g_assert_cmpfloat_with_epsilon (paper.height, fits[i].fitted.height, CLOSE);
      g_assert_cmpfloat_with_epsilon (scale, fits[i].scale, CLOSE);
      g_assert_cmpfloat (paper.width * scale, <=, fits[i].paper.width + CLOSE);
      g_assert_cmpfloat (paper.height * scale, <=, fits[i].paper.height + CLOSE);
    }
}

static void
test_hour (void)
{
  static const char *const hours[] = { "", "12\302\275", "1", "1\302\275", "2" };

  for (guint i = 0; i < G_N_ELEMENTS (hours); i++)
    {
      g_autofree char *text = pp_hour_format (i);

      g_assert_cmpstr (text, ==, hours[i]);
    }
  {
    g_autofree char *noon = pp_hour_format (24);
    g_autofree char *before = pp_hour_format (23);

    g_assert_cmpstr (noon, ==, "12");
    g_assert_cmpstr (before, ==, "11\302\275");
  }
}

static void
test_clock (void)
{
  static const struct
  {
    double      minutes;
    const char *text;
  } rows[] = {
    { 0, "0:00" }, { 0.25, "0:15" }, { 12.5, "12:30" }, { 59.999, "1:00:00" }, { 60, "1:00:00" },
    { 65.75, "1:05:45" }, { 1505, "25:05:00" }, { -1, "0:00" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = pp_clock_format (rows[i].minutes);

      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

/* A leaf from (-10, -40) to (10, 40), its tip up, on a panel at (100, 200). */
static PpLie
lie_of_leaf (PpKind   kind,
             double   rotation,
             gboolean mirrored,
             double   half_width)
{
  const PpPoint corners[] = { { 0, -40 }, { half_width, 0 }, { 0, 40 }, { -half_width, 0 } };
  g_autoptr (PpOutline) outline = pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
  PpPiece piece = pp_piece_draft ();
  PpPlacement placement = pp_placement_draft ();
  g_autoptr (PpOutline) placed = NULL;
  PpBody body = { .piece = &piece, .placement = &placement };

  piece.id = "leaf";
  piece.kind = kind;
  piece.outline = outline;
  placement.x = 100;
  placement.y = 200;
  placement.rotation = rotation;
  placement.mirrored = mirrored;
  body.frame = pp_frame_of (&placement);
  body.centroid = (PpPoint) { 100, 200 };
  body.length = 80;
  body.width = 2 * half_width;
  return pp_lie_of (&body);
}

static void
test_long (void)
{
  PpLie up = lie_of_leaf (PP_KIND_LEAF, 0, FALSE, 10);
  PpLie right = lie_of_leaf (PP_KIND_STEM, 90, FALSE, 10);
  PpLie turned = lie_of_leaf (PP_KIND_LEAF, 225, TRUE, 10);

  g_assert_true (up.is_long && right.is_long);
  g_assert_cmpfloat_with_epsilon (up.tip.x, 100, CLOSE);
  g_assert_cmpfloat_with_epsilon (up.tip.y, 160, CLOSE);
  g_assert_cmpfloat_with_epsilon (up.base.y, 240, CLOSE);
  g_assert_cmpuint (up.half_hours, ==, 24);
  g_assert_cmpfloat_with_epsilon (right.tip.x, 140, CLOSE);
  g_assert_cmpfloat_with_epsilon (right.base.x, 60, CLOSE);
  g_assert_cmpuint (right.half_hours, ==, 6);
  g_assert_cmpuint (turned.half_hours, ==, 15); /* half past seven: to the lower left */
  g_assert_cmpfloat_with_epsilon (turned.tip.x, 100 - 40 * sqrt (0.5), CLOSE);
  g_assert_cmpfloat_with_epsilon (turned.tip.y, 200 + 40 * sqrt (0.5), CLOSE);
}

static void
test_short (void)
{
  PpLie leaf = lie_of_leaf (PP_KIND_LEAF, 32, FALSE, 40);
  PpLie flower = lie_of_leaf (PP_KIND_FLOWER, 180, FALSE, 10);

  g_assert_false (leaf.is_long);
  g_assert_cmpuint (leaf.half_hours, ==, 2); /* to the nearest half hour */
  g_assert_false (flower.is_long);
  g_assert_cmpuint (flower.half_hours, ==, 12);
}

static void
test_round (void)
{
  PpPoint corners[24];
  g_autoptr (PpOutline) outline = NULL;
  PpPiece piece = pp_piece_draft ();
  PpPlacement placement = pp_placement_draft ();
  PpBody body = { .piece = &piece, .placement = &placement, .length = 40, .width = 40 };

  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    corners[i] = (PpPoint) { 20 * sin (i * G_PI / 12), 20 * cos (i * G_PI / 12) };
  outline = pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
  piece.outline = outline;
  placement.rotation = 77;
  body.frame = pp_frame_of (&placement);
  g_assert_cmpuint (pp_lie_of (&body).half_hours, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/paper", test_paper);
  g_test_add_func ("/words/paper-fit", test_paper_fit);
  g_test_add_func ("/words/hour", test_hour);
  g_test_add_func ("/words/clock", test_clock);
  g_test_add_func ("/words/long", test_long);
  g_test_add_func ("/words/short", test_short);
  g_test_add_func ("/words/round", test_round);
  return g_test_run ();
}
