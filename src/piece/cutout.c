/* cutout.c: a piece cut out of a photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "piece/cutout.h"

#include "art/draw.h"
#include "art/taken.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "piece/kind-guess.h"
#include "piece/srgb.h"
#include "shape/polygon.h"

#include <cairo.h>

#define MOST_DOTS 500000.0     /* of a cut-out, so that a tray of them is a file that can be kept */
#define MOST_PNG (PP_PIECE_MAX_ART / 2) /* bytes, before they are written as text */
#define SHRINK 0.7             /* of a cut-out that came out larger */
#define BLEED 0.15             /* mm beyond the outline, so that no edge of it is bare */

/* A point p of the squared frame belongs to foot + (p - foot)·scale at the height of the rim. */
typedef struct
{
  PpPoint foot;
  double  scale;
  PpPoint origin; /* of the piece, as it truly lies */
} Rise;

static gboolean
get_rise (const PpSquared *squared,
          PpRim            rim,
          Rise            *rise,
          GError         **error)
{
  PpPoint middle = { pp_photo_get_width (squared->photo) / 2.0,
                     pp_photo_get_height (squared->photo) / 2.0 };

  *rise = (Rise) { .scale = 1 };
  if (isnan (rim.lens) || (rim.rim == 0 && isfinite (rim.lens)))
    return TRUE;
  if (!isfinite (rim.lens) || !(rim.rim >= 0 && rim.rim < rim.lens))
    {
      g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                           _("The height of the rim must be from 0 to that of the lens."));
      return FALSE;
    }
  rise->foot = pp_plane_find_foot (&squared->plane, middle, rim.lens);
  rise->scale = (rim.lens - rim.rim) / rim.lens;
  return TRUE;
}

/* To the piece's own frame. */
static PpPoint
to_piece (PpPoint       p,
          gconstpointer data)
{
  const Rise *rise = data;

  return (PpPoint) { rise->foot.x + (p.x - rise->foot.x) * rise->scale - rise->origin.x,
                     rise->foot.y + (p.y - rise->foot.y) * rise->scale - rise->origin.y };
}

/* From the piece's own frame to the squared one. */
static PpPoint
to_sheet (PpPoint     p,
          const Rise *rise)
{
  return (PpPoint) { rise->foot.x + (p.x + rise->origin.x - rise->foot.x) / rise->scale,
                     rise->foot.y + (p.y + rise->origin.y - rise->foot.y) / rise->scale };
}

PpOutline *
pp_cutout_outline (const PpFound *found,
                   guint          piece,
                   PpRim          rim,
                   GError       **error)
{
  Rise rise;

  g_return_val_if_fail (piece < found->n_pieces, NULL);
  if (!get_rise (found->ground->squared, rim, &rise, error))
    return NULL;
  return pp_outline_map (found->outlines[piece], to_piece, &rise);
}

/* The photo over `box` of the piece's frame. (transfer full) */
static cairo_surface_t *
take_photo (const PpSquared *squared,
            const Rise      *rise,
            PpBox            box,
            double           dots)
{
  int width = (int) ceil (pp_box_width (box) * dots);
  int height = (int) ceil (pp_box_height (box) * dots);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  guchar *data = cairo_image_surface_get_data (surface); /* NULL without memory */
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);

  for (int y = 0; data != NULL && y < height; y++)
    for (int x = 0; x < width; x++)
      {
        PpPoint p = { box.x0 + (x + 0.5) / dots, box.y0 + (y + 0.5) / dots };
        double rgb[3];
        guint32 *pixel = (guint32 *) (gpointer) (data + (gsize) y * stride) + x;

        pp_photo_sample (squared->photo, pp_plane_map (&squared->plane, to_sheet (p, rise)), rgb);
        *pixel = (guint32) lround (rgb[0]) << 16 | (guint32) lround (rgb[1]) << 8
                 | (guint32) lround (rgb[2]);
      }
  cairo_surface_mark_dirty (surface);
  return surface;
}

/* What the photo shows within the outline, as a PNG, or NULL where there is no memory for it.
 * (transfer full) */
static GByteArray *
cut (const PpSquared *squared,
     const PpOutline *outline,
     const Rise      *rise,
     PpBox            box,
     double           dots)
{
  cairo_surface_t *photo = take_photo (squared, rise, box, dots);
  cairo_surface_t *cut_out
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, cairo_image_surface_get_width (photo),
                                    cairo_image_surface_get_height (photo));
  cairo_t *cr = cairo_create (cut_out);
  GByteArray *png = g_byte_array_new ();
  gboolean is_whole;

  cairo_set_source_surface (cr, photo, 0, 0);
  cairo_scale (cr, dots, dots);
  cairo_translate (cr, -box.x0, -box.y0);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  pp_draw_outline_path (cr, outline);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, 2 * BLEED);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
  cairo_destroy (cr);
  is_whole = cairo_surface_write_to_png_stream (cut_out, pp_taken_add, png) == CAIRO_STATUS_SUCCESS;
  cairo_surface_destroy (cut_out);
  cairo_surface_destroy (photo);
  if (is_whole)
    return png;
  g_byte_array_unref (png);
  return NULL;
}

static void
append_number (GString    *text,
               const char *name,
               double      number)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_printf (text, " %s=\"%s\"", name,
                          g_ascii_formatd (digits, sizeof digits, "%.4f", number));
}

static void
append_place (GString *text,
              PpBox    box)
{
  append_number (text, "width", pp_box_width (box));
  append_number (text, "height", pp_box_height (box));
}

/* An SVG of one picture. */
static GBytes *
frame (const GByteArray *png,
       PpBox             box)
{
  g_autofree char *text_of_png = g_base64_encode (png->data, png->len);
  GString *text = g_string_new ("<svg xmlns=\"http://www.w3.org/2000/svg\" "
                                "xmlns:xlink=\"http://www.w3.org/1999/xlink\" version=\"1.1\"");
  char view[4][G_ASCII_DTOSTR_BUF_SIZE];
  const double sides[] = { box.x0, box.y0, pp_box_width (box), pp_box_height (box) };

  for (guint i = 0; i < 4; i++)
    g_ascii_formatd (view[i], sizeof view[i], "%.4f", sides[i]);
  g_string_append_printf (text, " viewBox=\"%s %s %s %s\"><image", view[0], view[1], view[2],
                          view[3]);
  append_number (text, "x", box.x0);
  append_number (text, "y", box.y0);
  append_place (text, box);
  g_string_append_printf (text,
                          " preserveAspectRatio=\"none\" "
                          "xlink:href=\"data:image/png;base64,%s\"/></svg>\n",
                          text_of_png);
  return g_string_free_to_bytes (text);
}

/* As fine as the photo, the eye and the file bear. */
static GBytes *
draw (const PpSquared *squared,
      const PpOutline *outline,
      const Rise      *rise,
      GError         **error)
{
  PpBox box = pp_box_grow (pp_outline_get_box (outline), 2 * BLEED);
  double dots = fmin (fmin (PP_CUTOUT_DPI / PP_MM_PER_INCH, squared->fineness),
                      sqrt (MOST_DOTS / (pp_box_width (box) * pp_box_height (box))));
  g_autoptr (GByteArray) png = cut (squared, outline, rise, box, dots);

  while (png != NULL && png->len > MOST_PNG)
    {
      g_byte_array_unref (png);
      dots *= SHRINK;
      png = cut (squared, outline, rise, box, dots);
    }
  if (png == NULL)
    {
      pp_photo_set_too_large (error);
      return NULL;
    }
  /* whole dots, so that nothing is stretched */
  box.x1 = box.x0 + ceil (pp_box_width (box) * dots) / dots;
  box.y1 = box.y0 + ceil (pp_box_height (box) * dots) / dots;
  return frame (png, box);
}

static char *
mean_colour (const PpFound *found,
             guint          piece)
{
  const PpSquared *squared = found->ground->squared;
  gsize n = (gsize) squared->width * squared->height;
  double sum[3] = { 0, 0, 0 };
  guint bytes[3];
  gsize n_in = 0;

  for (gsize i = 0; i < n; i++)
    if (found->labels[i] == piece + 1)
      {
        for (guint c = 0; c < 3; c++)
          sum[c] += fmax ((double) squared->rgb[3 * i + c], 0);
        n_in++;
      }
  for (guint c = 0; c < 3; c++)
    {
      float light = (float) (sum[c] / (double) MAX (n_in, 1));

      bytes[c] = (guint) CLAMP (lroundf (255 * pp_srgb_encode (light)), 0, 255);
    }
  return g_strdup_printf ("#%02x%02x%02x", bytes[0], bytes[1], bytes[2]);
}

PpPiece *
pp_cutout_make (const PpFound *found,
                guint          piece,
                PpRim          rim,
                const PpPiece *draft,
                gboolean       with_art,
                PpPoint       *at,
                GError       **error)
{
  const PpSquared *squared = found->ground->squared;
  PpPiece made = *draft;
  Rise rise;
  g_autoptr (PpOutline) flat = pp_cutout_outline (found, piece, rim, error);
  g_autoptr (PpOutline) outline = NULL;
  g_autoptr (GBytes) art = NULL;
  g_autofree char *colour = NULL;

  if (flat == NULL || !get_rise (squared, rim, &rise, error))
    return NULL;
  rise.origin = *at = pp_outline_centroid (flat);
  outline = pp_outline_map (found->outlines[piece], to_piece, &rise);
  if (with_art)
    {
      art = draw (squared, outline, &rise, error);
      if (art == NULL)
        return NULL;
    }
  if (draft->colour == NULL)
    made.colour = colour = mean_colour (found, piece);
  made.kind = pp_kind_guess (outline);
  made.outline = outline;
  made.art = art;
  return pp_piece_new (&made, error);
}
