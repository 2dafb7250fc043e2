/* test-stroke.c: pieces parted and joined by a click lose and gain no glass; work that is stopped, or
 * has no memory, is told so.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Scans are drawn here by cairo; areas are held against those of circles, their common part
 * (r²·2·acos(d/2r) - d/2·√(4r²-d²)) and rectangles.
 */
#define _GNU_SOURCE /* RTLD_NEXT */
#include "art/taken.h"
#include "piece/cutout.h"
#include "piece/discs.h"
#include "piece/stroke.h"
#include "shape/polygon.h"

#include <cairo.h>
#include <dlfcn.h>
#include <gdk-pixbuf/gdk-pixbuf.h>

#define DPI 200.0
#define WIDTH 110.0 /* mm */
#define HEIGHT 70.0
#define RADIUS 15.0
#define APART 26.0      /* of the middles of two discs that lie one over the other */
#define SIDE 20.0
#define GAP 4.0
#define BRIDGE 3.0      /* mm, how wide a join is */
#define NEAR_AREA 0.008 /* of a scan, as a share */
#define NEAR_SUM 0.002  /* of parts and whole, which are one scan's */
#define NEAR_MM 0.3

static gboolean has_no_memory;

/* These two stand before those of the libraries. */
GdkPixbuf *
gdk_pixbuf_composite_color_simple (const GdkPixbuf *src,
                                   int              width,
                                   int              height,
                                   GdkInterpType    interp,
                                   int              alpha,
                                   int              check,
                                   guint32          color1,
                                   guint32          color2)
{
  return NULL;
}

cairo_status_t
cairo_surface_write_to_png_stream (cairo_surface_t   *surface,
                                   cairo_write_func_t write,
                                   void              *closure)
{
  cairo_status_t (*next) (cairo_surface_t *, cairo_write_func_t, void *)
    = (void *) dlsym (RTLD_NEXT, "cairo_surface_write_to_png_stream");

  return has_no_memory ? CAIRO_STATUS_NO_MEMORY : next (surface, write, closure);
}

typedef void (*Draw) (cairo_t *cr);

static void
draw_discs (cairo_t *cr)
{
  cairo_arc (cr, 40, 35, RADIUS, 0, 2 * G_PI);
  cairo_fill (cr);
  cairo_arc (cr, 40 + APART, 35, RADIUS, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
draw_squares (cairo_t *cr)
{
  cairo_rectangle (cr, 30, 25, SIDE, SIDE);
  cairo_rectangle (cr, 30 + SIDE + GAP, 25, SIDE, SIDE);
  cairo_fill (cr);
}

static void
draw_clear (cairo_t *cr)
{
  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  draw_squares (cr);
}

static void
draw_ring (cairo_t *cr)
{
  cairo_arc (cr, 50, 35, 20, 0, 2 * G_PI);
  cairo_new_sub_path (cr);
  cairo_arc_negative (cr, 50, 35, 10, 2 * G_PI, 0);
  cairo_fill (cr);
}

static GBytes *
scan (Draw           draw,
      cairo_format_t format)
{
  double dots = DPI / PP_MM_PER_INCH;
  cairo_surface_t *surface = cairo_image_surface_create (
    format, (int) lround (WIDTH * dots), (int) lround (HEIGHT * dots));
  cairo_t *cr = cairo_create (surface);
  GByteArray *png = g_byte_array_new ();

  cairo_set_source_rgb (cr, 0.97, 0.97, 0.96);
  cairo_paint (cr);
  cairo_scale (cr, dots, dots);
  cairo_set_source_rgb (cr, 0.15, 0.3, 0.6);
  draw (cr);
  cairo_destroy (cr);
  cairo_surface_write_to_png_stream (surface, pp_taken_add, png);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (png);
}

static PpGround *
see (Draw draw)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) png = scan (draw, CAIRO_FORMAT_RGB24);
  g_autoptr (PpPhoto) photo = pp_photo_load (png, NULL, NULL, NULL, &error);
  g_autoptr (PpSquared) squared = NULL;
  PpGround *ground;

  g_assert_no_error (error);
  squared = pp_squared_by_dpi (photo, DPI, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  ground = pp_ground_new (squared, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return ground;
}

static PpFound *
find (PpGround       *ground,
      const PpStroke *strokes,
      guint           n_strokes)
{
  g_autoptr (GError) error = NULL;
  PpFound *found = pp_found_new (ground, 0, strokes, n_strokes, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  return found;
}

static double
sum_areas (const PpFound *found)
{
  double sum = 0;

  for (guint i = 0; i < found->n_pieces; i++)
    sum += pp_outline_area (found->outlines[i]);
  return sum;
}

static void
assert_share (double found,
              double wanted,
              double share)
{
  g_assert_cmpfloat (found, >, wanted * (1 - share));
  g_assert_cmpfloat (found, <, wanted * (1 + share));
}

static void
test_part (void)
{
  double common = RADIUS * RADIUS * 2 * acos (APART / 2 / RADIUS)
                  - APART / 2 * sqrt (4 * RADIUS * RADIUS - APART * APART);
  double whole_area = 2 * G_PI * RADIUS * RADIUS - common;
  g_autoptr (PpGround) ground = see (draw_discs);
  g_autoptr (PpFound) whole = find (ground, NULL, 0);
  g_autoptr (PpFound) parts = NULL;
  PpStroke stroke;

  g_assert_cmpuint (whole->n_pieces, ==, 1);
  assert_share (sum_areas (whole), whole_area, NEAR_AREA);
  g_assert_false (pp_stroke_part (whole, (PpPoint) { 5, 5 }, &stroke));
  /* a little beside the neck, which is where both circles cross */
  g_assert_true (pp_stroke_part (whole, (PpPoint) { 40 + APART / 2 + 1.3, 36 }, &stroke));
  g_assert_false (stroke.joins);
  g_assert_cmpfloat (fabs ((stroke.from.x + stroke.to.x) / 2 - 40 - APART / 2), <, NEAR_MM);
  parts = find (ground, &stroke, 1);
  g_assert_cmpuint (parts->n_pieces, ==, 2);
  assert_share (sum_areas (parts), sum_areas (whole), NEAR_SUM);
  for (guint i = 0; i < 2; i++)
    assert_share (pp_outline_area (parts->outlines[i]), whole_area / 2, 0.01);
}

/* A cut that does not go right through is none, and a join over a cut takes it back. */
static void
test_part_in_vain (void)
{
  const PpStroke half = { { 40 + APART / 2, 20 }, { 40 + APART / 2, 36 }, FALSE };
  const PpStroke both[] = { { { 40 + APART / 2, 20 }, { 40 + APART / 2, 50 }, FALSE },
                            { { 40 + APART / 2 - 2, 35 }, { 40 + APART / 2 + 2, 35 }, TRUE } };
  g_autoptr (PpGround) ground = see (draw_discs);
  g_autoptr (PpFound) whole = find (ground, NULL, 0);
  g_autoptr (PpFound) once = find (ground, both, 1);
  g_autoptr (PpFound) slit = find (ground, &half, 1);
  g_autoptr (PpFound) again = find (ground, both, G_N_ELEMENTS (both));
  g_autoptr (PpFound) back = pp_found_again (again, NULL, 0, NULL, NULL);

  g_assert_cmpuint (once->n_pieces, ==, 2);
  g_assert_cmpuint (slit->n_pieces, ==, 1);
  assert_share (sum_areas (slit), sum_areas (whole), NEAR_SUM);
  g_assert_cmpuint (again->n_pieces, ==, 1);
  assert_share (sum_areas (again), sum_areas (whole), NEAR_SUM);
  g_assert_true (pp_outline_equal (back->outlines[0], whole->outlines[0]));
}

static void
test_part_ring (void)
{
  g_autoptr (PpGround) ground = see (draw_ring);
  g_autoptr (PpFound) whole = find (ground, NULL, 0);
  g_autoptr (PpFound) parts = NULL;
  PpStroke stroke;

  g_assert_cmpuint (whole->n_pieces, ==, 1);
  g_assert_cmpuint (pp_outline_get_n_rings (whole->outlines[0]), ==, 2);
  assert_share (sum_areas (whole), G_PI * (400 - 100), NEAR_AREA);
  g_assert_true (pp_stroke_part (whole, (PpPoint) { 35, 35 }, &stroke));
  parts = find (ground, &stroke, 1);
  g_assert_cmpuint (parts->n_pieces, >=, 2);
  assert_share (sum_areas (parts), sum_areas (whole), NEAR_SUM);
}

static void
test_join (void)
{
  g_autoptr (PpGround) ground = see (draw_squares);
  g_autoptr (PpFound) apart = find (ground, NULL, 0);
  g_autoptr (PpFound) joined = NULL;
  PpStroke stroke;

  g_assert_cmpuint (apart->n_pieces, ==, 2);
  assert_share (sum_areas (apart), 2 * SIDE * SIDE, NEAR_AREA);
  g_assert_true (pp_stroke_join (apart, (PpPoint) { 30 + SIDE + 1, 35 }, &stroke));
  g_assert_true (stroke.joins);
  g_assert_cmpfloat (fabs (pp_point_distance (stroke.from, stroke.to) - GAP), <, NEAR_MM);
  joined = find (ground, &stroke, 1);
  g_assert_cmpuint (joined->n_pieces, ==, 1);
  assert_share (sum_areas (joined), sum_areas (apart) + GAP * BRIDGE, NEAR_SUM);
}

static void
test_join_nothing (void)
{
  g_autoptr (PpGround) discs = see (draw_discs);
  g_autoptr (PpFound) one = find (discs, NULL, 0);
  g_autoptr (PpGround) squares = see (draw_squares);
  g_autoptr (PpFound) two = find (squares, NULL, 0);
  PpStroke stroke;

  g_assert_false (pp_stroke_join (one, (PpPoint) { 40, 35 }, &stroke));
  g_assert_false (pp_stroke_join (two, (PpPoint) { 2, 2 }, &stroke));
}

typedef struct
{
  guint         n;
  double        last;
  GCancellable *cancellable; /* to be cancelled on the way, at `when` */
  double        when;
} Watch;

static void
watch_cb (double   share,
          gpointer data)
{
  Watch *watch = data;

  g_assert_cmpfloat (share, >=, watch->last);
  g_assert_cmpfloat (share, <=, 1);
  watch->last = share;
  watch->n++;
  if (share >= watch->when)
    g_cancellable_cancel (watch->cancellable);
}

/* Each step tells how far it is, and ends where it is not wanted any more. */
static void
test_stop (void)
{
  for (guint step = 0; step < 4; step++)
    for (guint stop = 0; stop < 2; stop++)
      {
        g_autoptr (GCancellable) cancellable = g_cancellable_new ();
        g_autoptr (GError) error = NULL;
        g_autoptr (GBytes) png = scan (draw_discs, CAIRO_FORMAT_RGB24);
        Watch watch = { .cancellable = cancellable, .when = stop ? 0.2 : 2 };
        gpointer data = &watch;
        g_autoptr (PpPhoto) photo = NULL;
        g_autoptr (PpSquared) squared = NULL;
        g_autoptr (PpGround) ground = NULL;
        g_autoptr (PpFound) found = NULL;

        photo = pp_photo_load (png, step == 0 ? watch_cb : NULL, data, cancellable, &error);
        if (photo != NULL)
          squared = pp_squared_by_dpi (photo, DPI, step == 1 ? watch_cb : NULL, data, cancellable,
                                       &error);
        if (squared != NULL)
          ground = pp_ground_new (squared, step == 2 ? watch_cb : NULL, data, cancellable, &error);
        if (ground != NULL)
          found = pp_found_new (ground, 0, NULL, 0, step == 3 ? watch_cb : NULL, data, cancellable,
                                &error);
        g_assert_cmpuint (watch.n, >, 0);
        /* a small file is read in one go */
        if (stop && step > 0)
          {
            const gpointer made[] = { photo, squared, ground, found };

            g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
            g_assert_null (made[step]);
          }
        else if (!stop)
          g_assert_cmpuint (found->n_pieces, ==, 1);
      }
}

static void
test_stopped_before (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GBytes) png = scan (draw_discs, CAIRO_FORMAT_RGB24);
  g_autoptr (PpPhoto) photo = pp_photo_load (png, NULL, NULL, NULL, NULL);
  g_autoptr (GError) error = NULL;
  PpPoint corners[4];

  g_cancellable_cancel (cancellable);
  g_assert_null (pp_photo_load (png, NULL, NULL, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_clear_error (&error);
  g_assert_null (pp_squared_by_dpi (photo, DPI, NULL, NULL, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_clear_error (&error);
  g_assert_false (pp_discs_find (photo, 180, 240, corners, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* A photo that is clear somewhere, for which there is no memory without that. */
static void
test_clear (void)
{
  g_autoptr (GBytes) png = scan (draw_clear, CAIRO_FORMAT_ARGB32);
  g_autoptr (GError) error = NULL;

  g_assert_null (pp_photo_load (png, NULL, NULL, NULL, &error));
  g_assert_error (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_SIZE);
}

/* A picture that could not be written is no art. */
static void
test_cut_out (void)
{
  g_autoptr (PpGround) ground = see (draw_squares);
  g_autoptr (PpFound) found = find (ground, NULL, 0);
  PpPiece draft = pp_piece_draft ();
  PpPoint at;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) piece = NULL;

  draft.id = "oxeye";
  draft.thickness = 3;
  piece = pp_cutout_make (found, 0, (PpRim) { 0, NAN }, &draft, TRUE, &at, &error);
  g_assert_no_error (error);
  g_assert_nonnull (piece->art);
  has_no_memory = TRUE;
  g_assert_null (pp_cutout_make (found, 0, (PpRim) { 0, NAN }, &draft, TRUE, &at, &error));
  has_no_memory = FALSE;
  g_assert_error (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_SIZE);
}

/* Nothing is let go of as quietly as something. */
static void
test_none (void)
{
  pp_photo_unref (NULL);
  pp_squared_unref (NULL);
  pp_ground_unref (NULL);
  pp_found_unref (NULL);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stroke/part", test_part);
  g_test_add_func ("/stroke/part-in-vain", test_part_in_vain);
  g_test_add_func ("/stroke/part-ring", test_part_ring);
  g_test_add_func ("/stroke/join", test_join);
  g_test_add_func ("/stroke/join-nothing", test_join_nothing);
  g_test_add_func ("/stroke/clear", test_clear);
  g_test_add_func ("/stroke/cut-out", test_cut_out);
  g_test_add_func ("/stroke/none", test_none);
  g_test_add_func ("/stroke/stop", test_stop);
  g_test_add_func ("/stroke/stopped-before", test_stopped_before);
  return g_test_run ();
}
