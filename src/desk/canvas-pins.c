/* canvas-pins.c: the pins of the findings.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/pin.h"

#define PIN_STEP 0.8  /* of a pin's size, between pins that would lie on one another */
#define PIN_STEM 1.25 /* of a pin's size, from the place it marks up to its middle */
#define PINS 9        /* the worst stand as pins with their numbers, the rest as small marks */
#define SMALL 0.45    /* of a pin's size */

static gboolean
is_pin (PpCanvas *self,
        guint     index)
{
  return index < PINS || (int) index == self->lit;
}

/* A pin stands above its place, so that what is there can be seen and pressed; pins of one place
 * stand in a row. A small mark stands on its place. */
PpPoint
pp_canvas_get_pin (PpCanvas *self,
                   guint     index)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  const PpFinding *finding = g_ptr_array_index (findings, index);
  double size = pp_pin_get_size (gtk_widget_get_pango_context (GTK_WIDGET (self)));
  double width = gtk_widget_get_width (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  PpPoint px = pp_canvas_to_px (self, finding->at.x, finding->at.y);
  guint before = 0;

  if (!is_pin (self, index))
    return px;
  for (guint i = 0; i < MIN (index, PINS); i++)
    {
      const PpFinding *other = g_ptr_array_index (findings, i);
      PpPoint there = pp_canvas_to_px (self, other->at.x, other->at.y);

      before += pp_point_distance (there, px) < size * PIN_STEP;
    }
  px.x += before * size;
  px.y -= PIN_STEM * size;
  px.x = CLAMP (px.x, size / 2 + 2, fmax (width - size / 2 - 2, size));
  px.y = CLAMP (px.y, size / 2 + 2, fmax (height - size / 2 - 2, size));
  return px;
}

int
pp_canvas_hit_pin (PpCanvas *self,
                   PpPoint   px)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  double size = pp_pin_get_size (gtk_widget_get_pango_context (GTK_WIDGET (self)));

  for (guint i = 0; i < findings->len; i++)
    if (pp_point_distance (pp_canvas_get_pin (self, i), px)
        <= (is_pin (self, i) ? size : SMALL * size) / 2)
      return (int) i;
  return -1;
}

static void
draw_stem (PpCanvas        *self,
           cairo_t         *cr,
           const PpPalette *palette,
           const PpFinding *finding,
           PpPoint          pin)
{
  PpPoint px = pp_canvas_to_px (self, finding->at.x, finding->at.y);

  cairo_new_sub_path (cr);
  cairo_move_to (cr, pin.x, pin.y);
  cairo_line_to (cr, px.x, px.y);
  pp_canvas_stroke (cr, palette, &palette->ink, 1);
  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, 2.5, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_fill (cr);
}

/* The shape of the level alone. */
static void
draw_small (PpCanvas        *self,
            cairo_t         *cr,
            const PpPalette *palette,
            const PpFinding *finding,
            double           size)
{
  PpPoint px = pp_canvas_to_px (self, finding->at.x, finding->at.y);

  pp_pin_draw (cr, NULL, palette, finding->level, 0, px.x, px.y, SMALL * size, FALSE);
}

void
pp_canvas_draw_pins (PpCanvas        *self,
                     cairo_t         *cr,
                     const PpPalette *palette)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  PangoContext *pango = gtk_widget_get_pango_context (GTK_WIDGET (self));
  double size = pp_pin_get_size (pango);

  for (guint i = findings->len; i-- > 0;)
    if (!is_pin (self, i))
      draw_small (self, cr, palette, g_ptr_array_index (findings, i), size);
  for (guint i = findings->len; i-- > 0;)
    if (is_pin (self, i))
      draw_stem (self, cr, palette, g_ptr_array_index (findings, i), pp_canvas_get_pin (self, i));
  for (guint i = findings->len; i-- > 0;)
    if (is_pin (self, i))
      {
        const PpFinding *finding = g_ptr_array_index (findings, i);
        PpPoint px = pp_canvas_get_pin (self, i);

        pp_pin_draw (cr, pango, palette, finding->level, i + 1, px.x, px.y, size,
                     (int) i == self->lit);
      }
}
