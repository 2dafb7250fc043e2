/* test-new-panel.c: an empty panel to begin with: where its holes lie and how long its wire is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rules for a new panel's holes and hook are asked here of points along the edge of the glass and
 * of the ellipse the hook runs on; what pp_check_new() says stands in tests/check.
 */
#include "panel/new-panel.h"

#include "panel/panel-error.h"
#include "panel/tolerance.h"

#include "small-panel.h"

#define INCH 25.4
#define N_EDGE 200000 /* points along a curve */

/* What may be expected of a piece of glass. */
typedef enum
{
  NO_HOLES, /* too small */
  SAFE,     /* edges are safe; corners, self-levelling or the hook's place are as may be */
  ROOMY,    /* all of it */
} Expected;

typedef struct
{
  PpBackgroundShape shape;
  double            width; /* in the unit */
  double            height;
  double            thickness;
  PpUnits           units;
  Expected          expected;
} Row;

static const Row rows[] = {
  { PP_SHAPE_RECTANGLE, 8, 10, 0.25, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_RECTANGLE, 10, 8, 0.25, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_RECTANGLE, 11, 14, 5.0 / 32, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_RECTANGLE, 12, 16, 0.25, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_RECTANGLE, 16, 20, 0.375, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_RECTANGLE, 12, 24, 0.25, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_RECTANGLE, 24, 12, 0.25, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_RECTANGLE, 200, 300, 4, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 300, 400, 6, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 400, 500, 10, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 300, 600, 3, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 3000, 3000, 19, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 100, 1000, 4, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 1000, 200, 4, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 180, 180, 10, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 60, 60, 3, PP_UNITS_MM, SAFE },
  { PP_SHAPE_RECTANGLE, 40, 40, 1, PP_UNITS_MM, SAFE },
  { PP_SHAPE_RECTANGLE, 300, 44, 6, PP_UNITS_MM, SAFE },
  { PP_SHAPE_RECTANGLE, 60, 3000, 10, PP_UNITS_MM, NO_HOLES },
  { PP_SHAPE_RECTANGLE, 60, 3000, 4, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_RECTANGLE, 3000, 60, 4, PP_UNITS_MM, SAFE },
  { PP_SHAPE_RECTANGLE, 40, 40, 3, PP_UNITS_MM, SAFE },
  { PP_SHAPE_RECTANGLE, 30, 300, 3, PP_UNITS_MM, NO_HOLES },
  { PP_SHAPE_RECTANGLE, 300, 20, 3, PP_UNITS_MM, NO_HOLES },
  { PP_SHAPE_RECTANGLE, 0.5, 0.5, 3, PP_UNITS_MM, NO_HOLES },
  { PP_SHAPE_RECTANGLE, 300, 400, 150, PP_UNITS_MM, NO_HOLES },
  { PP_SHAPE_ELLIPSE, 12, 16, 0.25, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_ELLIPSE, 16, 12, 0.25, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_ELLIPSE, 200, 200, 6, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_ELLIPSE, 3000, 3000, 10, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_ELLIPSE, 100, 140, 4, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_ELLIPSE, 70, 70, 3, PP_UNITS_MM, SAFE },
  { PP_SHAPE_ELLIPSE, 900, 150, 4, PP_UNITS_MM, SAFE },
  { PP_SHAPE_ELLIPSE, 100, 900, 3, PP_UNITS_MM, SAFE },
  { PP_SHAPE_ELLIPSE, 40, 40, 3, PP_UNITS_MM, SAFE },
  { PP_SHAPE_ELLIPSE, 36, 36, 3, PP_UNITS_MM, NO_HOLES },
  { PP_SHAPE_ARCH, 12, 16, 0.25, PP_UNITS_INCH, ROOMY },
  { PP_SHAPE_ARCH, 300, 400, 6, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_ARCH, 400, 300, 6, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_ARCH, 300, 900, 10, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_ARCH, 3000, 3000, 10, PP_UNITS_MM, ROOMY },
  { PP_SHAPE_ARCH, 900, 150, 3, PP_UNITS_MM, SAFE },
  { PP_SHAPE_ARCH, 60, 100, 3, PP_UNITS_MM, SAFE },
  { PP_SHAPE_ARCH, 50, 30, 3, PP_UNITS_MM, NO_HOLES },
};

static PpNewPanel
wish_of (const Row *row)
{
  double scale = row->units == PP_UNITS_INCH ? INCH : 1;
  PpNewPanel wish = pp_new_panel_wish (row->units);

  wish.shape = row->shape;
  wish.width = row->width * scale;
  wish.height = row->height * scale;
  wish.thickness = row->units == PP_UNITS_INCH ? row->thickness * INCH : row->thickness;
  return wish;
}

/* The i-th of N_EDGE points of an ellipse, or of its upper half, round (a, b). */
static PpPoint
edge_point (double a,
            double b,
            double share,
            guint  i)
{
  double turn = -G_PI * share * i / N_EDGE;

  return (PpPoint) { a + a * cos (turn), b + b * sin (turn) };
}

/* From the hole's centre to the nearest point of the edge, negative outside. */
static double
to_edge (const PpBackground *glass,
         const PpHole       *hole)
{
  double w = glass->width, h = glass->height, a = w / 2;
  double sides = fmin (fmin (hole->x, w - hole->x), fmin (hole->y, h - hole->y));
  double b = glass->shape == PP_SHAPE_ARCH ? h / 4 : h / 2;
  double nearest = INFINITY;

  if (glass->shape == PP_SHAPE_RECTANGLE)
    return sides;
  for (guint i = 0; i <= N_EDGE; i++)
    nearest = fmin (nearest, pp_point_distance (edge_point (a, b, glass->shape == PP_SHAPE_ARCH
                                                                      ? 1 : 2, i),
                                                (PpPoint) { hole->x, hole->y }));
  if (hypot ((hole->x - a) / a, (hole->y - b) / b) > 1
      && (glass->shape == PP_SHAPE_ELLIPSE || hole->y < b))
    return -nearest;
  return glass->shape == PP_SHAPE_ARCH ? fmin (nearest, sides) : nearest;
}

static double
to_corner (const PpBackground *glass,
           const PpHole       *hole)
{
  PpPoint at = { hole->x, hole->y };
  double lower = fmin (pp_point_distance (at, (PpPoint) { 0, glass->height }),
                       pp_point_distance (at, (PpPoint) { glass->width, glass->height }));
  double upper = fmin (pp_point_distance (at, (PpPoint) { 0, 0 }),
                       pp_point_distance (at, (PpPoint) { glass->width, 0 }));

  switch (glass->shape)
    {
    case PP_SHAPE_RECTANGLE:
      return fmin (lower, upper);
    case PP_SHAPE_ARCH:
      return lower;
    case PP_SHAPE_ELLIPSE:
    case PP_SHAPE_FREE:
      break;
    }
  return INFINITY;
}

/* Of the centre of mass below the top, by strips. */
static double
weight_depth (const PpBackground *glass)
{
  double area = 0, moment = 0, rise = glass->height / 4;

  if (glass->shape != PP_SHAPE_ARCH)
    return glass->height / 2;
  for (guint i = 0; i < N_EDGE; i++)
    {
      double y = (i + 0.5) / N_EDGE * glass->height;
      double out = fmin ((y - rise) / rise, 0);
      double across = sqrt (1 - out * out);

      area += across;
      moment += across * y;
    }
  return moment / area;
}

static void
check_room (const PpPanel *panel,
            Expected       expected)
{
  const PpBackground *glass = panel->background;
  const PpHole *left = pp_panel_hole (panel, 0), *right = pp_panel_hole (panel, 1);
  double t = glass->thickness, radius = left->diameter / 2;

  g_assert_cmpfloat (to_edge (glass, left) - radius, >=, fmax (2 * t, 6) - PP_TIE);
  g_assert_cmpfloat (to_edge (glass, right) - radius, >=, fmax (2 * t, 6) - PP_TIE);
  g_assert_cmpfloat (right->x - left->x - 2 * radius, >=, fmax (2 * t, 10) - PP_TIE);
  g_assert_cmpfloat (left->diameter, >=, fmax (t, 6) - PP_TIE);
  if (expected != ROOMY)
    return;
  g_assert_cmpfloat (to_corner (glass, left) - radius, >=, 6.5 * t - PP_TIE);
  g_assert_cmpfloat (left->y, <=, 0.45 * glass->width);
}

static void
check_hanging (const PpPanel *panel,
               Expected       expected)
{
  const PpHole *left = pp_panel_hole (panel, 0), *right = pp_panel_hole (panel, 1);
  double c = (right->x - left->x) / 2, drop = weight_depth (panel->background) - left->y;
  double sag = sqrt (panel->wire->length * panel->wire->length / 4 - c * c);

  g_assert_cmpfloat (drop, >, 0);
  g_assert_cmpfloat (sag * drop, >, c * c * 1.2);
  g_assert_cmpfloat (sag / hypot (c, sag), >, 0.49); /* of the wire's pull that carries */
  if (expected == ROOMY)
    g_assert_cmpfloat (left->y - sag, >=, 0.1 * left->y);
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  const PpNewPanel wish = wish_of (row);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_new_panel (&wish, NULL, &error);
  const PpHole *left, *right;

  g_assert_no_error (error);
  g_assert_cmpfloat (panel->background->width, ==, wish.width);
  g_assert_cmpfloat (panel->background->height, ==, wish.height);
  g_assert_cmpint (panel->background->shape, ==, row->shape);
  g_assert_cmpuint (panel->holes->len, ==, row->expected == NO_HOLES ? 0 : 2);
  g_assert_cmpint (panel->wire == NULL, ==, row->expected == NO_HOLES);
  if (row->expected == NO_HOLES)
    return;
  left = pp_panel_hole (panel, 0);
  right = pp_panel_hole (panel, 1);
  g_assert_cmpfloat (left->y, ==, right->y);
  g_assert_cmpfloat (left->y, <=, 0.35 * wish.height + PP_TIE);
  g_assert_cmpfloat_with_epsilon (left->x + right->x, wish.width, PP_TIE);
  g_assert_cmpfloat (left->diameter, ==, right->diameter);
  g_assert_false (left->drilled || right->drilled);
  g_assert_cmpfloat (panel->wire->knot_diameter, >=, left->diameter + 1);
  check_room (panel, row->expected);
  check_hanging (panel, row->expected);
}

/* Where there is room, a maker reads round figures off the rule. */
static void
test_round (void)
{
  PpNewPanel wish = pp_new_panel_wish (PP_UNITS_INCH);
  g_autoptr (PpPanel) inches = pp_new_panel (&wish, NULL, NULL);
  double eighths = pp_panel_hole (inches, 0)->x / INCH * 8;
  g_autoptr (PpPanel) mm = NULL;

  g_assert_cmpfloat_with_epsilon (eighths, round (eighths), PP_TIE);
  eighths = pp_panel_hole (inches, 0)->y / INCH * 8;
  g_assert_cmpfloat_with_epsilon (eighths, round (eighths), PP_TIE);
  eighths = inches->wire->length / INCH * 8;
  g_assert_cmpfloat_with_epsilon (eighths, round (eighths), PP_TIE);
  wish = pp_new_panel_wish (PP_UNITS_MM);
  wish.width = 287.3;
  wish.height = 411.9;
  mm = pp_new_panel (&wish, NULL, NULL);
  g_assert_cmpfloat (pp_panel_hole (mm, 0)->x, ==, round (pp_panel_hole (mm, 0)->x));
  g_assert_cmpfloat (pp_panel_hole (mm, 0)->y, ==, round (pp_panel_hole (mm, 0)->y));
}

static void
test_wish (void)
{
  g_autoptr (GPtrArray) tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  PpNewPanel wish = pp_new_panel_wish (PP_UNITS_INCH);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = NULL;

  g_ptr_array_add (tray, small_piece ("oxeye", NULL));
  wish.place = PP_PLACE_WINDOW;
  wish.hole_diameter = 5;
  wish.corner_radius = 1000;
  wish.created = "2026-05-02";
  panel = pp_new_panel (&wish, tray, &error);
  g_assert_no_error (error);
  g_assert_cmpint (panel->units, ==, PP_UNITS_INCH);
  g_assert_cmpint (panel->display->place, ==, PP_PLACE_WINDOW);
  g_assert_cmpfloat (pp_panel_hole (panel, 1)->diameter, ==, 5);
  g_assert_cmpfloat (panel->background->corner_radius, ==, wish.width / 2);
  g_assert_cmpstr (panel->created, ==, "2026-05-02");
  g_assert_cmpstr (panel->title, ==, "");
  g_assert_cmpuint (panel->placements->len, ==, 0);
  g_assert_true (pp_panel_find_piece (panel, "oxeye", NULL) == g_ptr_array_index (tray, 0));
}

static void
test_refused (void)
{
  static const struct
  {
    double      width, height, thickness, hole;
    int         code;
    const char *begins;
  } bad[] = {
    { 0, 400, 6, NAN, PP_PANEL_ERROR_VALUE, "width: " },
    { NAN, 400, 6, NAN, PP_PANEL_ERROR_VALUE, "width: " },
    { 300, -1, 6, NAN, PP_PANEL_ERROR_VALUE, "height: " },
    { 300, INFINITY, 6, NAN, PP_PANEL_ERROR_VALUE, "height: " },
    { 3001, 400, 6, NAN, PP_PANEL_ERROR_LIMIT, "width: " },
    { 300, 400, 0, NAN, PP_PANEL_ERROR_VALUE, "thickness: " },
    { 300, 400, 6, -2, PP_PANEL_ERROR_VALUE, "diameter: " },
  };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      PpNewPanel wish = pp_new_panel_wish (PP_UNITS_MM);
      g_autoptr (GError) error = NULL;

      wish.width = bad[i].width;
      wish.height = bad[i].height;
      wish.thickness = bad[i].thickness;
      wish.hole_diameter = bad[i].hole;
      g_assert_null (pp_new_panel (&wish, NULL, &error));
      small_assert_error (error, bad[i].code, bad[i].begins);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/new-panel/%s/%gx%gx%g%s",
                                               pp_background_shape_get_name (rows[i].shape),
                                               rows[i].width, rows[i].height, rows[i].thickness,
                                               rows[i].units == PP_UNITS_INCH ? "in" : "mm");

      g_test_add_data_func (path, &rows[i], test_row);
    }
  g_test_add_func ("/new-panel/round", test_round);
  g_test_add_func ("/new-panel/wish", test_wish);
  g_test_add_func ("/new-panel/refused", test_refused);
  return g_test_run ();
}
