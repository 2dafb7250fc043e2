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

/* `text` on a slip of paper with its middle at `px`. */
void
pp_canvas_draw_slip (PpCanvas        *self,
                     cairo_t         *cr,
                     const PpPalette *palette,
                     const char      *text,
                     PpPoint          px)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  int width, height;
  double x, y;

  pango_layout_get_pixel_size (layout, &width, &height);
  x = round (px.x - width / 2.0);
  y = round (px.y - height / 2.0);
  cairo_new_sub_path (cr);
  cairo_rectangle (cr, x - 4, y - 1, width + 8, height + 2);
  pp_palette_set (cr, &palette->paper, 0.94);
  cairo_fill (cr);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
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
