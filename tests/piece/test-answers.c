/* test-answers.c: what a maker says of a piece, and nothing else, changes it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Heights are held against the page on forms: a bowl sits on its middle, a form on its rim, a wave
 * on its two ends; the shares of light are those of the page on words.
 */
#include "piece/answers.h"
#include "piece/measures.h"
#include "shape/height.h"

#define CLOSE 1e-9
#define TOUCHES 0.6 /* mm of 8: the tip of a petal is no perfect rim */

static PpPiece *
make (PpRecipe recipe)
{
  PpMeasures measures = pp_measures_draft (recipe);
  g_autoptr (GError) error = NULL;
  PpPiece *piece = pp_measures_make (&measures, &error);

  g_assert_no_error (error);
  return piece;
}

static PpPiece *
apply (const PpAnswers *answers,
       const PpPiece   *piece)
{
  g_autoptr (GError) error = NULL;
  PpPiece *next = pp_answers_apply (answers, piece, &error);

  g_assert_no_error (error);
  return next;
}

static void
test_nothing (void)
{
  PpAnswers answers = pp_answers_draft ();
  g_autoptr (PpPiece) piece = make (PP_RECIPE_CUP);
  g_autoptr (PpPiece) same = apply (&answers, piece);

  g_assert_cmpstr (same->name, ==, piece->name);
  g_assert_cmpint (same->kind, ==, piece->kind);
  g_assert_cmpfloat (same->thickness, ==, piece->thickness);
  g_assert_true (isnan (same->mass));
  g_assert_cmpint (same->form.kind, ==, PP_FORM_FLAT);
  g_assert_true (same->outline == piece->outline);
}

static const struct
{
  const char *name;
  PpRecipe    recipe;
  PpTouch     touch;
  PpFormKind  form;
  double      low;  /* where it touches, as a share of its half height from its middle to its tip */
  double      high; /* where light stands under it */
} rows[] = {
  { "flat", PP_RECIPE_CUP, PP_TOUCH_ALL, PP_FORM_FLAT, 0, 0.9 },
  { "bowl", PP_RECIPE_CUP, PP_TOUCH_MIDDLE, PP_FORM_CUPPED, 0, 0.9 },
  { "form", PP_RECIPE_CUP, PP_TOUCH_RIM, PP_FORM_DOMED, 1, 0 },
  { "wave", PP_RECIPE_LEAF, PP_TOUCH_ENDS, PP_FORM_ARCHED, 1, 0 },
  { "curl", PP_RECIPE_LEAF, PP_TOUCH_MIDDLE, PP_FORM_CURLED, 0, 1 },
  { "base", PP_RECIPE_LEAF, PP_TOUCH_BASE, PP_FORM_MEASURED, -0.9, 1 },
  { "tip", PP_RECIPE_LEAF, PP_TOUCH_TIP, PP_FORM_LIFTED, 0.9, -1 },
};

/* Its tip has the least y. */
static double
get_underside (const PpPiece *piece,
               double         share)
{
  PpBox box = pp_outline_get_box (piece->outline);
  PpHeights heights;

  pp_heights_init (&heights, piece);
  return pp_heights_underside (&heights, (PpPoint) { 0, -share * fmin (-box.y0, box.y1) });
}

static void
test_touch (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  PpAnswers answers = pp_answers_draft ();
  g_autoptr (PpPiece) piece = make (rows[i].recipe);
  g_autoptr (PpPiece) measured = NULL, estimated = NULL, higher = NULL;
  double gap;

  answers.touch = rows[i].touch;
  estimated = apply (&answers, piece);
  g_assert_cmpint (estimated->form.kind, ==, rows[i].form);
  g_assert_cmpint (pp_touch_of_piece (estimated, &gap), ==, rows[i].touch);
  g_assert_cmpfloat_with_epsilon (gap, pp_touch_estimate_gap (rows[i].touch, piece->outline), CLOSE);
  answers.gap = 8;
  measured = apply (&answers, piece);
  g_assert_cmpint (pp_touch_of_piece (measured, &gap), ==, rows[i].touch);
  g_assert_cmpfloat_with_epsilon (gap, rows[i].touch == PP_TOUCH_ALL ? 0 : 8, CLOSE);
  g_assert_cmpfloat_with_epsilon (get_underside (measured, rows[i].low), 0, TOUCHES);
  if (rows[i].touch != PP_TOUCH_ALL)
    g_assert_cmpfloat (get_underside (measured, rows[i].high), >, 4);
  answers = pp_answers_draft ();
  answers.gap = 16; /* alone: touching as before, twice as high */
  higher = apply (&answers, measured);
  g_assert_cmpint (pp_touch_of_piece (higher, &gap), ==, rows[i].touch);
  g_assert_cmpfloat_with_epsilon (get_underside (higher, rows[i].high),
                                  2 * get_underside (measured, rows[i].high), CLOSE);
}

static void
test_words (void)
{
  static const double shares[] = { 0, 0.25, 0.8 };
  PpAnswers answers = pp_answers_draft ();
  g_autoptr (PpPiece) piece = make (PP_RECIPE_LEAF);

  answers.name = "Water dock";
  answers.count = 7;
  answers.kind = PP_KIND_FILLER;
  answers.weight = 90;
  answers.weighed = 4;
  answers.thickness = 3;
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      g_autoptr (PpPiece) told = NULL;

      answers.light = (int) i;
      told = apply (&answers, piece);
      g_assert_cmpfloat (told->transmittance, ==, shares[i]);
      g_assert_cmpint (pp_light_of_piece (told), ==, answers.light);
      g_assert_cmpstr (told->name, ==, "Water dock");
      g_assert_cmpuint (told->count, ==, 7);
      g_assert_cmpint (told->kind, ==, PP_KIND_FILLER);
      g_assert_cmpfloat (told->mass, ==, 22.5);
      g_assert_cmpfloat (told->thickness, ==, 3);
    }
}

static void
test_refused (void)
{
  static const double gaps[] = { -1, 301 };
  g_autoptr (PpPiece) piece = make (PP_RECIPE_LEAF);

  for (guint i = 0; i < G_N_ELEMENTS (gaps); i++)
    {
      PpAnswers answers = pp_answers_draft ();
      g_autoptr (GError) error = NULL;

      answers.gap = gaps[i];
      g_assert_null (pp_answers_apply (&answers, piece, &error));
      g_assert_nonnull (error);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/answers/nothing", test_nothing);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/answers/touch/", rows[i].name, NULL);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_touch);
    }
  g_test_add_func ("/answers/words", test_words);
  g_test_add_func ("/answers/refused", test_refused);
  return g_test_run ();
}
