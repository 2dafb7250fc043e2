/* canvas-ink.c: lines, lengths and slips of paper on the canvas.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines are drawn twice, a broad one in the colour of the paper under a thin one in their own, so
 * that they are seen on glass of any colour.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "panel/measure.h"

#define HALO 2.5 /* px added to each side of a line */
#define SLIP_X 4 /* px of paper round a text */
#define SLIP_Y 1

PpPoint
pp_canvas_to_px (PpCanvas *self,
                 double    x,
                 double    y)
{
  return pp_zoom_to_widget (&self->zoom, (PpPoint) { x, y });
}

void
pp_canvas_stroke (cairo_t         *cr,
                  const PpPalette *palette,
                  const GdkRGBA   *colour,
                  double           width)
{
  pp_palette_set (cr, &palette->paper, 0.9);
  cairo_set_line_width (cr, width + 2 * HALO);
  cairo_stroke_preserve (cr);
  pp_palette_set (cr, colour, 1);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
}

/* The slip of a text with its middle at `px`. */
static PpBox
get_slip (PangoLayout *layout,
          PpPoint      px)
{
  int width, height;
  double x, y;

  pango_layout_get_pixel_size (layout, &width, &height);
  x = round (px.x - width / 2.0);
  y = round (px.y - height / 2.0);
  return (PpBox) { x - SLIP_X, y - SLIP_Y, x + width + SLIP_X, y + height + SLIP_Y };
}

static void
draw_slip (cairo_t         *cr,
           const PpPalette *palette,
           PangoLayout     *layout,
           PpBox            slip)
{
  cairo_new_sub_path (cr);
  cairo_rectangle (cr, slip.x0, slip.y0, pp_box_width (slip), pp_box_height (slip));
  pp_palette_set (cr, &palette->paper, 0.94);
  cairo_fill (cr);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_move_to (cr, slip.x0 + SLIP_X, slip.y0 + SLIP_Y);
  pango_cairo_show_layout (cr, layout);
}

void
pp_canvas_draw_slip (PpCanvas        *self,
                     cairo_t         *cr,
                     const PpPalette *palette,
                     const char      *text,
                     PpPoint          px)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);

  draw_slip (cr, palette, layout, get_slip (layout, px));
}

void
pp_canvas_draw_length (PpCanvas        *self,
                       cairo_t         *cr,
                       const PpPalette *palette,
                       double           mm,
                       PpPoint          px)
{
  g_autofree char *text = pp_length_format (mm, pp_document_get_panel (self->document)->units);

  pp_canvas_draw_slip (self, cr, palette, text, px);
}

/* The slip that `slip` would lie on, or NULL. */
static const PpBox *
find_under (GArray *taken,
            PpBox   slip)
{
  for (guint i = 0; i < taken->len; i++)
    if (pp_box_meets (g_array_index (taken, PpBox, i), slip))
      return &g_array_index (taken, PpBox, i);
  return NULL;
}

void
pp_canvas_draw_length_clear (PpCanvas        *self,
                             cairo_t         *cr,
                             const PpPalette *palette,
                             double           mm,
                             PpPoint          px,
                             GArray          *taken)
{
  g_autofree char *text = pp_length_format (mm, pp_document_get_panel (self->document)->units);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  PpBox slip = get_slip (layout, px);
  const PpBox *other;

  while ((other = find_under (taken, slip)) != NULL)
    slip = pp_box_move (slip, (PpPoint) { 0, other->y1 - slip.y0 + 1 });
  draw_slip (cr, palette, layout, slip);
  g_array_append_val (taken, slip);
}
