/* test-picture.c: the arrangement as a PNG file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "arrangement.h"
#include "art/picture.h"

static const PpPlacement inside = { .x = 50, .y = 40 };

typedef struct
{
  GBytes *bytes;
  gsize   at;
} Reader;

static cairo_status_t
read_cb (void         *data,
         guchar       *to,
         unsigned int  length)
{
  Reader *reader = data;
  gsize size;
  const guchar *bytes = g_bytes_get_data (reader->bytes, &size);

  if (size - reader->at < length)
    return CAIRO_STATUS_READ_ERROR;
  memcpy (to, bytes + reader->at, length);
  reader->at += length;
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
read_png (GBytes *bytes)
{
  Reader reader = { bytes, 0 };

  return cairo_image_surface_create_from_png_stream (read_cb, &reader);
}

static guint32
get_colour (cairo_surface_t *surface,
            int              x,
            int              y)
{
  const guchar *row = cairo_image_surface_get_data (surface)
                      + y * cairo_image_surface_get_stride (surface);

  return ((const guint32 *) (gconstpointer) row)[x] & 0xffffff;
}

/* 100 x 80 mm with 4 mm around: 108 x 88. At 1080 pixels a mm is 10. */
static void
test_size (void)
{
  g_auto (Arrangement) self = { 0 };
  g_autoptr (GBytes) png = NULL;
  cairo_surface_t *surface;

  arrangement_init (&self, &inside, TRUE);
  png = pp_picture_png (&self.scene, self.gallery, NULL, NULL, NULL, 1080, NULL);
  surface = read_png (png);
  g_assert_cmpint (cairo_image_surface_get_width (surface), ==, 1080);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, 880);
  g_assert_cmphex (get_colour (surface, 5, 5), ==, 0xe9e4da);
  g_assert_cmphex (get_colour (surface, 590, 490), ==, 0x0000ff);
  g_assert_cmphex (get_colour (surface, 690, 490), ==, 0xff0000);
  cairo_surface_destroy (surface);
}

/* A piece beyond the edge is in the picture too: from -10 to 100 mm, with 4.4 mm around. */
static void
test_beyond_the_edge (void)
{
  const PpPlacement beyond = { .x = -10, .y = 40 };
  g_auto (Arrangement) self = { 0 };
  g_autoptr (GBytes) png = NULL;
  cairo_surface_t *surface;

  arrangement_init (&self, &beyond, TRUE);
  png = pp_picture_png (&self.scene, self.gallery, NULL, NULL, NULL, 1188, NULL);
  surface = read_png (png);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, 888);
  g_assert_cmphex (get_colour (surface, 94, 494), ==, 0x0000ff);
  cairo_surface_destroy (surface);
}

/* Seen from the right a piece whose middle is 10 mm up, at the left edge, is seen 10 mm beyond it. */
static void
test_beyond_the_edge_aslant (void)
{
  const PpPlacement edge = { .x = 0, .y = 40 };
  const PpViewFrom right = { .sideways = 45 };
  const double base = 8, top = 12;
  g_auto (Arrangement) self = { 0 };
  g_autoptr (GBytes) png = NULL;
  cairo_surface_t *surface;

  arrangement_init (&self, &edge, TRUE);
  png = pp_picture_png (&self.scene, self.gallery, &base, &top, &right, 1188, NULL);
  surface = read_png (png);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, 888);
  g_assert_cmphex (get_colour (surface, 94, 494), ==, 0x0000ff);
  cairo_surface_destroy (surface);
}

static void
test_from_behind (void)
{
  const PpPlacement beyond = { .x = -10, .y = 40 };
  const PpViewFrom behind = { .from_behind = TRUE };
  g_auto (Arrangement) self = { 0 };
  g_autoptr (GBytes) png = NULL;
  cairo_surface_t *surface;

  arrangement_init (&self, &beyond, TRUE);
  png = pp_picture_png (&self.scene, self.gallery, NULL, NULL, &behind, 1188, NULL);
  surface = read_png (png);
  g_assert_cmphex (get_colour (surface, 1094, 494), ==, 0x0000ff);
  cairo_surface_destroy (surface);
}

static void
test_refused (void)
{
  static const int widths[] = { -1, 0, PP_PICTURE_MIN_WIDTH - 1, PP_PICTURE_MAX_WIDTH + 1 };
  g_auto (Arrangement) self = { 0 };
  g_autoptr (GError) error = NULL;

  arrangement_init (&self, NULL, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      g_assert_null (pp_picture_png (&self.scene, self.gallery, NULL, NULL, NULL, widths[i],
                                     &error));
      g_assert_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT);
      g_clear_error (&error);
    }
}

/* A strip of glass far higher than wide: too many pixels although its width is allowed. */
static void
test_too_many_pixels (void)
{
  const PpPoint strip[] = { { 0, 0 }, { 10, 0 }, { 10, 1000 }, { 0, 1000 } };
  g_auto (Arrangement) self = { 0 };
  g_autoptr (GError) error = NULL;

  arrangement_init (&self, NULL, TRUE);
  pp_outline_unref (self.scene.background_outline);
  self.scene.background_outline = pp_outline_new_ring (strip, G_N_ELEMENTS (strip));
  g_assert_null (pp_picture_png (&self.scene, self.gallery, NULL, NULL, NULL,
                                 PP_PICTURE_MAX_WIDTH, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT);
}

static void
test_same_twice (void)
{
  g_auto (Arrangement) self = { 0 };
  g_autoptr (GBytes) first = NULL;
  g_autoptr (GBytes) second = NULL;

  arrangement_init (&self, &inside, TRUE);
  first = pp_picture_png (&self.scene, self.gallery, NULL, NULL, NULL, 300, NULL);
  second = pp_picture_png (&self.scene, self.gallery, NULL, NULL, NULL, 300, NULL);
  g_assert_true (g_bytes_equal (first, second));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/picture/size", test_size);
  g_test_add_func ("/picture/beyond-the-edge", test_beyond_the_edge);
  g_test_add_func ("/picture/beyond-the-edge-aslant", test_beyond_the_edge_aslant);
  g_test_add_func ("/picture/from-behind", test_from_behind);
  g_test_add_func ("/picture/refused", test_refused);
  g_test_add_func ("/picture/too-many-pixels", test_too_many_pixels);
  g_test_add_func ("/picture/same-twice", test_same_twice);
  return g_test_run ();
}
