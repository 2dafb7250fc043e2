/* canvas-ink.c: places, lengths and slips of paper on the canvas.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/ink.h"
#include "panel/measure.h"

PpPoint
pp_canvas_to_px (PpCanvas *self,
                 double    x,
                 double    y)
{
  return pp_zoom_to_widget (&self->zoom, (PpPoint) { x, y });
}

void
pp_canvas_draw_slip (PpCanvas        *self,
                     cairo_t         *cr,
                     const PpPalette *palette,
                     const char      *text,
                     PpPoint          px)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);

  pp_ink_draw_slip (cr, palette, layout, pp_ink_get_slip (layout, px));
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

/* How far `slip` goes up (`way` -1) or down (1) until it lies on none of them, px. */
static double
find_clear (GArray *taken,
            PpBox   slip,
            int     way)
{
  double by = 0;
  const PpBox *other;

  while ((other = find_under (taken, pp_box_move (slip, (PpPoint) { 0, by }))) != NULL)
    by = way > 0 ? other->y1 - slip.y0 + 1 : other->y0 - slip.y1 - 1;
  return by;
}

void
pp_canvas_draw_slip_clear (PpCanvas        *self,
                           cairo_t         *cr,
                           const PpPalette *palette,
                           const char      *text,
                           PpPoint          px,
                           GArray          *taken)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  PpBox slip = pp_ink_get_slip (layout, px);
  double down = find_clear (taken, slip, 1), up = find_clear (taken, slip, -1);

  slip = pp_box_move (slip, (PpPoint) { 0, -up < down && slip.y0 + up >= 0 ? up : down });
  pp_ink_draw_slip (cr, palette, layout, slip);
  g_array_append_val (taken, slip);
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

  pp_canvas_draw_slip_clear (self, cr, palette, text, px, taken);
}
