/* test-draw.c: pixels of the arrangement: what is drawn, where, and what shows through.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#define _GNU_SOURCE /* memmem */
#include "arrangement.h"

#include <cairo-pdf.h>
#include <sys/mman.h>
#include <unistd.h>

#define SCALE 5 /* pixels a mm */
#define SIDE 130 /* mm of the sheet drawn on; its middle part begins at 15, 15 */
#define OFFSET 15
#define BLUE 0xff0000ffu
#define RED 0xffff0000u

static cairo_surface_t *
draw_scene (const Arrangement *self,
            const double      *heights,
            const double      *tops,
            const PpViewFrom  *view)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, SIDE * SCALE,
                                                         SIDE * SCALE);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, SCALE, SCALE);
  cairo_translate (cr, OFFSET, OFFSET);
  pp_draw_scene (cr, &self->scene, self->gallery, heights, tops, view);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* The pixel whose corner lies at (x, y) in the panel frame. */
static guint32
get_pixel (cairo_surface_t *surface,
           double           x,
           double           y)
{
  const guchar *row = cairo_image_surface_get_data (surface)
                      + (int) ((y + OFFSET) * SCALE) * cairo_image_surface_get_stride (surface);

  return ((const guint32 *) (gconstpointer) row)[(int) ((x + OFFSET) * SCALE)];
}

static guint
get_alpha (cairo_surface_t *surface,
           double           x,
           double           y)
{
  return get_pixel (surface, x, y) >> 24;
}

/* Own points (5, 5), blue, and (15, 5), red, by hand from the formula of the placing. */
typedef struct
{
  const char *name;
  double      rotation;
  gboolean    mirrored;
  PpPoint     blue;
  PpPoint     red;
} Placed;

static const Placed placed[] = {
  { "as-it-is", 0, FALSE, { 55, 45 }, { 65, 45 } },
  { "quarter", 90, FALSE, { 45, 45 }, { 45, 55 } },
  { "half", 180, FALSE, { 45, 35 }, { 35, 35 } },
  { "mirrored", 0, TRUE, { 45, 45 }, { 35, 45 } },
  { "mirrored-quarter", 90, TRUE, { 45, 35 }, { 45, 25 } },
  { "slanting", 30, FALSE, { 51.830, 46.830 }, { 60.490, 51.830 } },
  { "slanting-mirrored", 30, TRUE, { 43.170, 41.830 }, { 34.510, 36.830 } },
};

static void
test_placed (gconstpointer data)
{
  const Placed *row = data;
  const PpPlacement placement = { .x = 50, .y = 40, .rotation = row->rotation,
                                  .mirrored = row->mirrored };
  g_auto (Arrangement) self = { 0 };
  cairo_surface_t *surface;

  arrangement_init (&self, &placement, TRUE);
  surface = draw_scene (&self, NULL, NULL, NULL);
  g_assert_cmphex (get_pixel (surface, row->blue.x, row->blue.y), ==, BLUE);
  g_assert_cmphex (get_pixel (surface, row->red.x, row->red.y), ==, RED);
  cairo_surface_destroy (surface);
}

static void
test_transparent_around (void)
{
  g_auto (Arrangement) self = { 0 };
  cairo_surface_t *surface;

  arrangement_init (&self, NULL, TRUE);
  surface = draw_scene (&self, NULL, NULL, NULL);
  g_assert_cmphex (get_pixel (surface, -5, -5), ==, 0);
  g_assert_cmphex (get_pixel (surface, -0.4, 40), ==, 0);
  g_assert_cmphex (get_pixel (surface, 100.4, 40), ==, 0);
  /* Clear glass lets more through than amber, its edge less than its face. */
  g_assert_cmpuint (get_alpha (surface, 60, 40), >, 0x40);
  g_assert_cmpuint (get_alpha (surface, 60, 40), <, 0xc0);
  g_assert_cmpuint (get_alpha (surface, 25, 65), >, get_alpha (surface, 60, 40));
  g_assert_cmpuint (get_alpha (surface, 0.2, 40), >, 0xe0);
  cairo_surface_destroy (surface);
}

static gboolean
differs (cairo_surface_t *surface,
         PpPoint          a,
         PpPoint          b)
{
  return get_pixel (surface, a.x, a.y) != get_pixel (surface, b.x, b.y);
}

/* The wire between the holes, nothing beside it; a knot at each. */
static void
test_wire (void)
{
  g_auto (Arrangement) self = { 0 };
  cairo_surface_t *surface;

  arrangement_init (&self, NULL, TRUE);
  surface = draw_scene (&self, NULL, NULL, NULL);
  g_assert_cmpuint (get_alpha (surface, 50, 10), ==, 0xff);
  g_assert_cmpuint (get_alpha (surface, 50, 8), <, 0xc0);
  g_assert_cmpuint (get_alpha (surface, 90, 10), <, 0xc0);
  g_assert_true (differs (surface, (PpPoint) { 20, 10 }, (PpPoint) { 20, 30 }));
  g_assert_true (differs (surface, (PpPoint) { 80, 10 }, (PpPoint) { 80, 30 }));
  cairo_surface_destroy (surface);

  self.scene.n_knots = 0;
  self.panel.wire = NULL;
  surface = draw_scene (&self, NULL, NULL, NULL);
  g_assert_cmpuint (get_alpha (surface, 50, 10), <, 0xc0);
  cairo_surface_destroy (surface);
}

/* tan 45° = 1: a piece whose middle is 10 mm up moves by 10 mm away from the viewer's side. */
static void
test_oblique (void)
{
  const PpPlacement placement = { .x = 50, .y = 40 };
  const double base = 8;
  const double top = 12;
  const PpViewFrom right = { .sideways = 45 };
  const PpViewFrom above = { .updown = 45 };
  g_auto (Arrangement) self = { 0 };
  cairo_surface_t *surface;

  arrangement_init (&self, &placement, TRUE);
  surface = draw_scene (&self, &base, &top, &right);
  g_assert_cmphex (get_pixel (surface, 40.4, 45), ==, BLUE);
  g_assert_cmphex (get_pixel (surface, 59.4, 45), ==, RED);
  g_assert_cmphex (get_pixel (surface, 61, 45), !=, RED);
  cairo_surface_destroy (surface);

  surface = draw_scene (&self, &base, &top, &above);
  g_assert_cmphex (get_pixel (surface, 50.4, 59.4), ==, BLUE);
  g_assert_cmphex (get_pixel (surface, 50.4, 48), !=, BLUE);
  cairo_surface_destroy (surface);
}

/* Mirrored about the glass's middle, the glass over the piece, the wire over both. */
static void
test_from_behind (void)
{
  const PpPlacement placement = { .x = 10, .y = 4 };
  const PpViewFrom behind = { .from_behind = TRUE };
  g_auto (Arrangement) self = { 0 };
  cairo_surface_t *surface;
  guint32 blue, red;

  arrangement_init (&self, &placement, TRUE);
  surface = draw_scene (&self, NULL, NULL, &behind);
  blue = get_pixel (surface, 87, 13);
  red = get_pixel (surface, 73, 13);
  g_assert_cmpuint (blue & 0xff, >, (blue >> 16) & 0xff);
  g_assert_cmpuint ((red >> 16) & 0xff, >, red & 0xff);
  g_assert_cmphex (blue, !=, BLUE);
  g_assert_true (differs (surface, (PpPoint) { 72, 10 }, (PpPoint) { 72, 13 }));
  cairo_surface_destroy (surface);
}

/* A higher piece's shadow reaches farther down right and none shows up left. */
static void
test_shadow (void)
{
  const PpPlacement placement = { .x = 50, .y = 30 };
  const double low = 5;
  const double high = 30;
  g_auto (Arrangement) self = { 0 };
  cairo_surface_t *near, *far;

  arrangement_init (&self, &placement, TRUE);
  near = draw_scene (&self, NULL, &low, NULL);
  far = draw_scene (&self, NULL, &high, NULL);
  g_assert_cmpuint (get_alpha (near, 60, 41), >, get_alpha (near, 60, 60));
  g_assert_cmpuint (get_alpha (far, 60, 46), >, get_alpha (near, 60, 46) + 10);
  g_assert_cmpuint (get_alpha (near, 60, 27), ==, get_alpha (near, 60, 20));
  cairo_surface_destroy (near);
  cairo_surface_destroy (far);
}

/* Without art a piece keeps its colour and outline. */
static void
test_plain (void)
{
  const PpPlacement placement = { .x = 50, .y = 40 };

  for (PpKind kind = PP_KIND_FLOWER; kind <= PP_KIND_FILLER; kind++)
    {
      g_auto (Arrangement) self = { 0 };
      cairo_surface_t *surface;
      guint32 pixel;

      arrangement_init (&self, &placement, FALSE);
      self.piece.kind = kind;
      surface = draw_scene (&self, NULL, NULL, NULL);
      pixel = get_pixel (surface, 66, 47.5);
      g_assert_cmpuint (pixel >> 24, ==, 0xff);
      g_assert_cmpuint ((pixel >> 8) & 0xff, >, 2 * ((pixel >> 16) & 0xff));
      g_assert_cmpuint ((get_pixel (surface, 60, 40.1) >> 8) & 0xff, <, (pixel >> 8) & 0xff);
      cairo_surface_destroy (surface);
    }
}

static void
test_same_twice (void)
{
  const PpPlacement placement = { .x = 50, .y = 40, .rotation = 17 };
  g_auto (Arrangement) self = { 0 };
  cairo_surface_t *first, *second;
  gsize size;

  arrangement_init (&self, &placement, TRUE);
  first = draw_scene (&self, NULL, NULL, NULL);
  second = draw_scene (&self, NULL, NULL, NULL);
  size = (gsize) cairo_image_surface_get_stride (first) * SIDE * SCALE;
  g_assert_cmpmem (cairo_image_surface_get_data (first), size,
                   cairo_image_surface_get_data (second), size);
  cairo_surface_destroy (first);
  cairo_surface_destroy (second);
}

static cairo_status_t
append_cb (void         *data,
           const guchar *bytes,
           unsigned int  length)
{
  g_byte_array_append (data, bytes, length);
  return CAIRO_STATUS_SUCCESS;
}

/* On paper everything stays vector, the shadow too. */
static void
test_paper (void)
{
  const PpPlacement placement = { .x = 50, .y = 40, .rotation = 30 };
  g_auto (Arrangement) self = { 0 };
  g_autoptr (GByteArray) pdf = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append_cb, pdf, 400, 400);
  cairo_t *cr = cairo_create (surface);

  arrangement_init (&self, &placement, TRUE);
  pp_draw_scene (cr, &self.scene, self.gallery, NULL, NULL, NULL);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  g_assert_nonnull (memmem (pdf->data, pdf->len, "/Form", 5));
  g_assert_null (memmem (pdf->data, pdf->len, "/Image", 6));
}

/* Art is found and lent without a look at its bytes: here they cannot be read any more. */
static void
test_gallery_unread (void)
{
  g_auto (Arrangement) self = { 0 };
  gsize page = (gsize) sysconf (_SC_PAGESIZE);
  char *text = mmap (NULL, page, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
  g_autoptr (GBytes) locked = NULL;
  g_autoptr (PpGallery) first = NULL, next = NULL;

  g_assert_true (text != MAP_FAILED);
  arrangement_init (&self, NULL, TRUE);
  g_strlcpy (text, g_bytes_get_data (self.piece.art, NULL), page);
  locked = g_bytes_new_static (text, g_bytes_get_size (self.piece.art));
  g_assert_cmpuint (g_bytes_get_size (locked), <, page);
  g_bytes_unref (self.piece.art);
  self.piece.art = g_bytes_ref (locked);
  first = pp_gallery_new (&self.panel, NULL);
  g_assert_cmpint (mprotect (text, page, PROT_NONE), ==, 0);
  next = pp_gallery_new (&self.panel, first);
  g_assert_nonnull (pp_gallery_get (next, &self.piece));
  g_assert_true (pp_gallery_get (next, &self.piece) == pp_gallery_get (first, &self.piece));
  munmap (text, page);
}

/* Panels that share a piece share its art; refused art is told of and not drawn. */
static void
test_gallery (void)
{
  g_auto (Arrangement) self = { 0 };
  g_autoptr (PpGallery) next = NULL;
  g_autoptr (PpGallery) faulty = NULL;

  arrangement_init (&self, NULL, TRUE);
  next = pp_gallery_new (&self.panel, self.gallery);
  g_assert_nonnull (pp_gallery_get (next, &self.piece));
  g_assert_true (pp_gallery_get (next, &self.piece) == pp_gallery_get (self.gallery, &self.piece));
  g_assert_null (pp_gallery_get_fault (next, &self.piece));

  g_bytes_unref (self.piece.art);
  self.piece.art = g_bytes_new_static ("<svg><script/></svg>", 20);
  faulty = pp_gallery_new (&self.panel, self.gallery);
  g_assert_null (pp_gallery_get (faulty, &self.piece));
  g_assert_nonnull (pp_gallery_get_fault (faulty, &self.piece));
  g_clear_pointer (&self.piece.art, g_bytes_unref);
  g_assert_null (pp_gallery_get (faulty, &self.piece));
  g_assert_null (pp_gallery_get_fault (faulty, &self.piece));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (placed); i++)
    {
      g_autofree char *path = g_strdup_printf ("/draw/placed/%s", placed[i].name);

      g_test_add_data_func (path, &placed[i], test_placed);
    }
  g_test_add_func ("/draw/transparent-around", test_transparent_around);
  g_test_add_func ("/draw/wire", test_wire);
  g_test_add_func ("/draw/oblique", test_oblique);
  g_test_add_func ("/draw/from-behind", test_from_behind);
  g_test_add_func ("/draw/shadow", test_shadow);
  g_test_add_func ("/draw/plain", test_plain);
  g_test_add_func ("/draw/same-twice", test_same_twice);
  g_test_add_func ("/draw/paper", test_paper);
  g_test_add_func ("/draw/gallery", test_gallery);
  g_test_add_func ("/draw/gallery-unread", test_gallery_unread);
  return g_test_run ();
}
