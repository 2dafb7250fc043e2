/* test-drawing-part.c: the part of a drawing that is chosen is the outline.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Areas are those of rectangles and circles.
 */
#include "art/art.h"
#include "panel/panel-error.h"
#include "piece/drawing.h"
#include "shape/polygon.h"

#define NEAR 0.01 /* of an area */

/* A leaf of two parts on a page with a border and a scale beside it. */
#define DRAWING                                                                                    \
  "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 100 80'>"                                  \
  "<defs><rect id='hidden' width='5' height='5'/></defs>"                                          \
  "<rect id='page' x='1' y='1' width='98' height='78' fill='none' stroke='gray'/>"                 \
  "<g id='leaf' transform='translate(20 10)'>"                                                     \
  "<rect id='blade' width='30' height='40' fill='green'/>"                                         \
  "<circle id='eye' cx='15' cy='20' r='6' fill='white'/></g>"                                      \
  "<circle id='cut' cx='75' cy='40' r='15' style='fill: none; stroke: red; stroke-width: 1'/>"     \
  "<path id='frame' fill-rule='evenodd' d='M60 60h30v15h-30zM65 64v6h20v-6z'/>"                     \
  "<text>no name</text></svg>"

static GBytes *
get_drawing (void)
{
  return g_bytes_new_static (DRAWING, sizeof DRAWING - 1);
}

static PpPiece *
make (const char *element,
      GError    **error)
{
  g_autoptr (GBytes) svg = get_drawing ();
  PpPiece draft = pp_piece_draft ();

  draft.id = "drawing";
  draft.name = "Dock";
  draft.kind = PP_KIND_LEAF;
  draft.thickness = 6;
  return pp_drawing_make (svg, element, &draft, error);
}

static void
test_list (void)
{
  static const char *const wanted[] = { "page", "leaf", "blade", "eye", "cut", "frame" };
  g_autoptr (GBytes) svg = get_drawing ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) parts = pp_drawing_list_parts (svg, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (parts->len, ==, G_N_ELEMENTS (wanted));
  for (guint i = 0; i < parts->len; i++)
    g_assert_cmpstr (((PpDrawingPart *) parts->pdata[i])->id, ==, wanted[i]);
  g_assert_true (pp_drawing_parts_find (parts, "cut")->is_line);
  g_assert_false (pp_drawing_parts_find (parts, "blade")->is_line);
  g_assert_null (pp_drawing_parts_find (parts, "hidden"));
}

static const struct
{
  const char *element;
  double      area;
  guint       n_rings;
} rows[] = {
  { "blade", 30 * 40, 1 },
  { "leaf", 30 * 40, 1 },
  { "eye", G_PI * 36, 1 },
  { "cut", G_PI * 15.5 * 15.5, 1 }, /* with what the line encloses */
  { "frame", 30 * 15 - 20 * 6, 2 },
};

static void
test_made (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) piece = make (rows[i].element, &error);
  g_autoptr (PpArt) art = NULL;
  double area;

  g_assert_no_error (error);
  area = pp_outline_area (piece->outline);
  g_assert_cmpfloat (area, >, rows[i].area * (1 - NEAR));
  g_assert_cmpfloat (area, <, rows[i].area * (1 + NEAR));
  g_assert_cmpuint (pp_outline_get_n_rings (piece->outline), ==, rows[i].n_rings);
  art = pp_art_new (piece->art, &error);
  g_assert_no_error (error);
}

/* Nothing is painted beyond the outline: not the page's border, which lies 20 mm and more away. */
static void
test_cut_off (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) piece = make ("blade", &error);
  g_autoptr (PpArt) art = NULL;
  cairo_surface_t *surface;
  cairo_t *cr;
  int width, height;
  const guchar *pixels;
  PpBox box;
  guint n = 0;

  g_assert_no_error (error);
  art = pp_art_new (piece->art, &error);
  g_assert_no_error (error);
  box = pp_art_get_box (art);
  width = (int) pp_box_width (box);
  height = (int) pp_box_height (box);
  surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cr = cairo_create (surface);
  cairo_translate (cr, -box.x0, -box.y0);
  pp_art_draw (art, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  pixels = cairo_image_surface_get_data (surface);
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      n += pixels[y * cairo_image_surface_get_stride (surface) + 4 * x + 3] > 127;
  cairo_surface_destroy (surface);
  g_assert_cmpuint (n, >=, 29 * 39);
  g_assert_cmpuint (n, <=, 31 * 41);
}

static void
test_refused (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (make ("stalk", &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE);
  g_clear_error (&error);
  g_assert_null (make ("hidden", &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing-part/list", test_list);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/drawing-part/made/%s", rows[i].element);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_made);
    }
  g_test_add_func ("/drawing-part/cut-off", test_cut_off);
  g_test_add_func ("/drawing-part/refused", test_refused);
  return g_test_run ();
}
