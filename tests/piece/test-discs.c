/* test-discs.c: the middles of a frame's discs in photos taken aslant.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The frame is drawn here by cairo; where the middle of an ellipse is, is held against the middle
 * of the polygon it was drawn as.
 */
#include "piece/discs.h"

#include "art/taken.h"
#include "piece/plane.h"
#include "shape/polygon.h"

#include <cairo.h>

#define WIDTH 1800 /* pixels */
#define HEIGHT 1300
#define ACROSS 180.0 /* mm */
#define ALONG 240.0
#define RADIUS 6.0
#define HOLE 2.0
#define N_SIDES 256
#define NEAR 0.1 /* pixels */

static PpOutline *
see_circle (const PpSheetPlane *plane,
            PpPoint             middle,
            double              radius)
{
  PpPoint points[N_SIDES];

  for (guint i = 0; i < N_SIDES; i++)
    {
      double angle = i * 2 * G_PI / N_SIDES;

      points[i] = pp_plane_map (plane, (PpPoint) { middle.x + radius * cos (angle),
                                                   middle.y + radius * sin (angle) });
    }
  return pp_outline_new_ring (points, N_SIDES);
}

static PpPoint
draw_circle (cairo_t            *cr,
             const PpSheetPlane *plane,
             PpPoint             middle,
             double              radius,
             double              light)
{
  g_autoptr (PpOutline) seen = see_circle (plane, middle, radius);
  guint n;
  const PpPoint *ring = pp_outline_get_ring (seen, 0, &n);

  for (guint i = 0; i < n; i++)
    cairo_line_to (cr, ring[i].x, ring[i].y);
  cairo_set_source_rgb (cr, light, light, light);
  cairo_fill (cr);
  return pp_outline_centroid (seen);
}

/* The corners of the frame lie at `at`; `middles` gets those of its discs. (transfer full) */
static PpPhoto *
photograph (const PpPoint at[4],
            PpPoint       middles[4])
{
  const PpPoint sheet[4] = { { 0, 0 }, { ACROSS, 0 }, { ACROSS, ALONG }, { 0, ALONG } };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  GByteArray *png = g_byte_array_new ();
  g_autoptr (GBytes) bytes = NULL;
  PpSheetPlane plane;

  g_assert_true (pp_plane_fit (sheet, at, &plane));
  cairo_set_source_rgb (cr, 0.95, 0.95, 0.95);
  cairo_paint (cr);
  for (guint i = 0; i < 4; i++)
    middles[i] = draw_circle (cr, &plane, sheet[i], RADIUS, 0.1);
  draw_circle (cr, &plane, sheet[0], HOLE, 0.95);
  cairo_destroy (cr);
  cairo_surface_write_to_png_stream (surface, pp_taken_add, png);
  cairo_surface_destroy (surface);
  bytes = g_byte_array_free_to_bytes (png);
  return pp_photo_load (bytes, NULL, NULL, NULL, NULL);
}

typedef struct
{
  const char *name;
  PpPoint     at[4];
} Row;

static const Row rows[] = {
  { "straight", { { 500, 100 }, { 1250, 100 }, { 1250, 1100 }, { 500, 1100 } } },
  /* the disc with the hole is little more than half as wide as the nearest */
  { "from-below", { { 530, 250 }, { 1270, 250 }, { 1450, 1150 }, { 350, 1150 } } },
  { "from-above", { { 350, 150 }, { 1450, 150 }, { 1270, 1050 }, { 530, 1050 } } },
};

static void
test_aslant (gconstpointer data)
{
  const Row *row = data;
  PpPoint middles[4], corners[4];
  g_autoptr (PpPhoto) photo = photograph (row->at, middles);
  g_autoptr (GError) error = NULL;

  g_assert_true (pp_discs_find (photo, ACROSS, ALONG, corners, NULL, &error));
  g_assert_no_error (error);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat (pp_point_distance (corners[i], middles[i]), <, NEAR);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/discs/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_aslant);
    }
  return g_test_run ();
}
