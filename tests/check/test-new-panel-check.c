/* test-new-panel-check.c: what the check says of an empty panel to begin with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing but that wire and knots are in view: the maker has not covered them yet.
 */
#include "check/check.h"
#include "panel/new-panel.h"

/* mm */
static const double sizes[][2] = {
  { 203.2, 254 }, { 279.4, 355.6 }, { 304.8, 406.4 }, { 406.4, 508 }, { 304.8, 609.6 },
  { 200, 300 },   { 300, 400 },     { 400, 500 },     { 300, 600 },   { 600, 300 },
  { 250, 250 },   { 1200, 900 },
};

static const double thicknesses[] = { 3, 6.35, 10 };

static const PpBackgroundShape shapes[] = { PP_SHAPE_RECTANGLE, PP_SHAPE_ELLIPSE, PP_SHAPE_ARCH };

static gboolean
is_about_cover (const char *code)
{
  return g_str_equal (code, "wire-shows") || g_str_equal (code, "knot-shows")
         || g_str_equal (code, "shows-aslant");
}

/* Notes too, where the glass is of a usual size; else only faults and cautions. */
static void
check_quiet (const PpNewPanel *wish,
             gboolean          notes)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_new_panel (wish, NULL, &error);
  g_autoptr (PpCheck) check = NULL;

  g_assert_no_error (error);
  check = pp_check_new (panel, NULL, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);

      if (!is_about_cover (finding->code) && (notes || finding->level != PP_LEVEL_NOTE))
        g_error ("%s %g x %g x %g mm: %s", pp_background_shape_get_name (wish->shape), wish->width,
                 wish->height, wish->thickness, finding->text);
    }
  if (panel->wire == NULL)
    return;
  g_assert_true (check->hang->has_level);
  g_assert_cmpfloat_with_epsilon (check->hang->middle_tilt, 0, PP_TIE);
  if (!notes)
    return;
  g_assert_true (check->hang->self_levelling);
  g_assert_cmpfloat (check->hang->hook_above_edge, ==, 0);
}

static void
test_usual (gconstpointer data)
{
  const double *size = data;

  for (guint s = 0; s < G_N_ELEMENTS (shapes); s++)
    for (guint t = 0; t < G_N_ELEMENTS (thicknesses); t++)
      {
        PpNewPanel wish = pp_new_panel_wish ((s + t) % 2 == 0 ? PP_UNITS_INCH : PP_UNITS_MM);

        wish.place = t % 2 == 0 ? PP_PLACE_WALL : PP_PLACE_WINDOW;
        wish.shape = shapes[s];
        wish.width = size[0];
        wish.height = size[1];
        wish.thickness = thicknesses[t];
        check_quiet (&wish, TRUE);
      }
}

static void
test_strange (void)
{
  static const double strange[][3] = {
    { 60, 60, 3 },   { 40, 40, 3 },    { 38, 3000, 4 },   { 3000, 60, 4 }, { 2, 2, 3 },
    { 90, 700, 12 }, { 700, 90, 12 },  { 800, 1000, 25 }, { 45, 70, 3 },  { 300, 400, 30 },
    { 60, 60, 10 },  { 120, 80, 5.5 }, { 150, 60, 3 },
  };

  for (guint s = 0; s < G_N_ELEMENTS (shapes); s++)
    for (guint i = 0; i < G_N_ELEMENTS (strange); i++)
      for (guint units = PP_UNITS_MM; units <= PP_UNITS_INCH; units++)
        {
          PpNewPanel wish = pp_new_panel_wish (units);

          wish.shape = shapes[s];
          wish.width = strange[i][0];
          wish.height = strange[i][1];
          wish.thickness = strange[i][2];
          check_quiet (&wish, FALSE);
        }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autofree char *path = g_strdup_printf ("/new-panel-check/usual/%gx%g", sizes[i][0],
                                               sizes[i][1]);

      g_test_add_data_func (path, sizes[i], test_usual);
    }
  g_test_add_func ("/new-panel-check/strange", test_strange);
  return g_test_run ();
}
