/* piece-picture.c: a piece of the tray as a picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/piece-picture.h"

#include "art/draw.h"

#define LONG 1.4      /* as high as wide: lies down where it would not fit upright */
#define UNUSUAL 2.0   /* times what is usual */

static gboolean
is_long (PpBox box)
{
  return pp_box_height (box) > LONG * pp_box_width (box);
}

PpPieceSpan
pp_piece_span (const PpPiece *piece)
{
  PpBox box = pp_outline_get_box (piece->outline);
  double width = pp_box_width (box), height = pp_box_height (box);

  return is_long (box) ? (PpPieceSpan) { width, height } : (PpPieceSpan) { height, width };
}

static int
compare_lengths (const void *a,
                 const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* The largest, but no more than a few times the middle one. Sorts. */
static double
get_usual (double *lengths,
           guint   n)
{
  qsort (lengths, n, sizeof *lengths, compare_lengths);
  return fmin (lengths[n - 1], UNUSUAL * lengths[n / 2]);
}

PpPieceSpan
pp_piece_span_of_tray (GPtrArray *tray)
{
  guint n = tray->len;
  g_autofree double *across = g_new (double, n);
  g_autofree double *along = g_new (double, n);

  g_return_val_if_fail (n > 0, ((PpPieceSpan) { 1, 1 }));

  for (guint i = 0; i < n; i++)
    {
      PpPieceSpan span = pp_piece_span (g_ptr_array_index (tray, i));

      across[i] = span.across;
      along[i] = span.along;
    }
  return (PpPieceSpan) { get_usual (across, n), get_usual (along, n) };
}

static PpBox
scale_box (PpBox    box,
           double   scale,
           gboolean turned)
{
  if (turned)
    box = (PpBox) { -box.y1, box.x0, -box.y0, box.x1 };
  return (PpBox) { box.x0 * scale, box.y0 * scale, box.x1 * scale, box.y1 * scale };
}

PpPieceLie
pp_piece_lie (const PpPiece *piece,
              PpPieceSpan    tray,
              double         width,
              double         height,
              double         least)
{
  PpBox box = pp_outline_get_box (piece->outline);
  double wide = pp_box_width (box), high = pp_box_height (box);
  double scale = fmin (height / tray.across, width / tray.along);
  PpPieceLie lie;

  scale = fmax (scale, least / fmax (wide, high));
  lie.turned = is_long (box) && high * scale > height;
  scale = fmin (scale, width / (lie.turned ? high : wide));
  lie.scale = fmin (scale, height / (lie.turned ? wide : high));
  lie.box = scale_box (box, lie.scale, lie.turned);
  return lie;
}

static gboolean
is_on (const PpPiece *piece,
       PpPoint        p)
{
  cairo_surface_t *nothing = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t *cr = cairo_create (nothing);
  gboolean is_inside;

  pp_draw_outline_path (cr, piece->outline);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  is_inside = cairo_in_fill (cr, p.x, p.y);
  cairo_destroy (cr);
  cairo_surface_destroy (nothing);
  return is_inside;
}

static PpPoint
get_nearest_of_line (PpPoint p,
                     PpPoint a,
                     PpPoint b)
{
  double dx = b.x - a.x, dy = b.y - a.y;
  double length2 = dx * dx + dy * dy;
  double t = length2 > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2 : 0;

  t = CLAMP (t, 0, 1);
  return (PpPoint) { a.x + t * dx, a.y + t * dy };
}

static PpPoint
get_nearest (const PpPiece *piece,
             PpPoint        p)
{
  guint n;
  const PpPoint *ring = pp_outline_get_ring (piece->outline, 0, &n);
  PpPoint nearest = ring[0];

  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint q = get_nearest_of_line (p, ring[i], ring[i + 1]);

      if (pp_point_distance (p, q) < pp_point_distance (p, nearest))
        nearest = q;
    }
  return nearest;
}

PpPoint
pp_piece_lie_to_piece (const PpPieceLie *self,
                       const PpPiece    *piece,
                       PpPoint           px)
{
  double x = px.x / self->scale, y = px.y / self->scale;
  PpPoint p = self->turned ? (PpPoint) { y, -x } : (PpPoint) { x, y };

  return is_on (piece, p) ? p : get_nearest (piece, p);
}

/* Of outline, art and shadow. */
static PpBox
get_box (const PpPiece *piece,
         PpArt         *art,
         double         height)
{
  PpBox box = pp_outline_get_box (piece->outline);

  if (art != NULL)
    box = pp_box_union (box, pp_art_get_box (art));
  return pp_box_grow (box, pp_draw_get_shadow_reach (height));
}

static void
draw (cairo_t       *cr,
      const PpPiece *piece,
      PpArt         *art,
      gboolean       turned,
      double         height)
{
  PpPlacement placement = { .rotation = turned ? 90 : 0 };
  g_autoptr (PpOutline) outline = pp_place_outline (piece, &placement);
  /* As much of a body as is asked for. */
  PpBody body = { .piece = piece, .outline = outline, .frame = pp_frame_of (&placement) };

  pp_draw_shadow (cr, &body, height);
  pp_draw_body (cr, &body, art);
}

cairo_surface_t *
pp_piece_picture (const PpPiece *piece,
                  PpArt         *art,
                  double         scale,
                  gboolean       turned,
                  double         height,
                  int            factor,
                  PpPoint       *origin)
{
  PpBox box = scale_box (get_box (piece, art, height), scale, turned);
  int x = (int) floor (box.x0), y = (int) floor (box.y0);
  int width = (int) ceil (box.x1) - x, height_px = (int) ceil (box.y1) - y;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width * factor,
                                                         height_px * factor);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, factor, factor);
  cairo_translate (cr, -x, -y);
  cairo_scale (cr, scale, scale);
  draw (cr, piece, art, turned, height);
  cairo_destroy (cr);
  *origin = (PpPoint) { -x, -y };
  return surface;
}
