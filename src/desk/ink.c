/* ink.c: lines and slips of paper drawn by hand on pictures of glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/ink.h"

#define HALO 2.5 /* px added to each side of a line */
#define SLIP_X 4 /* px of paper round a text */
#define SLIP_Y 1

void
pp_ink_stroke (cairo_t         *cr,
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

PpBox
pp_ink_get_slip (PangoLayout *layout,
                 PpPoint      px)
{
  int width, height;
  double x, y;

  pango_layout_get_pixel_size (layout, &width, &height);
  x = round (px.x - width / 2.0);
  y = round (px.y - height / 2.0);
  return (PpBox) { x - SLIP_X, y - SLIP_Y, x + width + SLIP_X, y + height + SLIP_Y };
}

void
pp_ink_draw_slip (cairo_t         *cr,
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
