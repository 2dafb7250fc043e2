/* fuzz-art.c: any bytes as a piece's drawing: judged, drawn, made a piece of.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "art/art.h"
#include "piece/drawing.h"

#include "fuzz.h"

#define SIDE_PX 96

static void
draw (PpArt *art)
{
  PpBox box = pp_art_get_box (art);
  double scale = SIDE_PX / MAX (box.x1 - box.x0, box.y1 - box.y0);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, SIDE_PX, SIDE_PX);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, scale, scale);
  cairo_translate (cr, -box.x0, -box.y0);
  pp_art_draw (art, cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
make_piece (GBytes *svg)
{
  PpPiece draft = pp_piece_draft ();
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) piece = NULL;

  draft.id = (char *) "sedge";
  draft.name = (char *) "Sedge";
  draft.thickness = 6;
  piece = pp_drawing_make (svg, NULL, &draft, &error);
  if (piece == NULL)
    fuzz_expect_sentence (error);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autoptr (GBytes) bytes = fuzz_take (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpArt) art = pp_art_new (bytes, &error);

  if (art != NULL)
    draw (art);
  else
    fuzz_expect_sentence (error);
  make_piece (bytes);
  return 0;
}
