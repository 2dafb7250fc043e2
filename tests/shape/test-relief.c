/* test-relief.c: a piece cell by cell, against its heights asked for point by point.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "rings.h"
#include "shape/range.h"
#include "shape/relief.h"

#include <stdlib.h>

static const char *outlines[] = {
  "-25 -30, 22 -28, 30 10, 5 33, -8 2, -28 12", /* a notch: two spans in some rows */
  "-10 -1, 30 3, 31 4, -10 0.2",                /* a sliver */
};

#define SAME 1e-9

/* As measured at nine places: a ridge, with creases. */
static const double ridge[] = { 0, 4, 1, 0, 6, 2, 1, 5, 0 };

static const PpForm forms[] = {
  { .kind = PP_FORM_FLAT },
  { .kind = PP_FORM_CUPPED, .rise = 12, .foot = 10 },
  { .kind = PP_FORM_DOMED, .rise = 8 },
  { .kind = PP_FORM_ARCHED, .rise = 4 },
  { .kind = PP_FORM_CURLED, .rise = 4 },
  { .kind = PP_FORM_LIFTED, .rise = 9, .flat = 10 },
  { .kind = PP_FORM_MEASURED },
};

static const PpCrown crowns[] = { { .height = 0 }, { .height = 6, .radius = 14 } };

static PpPiece *
piece_of (const char *outline_of,
          PpForm      form,
          PpCrown     crown)
{
  g_autoptr (PpOutline) outline = test_outline (outline_of);
  g_autoptr (PpHeightGrid) grid = pp_height_grid_new (-25, -30, 30, 3, 3, ridge);
  g_autoptr (GError) error = NULL;
  PpPiece draft = pp_piece_draft ();
  PpPiece *piece;

  draft.id = "a";
  draft.thickness = 5;
  draft.outline = outline;
  draft.form = form;
  draft.form.grid = form.kind == PP_FORM_MEASURED ? grid : NULL;
  draft.crown = crown;
  piece = pp_piece_new (&draft, &error);
  g_assert_no_error (error);
  return piece;
}

static double
underside_of (const PpRelief *relief,
              guint           cell)
{
  return relief->underside == NULL ? 0 : relief->underside[cell];
}

/* Gives the sum of the span's undersides. */
static double
compare_span (const PpRelief *relief,
              const PpSpan   *span,
              guint           k,
              guint           cell)
{
  double tops[400], sum = 0, least = INFINITY, greatest = -INFINITY;

  pp_relief_fill_tops (relief, *span, cell, tops);
  for (int i = span->i0; i < span->i1; i++)
    {
      PpPoint at = { pp_cell_centre (i), pp_cell_centre (span->j) };
      PpPoint own = pp_frame_to_piece (relief->frame, at);
      double underside = underside_of (relief, cell + (guint) (i - span->i0));
      double top = tops[i - span->i0];

      g_assert_cmpfloat_with_epsilon (underside, pp_heights_underside (relief->heights, own), SAME);
      g_assert_cmpfloat_with_epsilon (top, pp_heights_top (relief->heights, own), SAME);
      sum += underside;
      least = fmin (least, underside);
      greatest = fmax (greatest, top);
    }
  if (relief->lowest == NULL)
    {
      g_assert_cmpfloat (least, ==, 0);
      g_assert_cmpfloat (greatest, ==, relief->heights->thickness);
      return sum;
    }
  g_assert_cmpfloat (relief->lowest[k], ==, least);
  g_assert_cmpfloat (relief->top_bound[k], >=, greatest);
  g_assert_cmpfloat (relief->top_bound[k], <=,
                     greatest + (pp_relief_has_crown (relief) ? relief->heights->crown.height : 0));
  return sum;
}

/* Turned and mirrored too; narrower than a cell in places. */
static void
compare_cells (const char *outline_of)
{
  for (guint f = 0; f < G_N_ELEMENTS (forms) * G_N_ELEMENTS (crowns) * 4; f++)
    {
      g_autoptr (PpPiece) piece = piece_of (outline_of, forms[f / 8], crowns[f / 4 % 2]);
      PpPlacement placement = { .x = 101.3, .y = 77.7, .rotation = f % 4 * 33.0,
                                .mirrored = f % 2 == 1 };
      PpFrame frame = pp_frame_of (&placement);
      g_autoptr (PpOutline) outline = pp_place_outline (piece, &placement);
      g_autoptr (PpCells) cells = pp_cells_new (outline);
      PpRelief *relief;
      PpHeights heights;
      double sum = 0;
      guint cell = 0;

      pp_heights_init (&heights, piece);
      relief = pp_relief_new (&heights, &frame, cells);
      for (guint k = 0; k < cells->n_spans; k++)
        {
          sum += compare_span (relief, &cells->spans[k], k, cell);
          cell += (guint) (cells->spans[k].i1 - cells->spans[k].i0);
        }
      g_assert_cmpuint (cell, >, 0);
      g_assert_cmpfloat_with_epsilon (relief->mean_underside, sum / cell, SAME);
      pp_relief_free (relief);
    }
}

static void
test_cells (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (outlines); k++)
    compare_cells (outlines[k]);
}

static int
compare_numbers (const void *a,
                 const void *b)
{
  double p = *(const double *) a, q = *(const double *) b;

  return p < q ? -1 : p > q;
}

/* The first and last of them in order. */
static void
test_range (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (3);

  for (guint n = 1; n <= 40; n++)
    {
      double x[40];
      PpRange range;

      for (guint i = 0; i < n; i++)
        x[i] = g_rand_double_range (dice, -9, 9);
      range = pp_range_of (x, n);
      qsort (x, n, sizeof *x, compare_numbers);
      g_assert_cmpfloat (range.least, ==, x[0]);
      g_assert_cmpfloat (range.greatest, ==, x[n - 1]);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/relief/cells", test_cells);
  g_test_add_func ("/relief/range", test_range);
  return g_test_run ();
}
