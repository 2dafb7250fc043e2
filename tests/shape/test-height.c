/* test-height.c: the forms of a piece, worked by hand from their formulas, and its mass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "rings.h"
#include "shape/height.h"

/* All on one outline: y from -30 to 10, so s0 = -30, s1 = 10, len = 40, m = -10; farthest corner
 * (0, -30), so R = 30. */
#define OUTLINE "0 -30, 10 0, 0 10, -10 0"

typedef struct
{
  const char *name;
  PpForm      form;
  PpPoint     at;
  double      underside;
} Underside;

static const Underside undersides[] = {
  { "flat", { .kind = PP_FORM_FLAT }, { 5, 5 }, 0 },
  { "cupped/on-foot", { .kind = PP_FORM_CUPPED, .rise = 12, .foot = 10 }, { 6, 8 }, 0 },
  { "cupped/half-way", { .kind = PP_FORM_CUPPED, .rise = 12, .foot = 10 }, { 0, -20 }, 3 },
  { "cupped/rim", { .kind = PP_FORM_CUPPED, .rise = 12, .foot = 10 }, { 0, -30 }, 12 },
  { "cupped/all-foot", { .kind = PP_FORM_CUPPED, .rise = 12, .foot = 30 }, { 0, -30 }, 0 },
  { "domed/middle", { .kind = PP_FORM_DOMED, .rise = 8 }, { 0, 0 }, 8 },
  { "domed/half-way", { .kind = PP_FORM_DOMED, .rise = 8 }, { 9, -12 }, 6 },
  { "domed/rim", { .kind = PP_FORM_DOMED, .rise = 8 }, { 0, -30 }, 0 },
  { "arched/middle", { .kind = PP_FORM_ARCHED, .rise = 4 }, { 3, -10 }, 4 },
  { "arched/quarter", { .kind = PP_FORM_ARCHED, .rise = 4 }, { 3, 0 }, 3 },
  { "arched/end", { .kind = PP_FORM_ARCHED, .rise = 4 }, { 0, -30 }, 0 },
  { "curled/middle", { .kind = PP_FORM_CURLED, .rise = 4 }, { 3, -10 }, 0 },
  { "curled/quarter", { .kind = PP_FORM_CURLED, .rise = 4 }, { -3, -20 }, 1 },
  { "curled/end", { .kind = PP_FORM_CURLED, .rise = 4 }, { 0, 10 }, 4 },
  { "lifted/flat-part", { .kind = PP_FORM_LIFTED, .rise = 9, .flat = 10 }, { 0, -21 }, 0 },
  { "lifted/beyond", { .kind = PP_FORM_LIFTED, .rise = 9, .flat = 10 }, { 0, 0 }, 4 },
  { "lifted/end", { .kind = PP_FORM_LIFTED, .rise = 9, .flat = 10 }, { 0, 10 }, 9 },
  { "lifted/half-by-default", { .kind = PP_FORM_LIFTED, .rise = 8, .flat = NAN }, { 0, 0 }, 2 },
  { "lifted/all-flat", { .kind = PP_FORM_LIFTED, .rise = 8, .flat = 40 }, { 0, 10 }, 0 },
};

static PpPiece *
piece_of (const PpForm *form,
          PpCrown       crown,
          double        mass)
{
  g_autoptr (PpOutline) outline = test_outline (OUTLINE);
  g_autoptr (GError) error = NULL;
  PpPiece draft = pp_piece_draft ();
  PpPiece *piece;

  draft.id = "a";
  draft.thickness = 5;
  draft.outline = outline;
  draft.form = *form;
  draft.crown = crown;
  draft.mass = mass;
  piece = pp_piece_new (&draft, &error);
  g_assert_no_error (error);
  return piece;
}

static void
test_underside (gconstpointer data)
{
  const Underside *row = data;
  g_autoptr (PpPiece) piece = piece_of (&row->form, (PpCrown) { 0 }, NAN);
  PpHeights heights;

  pp_heights_init (&heights, piece);
  g_assert_cmpfloat_with_epsilon (pp_heights_underside (&heights, row->at), row->underside, 1e-12);
  g_assert_cmpfloat_with_epsilon (pp_heights_top (&heights, row->at), row->underside + 5, 1e-12);
}

/* Rows 0 2 / 4 6 at x 0, 10 and y -10, 0: bilinear inside, clamped outside. */
static void
test_measured (void)
{
  const double grid_heights[] = { 0, 2, 4, 6 };
  g_autoptr (PpHeightGrid) grid = pp_height_grid_new (0, -10, 10, 2, 2, grid_heights);
  const PpForm form = { .kind = PP_FORM_MEASURED, .grid = grid };
  g_autoptr (PpPiece) piece = piece_of (&form, (PpCrown) { 0 }, NAN);
  const struct { PpPoint at; double underside; } rows[] = {
    { { 0, -10 }, 0 }, { { 10, -10 }, 2 }, { { 0, 0 }, 4 }, { { 10, 0 }, 6 },
    { { 5, -5 }, 3 }, { { 2.5, -10 }, 0.5 }, { { -9, -30 }, 0 }, { { 40, 40 }, 6 },
    { { 10, -5 }, 4 },
  };
  PpHeights heights;

  pp_heights_init (&heights, piece);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat_with_epsilon (pp_heights_underside (&heights, rows[i].at),
                                    rows[i].underside, 1e-12);
}

/* Crown 4 high, radius 10: 4 at its middle, 3 half way out, 0 from its rim on. */
static void
test_crown (void)
{
  const PpForm flat = { .kind = PP_FORM_FLAT };
  g_autoptr (PpPiece) piece = piece_of (&flat, (PpCrown) { .height = 4, .radius = 10 }, NAN);
  PpHeights heights;

  pp_heights_init (&heights, piece);
  g_assert_cmpfloat_with_epsilon (pp_heights_top (&heights, (PpPoint) { 0, 0 }), 9, 1e-12);
  g_assert_cmpfloat_with_epsilon (pp_heights_top (&heights, (PpPoint) { 3, -4 }), 8, 1e-12);
  g_assert_cmpfloat_with_epsilon (pp_heights_top (&heights, (PpPoint) { 0, -20 }), 5, 1e-12);
}

/* 400 mm² of 5 mm glass at 2500 kg/m³ is 5 g; the crown adds π/2·100·4 mm³ of it. The rule of
 * 2.5 kg a m² and mm: glass processors' pages quoting EN 572-1. */
static void
test_mass (void)
{
  const PpForm flat = { .kind = PP_FORM_FLAT };
  const PpCrown crown = { .height = 4, .radius = 10 };
  g_autoptr (PpPiece) plain = piece_of (&flat, (PpCrown) { 0 }, NAN);
  g_autoptr (PpPiece) crowned = piece_of (&flat, crown, NAN);
  g_autoptr (PpPiece) weighed = piece_of (&flat, crown, 17);

  g_assert_cmpfloat_with_epsilon (pp_piece_get_mass (plain), 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (pp_piece_get_mass (crowned), 5 + 200 * G_PI * 2.5e-3, 1e-12);
  g_assert_cmpfloat (pp_piece_get_mass (weighed), ==, 17);
}

/* How fast the slope changes along short straight lines, of all directions, is what the formulas give
 * when derived twice: never more than the bound, and somewhere nearly that. */
static void
test_bend (gconstpointer data)
{
  const Underside *row = data;
  g_autoptr (PpPiece) piece = piece_of (&row->form, (PpCrown) { 0 }, NAN);
  const double step = 0.05, slack = 1e-6;
  double greatest = 0, bound;
  PpHeights heights;

  pp_heights_init (&heights, piece);
  bound = pp_heights_get_bend (&heights);
  for (double x = -25; x <= 25; x += 2.5)
    for (double y = -28; y <= 9; y += 1)
      for (int turn = 0; turn < 180; turn += 15)
        {
          double dx = step * cos (turn * G_PI / 180), dy = step * sin (turn * G_PI / 180);
          double second = pp_heights_underside (&heights, (PpPoint) { x + dx, y + dy })
                          + pp_heights_underside (&heights, (PpPoint) { x - dx, y - dy })
                          - 2 * pp_heights_underside (&heights, (PpPoint) { x, y });

          if (hypot (x, y) <= heights.reach - step)
            greatest = fmax (greatest, fabs (second) / (step * step));
        }
  g_assert_cmpfloat (greatest, <=, bound + slack);
  g_assert_cmpfloat (greatest, >=, 0.99 * bound - slack);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (undersides); i++)
    {
      g_autofree char *path = g_strconcat ("/height/underside/", undersides[i].name, NULL);

      g_autofree char *bend = g_strdup_printf ("/height/bend/%s", undersides[i].name);

      g_test_add_data_func (path, &undersides[i], test_underside);
      g_test_add_data_func (bend, &undersides[i], test_bend);
    }
  g_test_add_func ("/height/measured", test_measured);
  g_test_add_func ("/height/crown", test_crown);
  g_test_add_func ("/height/mass", test_mass);
  return g_test_run ();
}
