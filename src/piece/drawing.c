/* drawing.c: a piece from a drawing in mm.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The silhouette is taken from a raster, whatever the drawing is made of: strokes, clips, text and
 * embedded pictures are covered there as they will be seen.
 */
#include "config.h"

#include "piece/drawing.h"

#include "art/art-judge.h"
#include "art/svg-length.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "piece/frame.h"
#include "piece/kind-guess.h"
#include "piece/trace.h"
#include "shape/polygon.h"

#include <librsvg/rsvg.h>

#define MOST_DOTS 16.0     /* a mm */
#define MOST_PIXELS 6.0e6  /* of the raster */
#define MOST_ALONG 32000.0 /* of them along a side: cairo's own bound is 32767 */
#define MARGIN 2           /* pixels round it that nothing covers */
#define OFF 0.02           /* mm, by which fewer points may part from the silhouette */
#define LEAST_OFF 0.25     /* pixels, which is what rounded coverage makes of a straight side */
#define LEAST_AREA 1.0     /* mm² */
#define CLIP "petalpane-outline"

static gboolean
refuse (const char *sentence,
        GError    **error)
{
  g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, sentence);
  return FALSE;
}

/* mm of one unit of its viewBox. */
static gboolean
get_scale (GBytes  *judged,
           double  *scale,
           GError **error)
{
  RsvgHandle *handle = rsvg_handle_new_from_data (g_bytes_get_data (judged, NULL),
                                                  g_bytes_get_size (judged), NULL);
  gboolean has_width, has_height, has_view;
  RsvgLength width, height;
  RsvgRectangle view;
  double least = INFINITY;

  if (handle == NULL)
    {
      g_set_error_literal (error, PP_ART_ERROR, PP_ART_ERROR_NOT_SVG,
                           _("The drawing is not well-formed SVG."));
      return FALSE;
    }
  rsvg_handle_get_intrinsic_dimensions (handle, &has_width, &width, &has_height, &height, &has_view,
                                        &view);
  g_object_unref (handle);
  if (has_view && has_width && pp_svg_length_to_mm (width) > 0)
    least = pp_svg_length_to_mm (width) / view.width;
  if (has_view && has_height && pp_svg_length_to_mm (height) > 0)
    least = fmin (least, pp_svg_length_to_mm (height) / view.height);
  *scale = isfinite (least) ? least : 1;
  return TRUE;
}

/* What the outline is taken of. */
typedef struct
{
  PpArt               *art;
  GBytes              *svg;  /* of it */
  const PpDrawingPart *part; /* NULL: all */
} Source;

static void
draw_part (const Source *self,
           PpBox         box,
           cairo_t      *cr)
{
  RsvgHandle *handle = rsvg_handle_new_from_data (g_bytes_get_data (self->svg, NULL),
                                                  g_bytes_get_size (self->svg), NULL);
  RsvgRectangle viewport = { box.x0, box.y0, pp_box_width (box), pp_box_height (box) };
  g_autofree char *name = g_strconcat ("#", self->part->id, NULL);

  if (handle == NULL)
    return;
  rsvg_handle_render_layer (handle, cr, name, &viewport, NULL);
  g_object_unref (handle);
}

/* Its box becomes that of the raster, margin included. */
static cairo_surface_t *
paint (const Source *self,
       double        dots,
       PpBox        *box)
{
  PpArt *art = self->art;
  PpBox whole = pp_art_get_box (art);
  int width = (int) ceil (pp_box_width (whole) * dots) + 2 * MARGIN;
  int height = (int) ceil (pp_box_height (whole) * dots) + 2 * MARGIN;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, width, height);
  cairo_t *cr = cairo_create (surface);

  *box = pp_box_grow (whole, MARGIN / dots);
  cairo_scale (cr, dots, dots);
  cairo_translate (cr, -box->x0, -box->y0);
  cairo_rectangle (cr, whole.x0, whole.y0, pp_box_width (whole), pp_box_height (whole));
  cairo_clip (cr);
  if (self->part != NULL)
    draw_part (self, whole, cr);
  else
    pp_art_draw (art, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static guchar
get_greatest (const PpRaster *raster)
{
  guchar greatest = 0;

  for (guint y = 0; y < raster->height; y++)
    for (guint x = 0; x < raster->width; x++)
      greatest = MAX (greatest, raster->cover[(gsize) y * raster->stride + x]);
  return greatest;
}

/* Rings in mm, simplified; those of no size are left out. */
static GPtrArray *
trace (const Source *self,
       GError      **error)
{
  PpBox box = pp_art_get_box (self->art);
  /* a power of two, as src/art records drawings, so that nothing is sized again */
  double most = fmin (sqrt (MOST_PIXELS / (pp_box_width (box) * pp_box_height (box))),
                      MOST_ALONG / fmax (pp_box_width (box), pp_box_height (box)));
  double dots = fmin (MOST_DOTS, exp2 (floor (log2 (most))));
  cairo_surface_t *surface = paint (self, dots, &box);
  PpRaster raster = {
    .cover = cairo_image_surface_get_data (surface),
    .width = (guint) cairo_image_surface_get_width (surface),
    .height = (guint) cairo_image_surface_get_height (surface),
    .stride = (guint) cairo_image_surface_get_stride (surface),
  };
  g_autoptr (GPtrArray) rings = NULL;
  GPtrArray *kept;
  guchar greatest;

  if (cairo_surface_status (surface) != CAIRO_STATUS_SUCCESS)
    {
      cairo_surface_destroy (surface);
      refuse (_("The drawing is too large."), error);
      return NULL;
    }
  greatest = get_greatest (&raster);
  rings = pp_trace (&raster, greatest == 0 ? 255 : (greatest - 1) / 2);
  kept = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  cairo_surface_destroy (surface);
  for (guint i = 0; i < rings->len; i++)
    {
      g_autoptr (GArray) ring
          = pp_ring_simplify (rings->pdata[i], fmax (OFF * dots, LEAST_OFF));
      PpPoint first;

      for (guint k = 0; k < ring->len; k++)
        {
          PpPoint *p = &g_array_index (ring, PpPoint, k);

          *p = (PpPoint) { box.x0 + p->x / dots, box.y0 + p->y / dots };
        }
      first = g_array_index (ring, PpPoint, 0);
      g_array_append_val (ring, first);
      if (fabs (pp_ring_area ((PpPoint *) (gpointer) ring->data, ring->len)) >= LEAST_AREA)
        g_ptr_array_add (kept, g_steal_pointer (&ring));
    }
  return kept;
}

/* The one border first, then its holes. */
static PpOutline *
join (GPtrArray *rings,
      gboolean   has_holes,
      GError   **error)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n_borders = 0;

  for (guint i = 0; i < rings->len; i++)
    {
      GArray *ring = rings->pdata[i];
      gboolean is_border = pp_ring_area ((PpPoint *) (gpointer) ring->data, ring->len) > 0;
      guint place = is_border ? 0 : lengths->len;

      n_borders += is_border ? 1 : 0;
      if (!is_border && !has_holes)
        continue;
      g_array_insert_val (lengths, place, ring->len);
      if (is_border)
        g_array_prepend_vals (points, ring->data, ring->len);
      else
        g_array_append_vals (points, ring->data, ring->len);
    }
  if (n_borders == 0)
    refuse (_("The drawing shows nothing that could be a piece."), error);
  else if (n_borders > 1)
    refuse (_("The drawing shows several pieces apart from one another; draw one in each file."),
            error);
  else
    return pp_outline_new ((guint *) (gpointer) lengths->data, lengths->len,
                           (PpPoint *) (gpointer) points->data, NULL, error);
  return NULL;
}

/* FALSE if it has no such part. */
static gboolean
find_part (const GPtrArray      *parts,
           const char           *element,
           const PpDrawingPart **part,
           GError              **error)
{
  *part = element != NULL ? pp_drawing_parts_find (parts, element) : NULL;
  return element == NULL || *part != NULL
         || refuse (_("The drawing has no part of this name."), error);
}

static PpOutline *
get_silhouette (GBytes      *svg,
                const char  *element,
                double      *scale,
                GError     **error)
{
  g_autoptr (GBytes) judged = pp_art_judge (svg, error);
  g_autoptr (GBytes) sized = NULL;
  g_autoptr (PpArt) art = NULL;
  g_autoptr (GPtrArray) rings = NULL;
  g_autoptr (GPtrArray) parts = NULL;
  Source source = { NULL };
  PpBox box;

  if (judged == NULL || !get_scale (judged, scale, error))
    return NULL;
  parts = pp_drawing_parts (judged);
  if (!find_part (parts, element, &source.part, error))
    return NULL;
  sized = pp_frame_art (svg, *scale, (PpPoint) { 0, 0 }, error);
  art = sized != NULL ? pp_art_new (sized, error) : NULL;
  if (art == NULL)
    return NULL;
  box = pp_art_get_box (art);
  if (fmax (pp_box_width (box), pp_box_height (box)) > PP_BACKGROUND_MAX_SIDE)
    {
      refuse (_("The drawing is larger than any panel; it must be in millimetres."), error);
      return NULL;
    }
  source.art = art;
  source.svg = sized;
  rings = trace (&source, error);
  return rings == NULL ? NULL : join (rings, source.part == NULL || !source.part->is_line, error);
}

static void
append_path (GString         *text,
             const PpOutline *outline)
{
  for (guint i = 0; i < pp_outline_get_n_rings (outline); i++)
    {
      guint n;
      const PpPoint *ring = pp_outline_get_ring (outline, i, &n);

      for (guint k = 0; k + 1 < n; k++)
        {
          char x[G_ASCII_DTOSTR_BUF_SIZE], y[G_ASCII_DTOSTR_BUF_SIZE];

          g_string_append_printf (text, "%c%s %s", k == 0 ? 'M' : 'L',
                                  g_ascii_formatd (x, sizeof x, "%.3f", ring[k].x),
                                  g_ascii_formatd (y, sizeof y, "%.3f", ring[k].y));
        }
      g_string_append_c (text, 'Z');
    }
}

/* What lies outside the outline, a measure or a border of the page, is no part of the piece. `art`
 * is one element in one of svg. */
static GBytes *
cut_off (GBytes          *art,
         const PpOutline *outline)
{
  gsize length;
  const char *text = g_bytes_get_data (art, &length);
  const char *inner = (const char *) memchr (text, '>', length) + 1;
  const char *end = g_strrstr_len (text, (gssize) length, "</svg>");
  GString *cut = g_string_new_len (text, inner - text);

  g_string_append (cut, "<clipPath id=\"" CLIP "\"><path clip-rule=\"evenodd\" d=\"");
  append_path (cut, outline);
  g_string_append (cut, "\"/></clipPath><g clip-path=\"url(#" CLIP ")\">");
  g_string_append_len (cut, inner, end - inner);
  g_string_append (cut, "</g></svg>\n");
  return g_string_free_to_bytes (cut);
}

PpPiece *
pp_drawing_make (GBytes        *svg,
                 const char    *element,
                 const PpPiece *draft,
                 GError       **error)
{
  PpPiece piece = *draft;
  double scale;
  g_autoptr (PpOutline) silhouette = get_silhouette (svg, element, &scale, error);
  g_autoptr (PpOutline) outline = NULL;
  g_autoptr (GBytes) art = NULL;
  g_autoptr (GBytes) cut = NULL;
  PpPoint middle;
  PpPoint by;

  if (silhouette == NULL)
    return NULL;
  middle = pp_outline_centroid (silhouette);
  by = (PpPoint) { -middle.x, -middle.y };
  outline = pp_outline_move (silhouette, by);
  art = pp_frame_art (svg, scale, by, error);
  if (art == NULL)
    return NULL;
  if (!pp_outline_is_simple (outline, NULL, NULL))
    {
      refuse (_("The border of the drawing touches itself; draw it a little apart."), error);
      return NULL;
    }
  if (element != NULL)
    cut = cut_off (art, outline);
  piece.kind = pp_kind_guess (outline);
  piece.outline = outline;
  piece.art = cut != NULL ? cut : art;
  return pp_piece_new (&piece, error);
}

GPtrArray *
pp_drawing_list_parts (GBytes  *svg,
                       GError **error)
{
  g_autoptr (GBytes) judged = pp_art_judge (svg, error);

  return judged != NULL ? pp_drawing_parts (judged) : NULL;
}
