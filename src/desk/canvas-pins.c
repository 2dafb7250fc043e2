/* canvas-pins.c: the pins of the findings.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/ink.h"
#include "desk/pin.h"

#define PIN_STEP 0.8  /* of a pin's size, between pins that would lie on one another */
#define PIN_STEM 1.25 /* of a pin's size, from the place it marks up to its middle */
#define PINS 9        /* the worst stand as pins with their numbers, the rest as small marks */
#define SMALL 0.45    /* of a pin's size */
#define SMALL_ROOM 1.5 /* of a small mark's size, about it */

static gboolean
is_pin (PpCanvas *self,
        guint     index)
{
  return index < PINS || (int) index == self->lit;
}

/* A pin stands above its place, so that what is there can be seen and pressed; pins of one place
 * stand in a row. A small mark stands on its place. */
static PpPoint
get_pin (PpCanvas *self,
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

static int
hit_any (PpCanvas *self,
         PpPoint   px)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  double size = pp_pin_get_size (gtk_widget_get_pango_context (GTK_WIDGET (self)));

  for (guint i = 0; i < findings->len; i++)
    if (pp_point_distance (get_pin (self, i), px)
        <= (is_pin (self, i) ? size : SMALL * size) / 2)
      return (int) i;
  return -1;
}

int
pp_canvas_hit_pin (PpCanvas *self,
                   PpPoint   px,
                   gboolean  over_piece)
{
  int pin = hit_any (self, px);

  return pin >= 0 && over_piece && !is_pin (self, (guint) pin) ? -1 : pin;
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
  pp_ink_stroke (cr, palette, &palette->ink, 1);
  cairo_new_sub_path (cr);
  cairo_arc (cr, px.x, px.y, 2.5, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_fill (cr);
}

/* The shape of the level alone, in the middle of a picture of ROOM sizes. */
static cairo_surface_t *
make_small (PpCanvas        *self,
            const PpPalette *palette,
            PpLevel          level,
            double           room)
{
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) room * factor,
                                                         (int) room * factor);
  cairo_t *cr;

  cairo_surface_set_device_scale (picture, factor, factor);
  cr = cairo_create (picture);
  pp_pin_draw (cr, NULL, palette, level, 0, room / 2, room / 2, room / SMALL_ROOM, FALSE);
  cairo_destroy (cr);
  return picture;
}

/* Those of a crowded panel are hundreds, and there are three shapes: each is drawn once and laid
 * down at whole pixels. */
static void
draw_small_ones (PpCanvas        *self,
                 cairo_t         *cr,
                 const PpPalette *palette,
                 double           size)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  double room = ceil (SMALL_ROOM * SMALL * size);
  cairo_surface_t *pictures[PP_LEVEL_NOTE + 1] = { NULL };

  for (guint i = findings->len; i-- > 0;)
    {
      const PpFinding *finding = g_ptr_array_index (findings, i);
      PpPoint px = pp_canvas_to_px (self, finding->at.x, finding->at.y);

      if (is_pin (self, i))
        continue;
      if (pictures[finding->level] == NULL)
        pictures[finding->level] = make_small (self, palette, finding->level, room);
      cairo_set_source_surface (cr, pictures[finding->level], round (px.x - room / 2),
                                round (px.y - room / 2));
      cairo_paint (cr);
    }
  for (guint level = 0; level < G_N_ELEMENTS (pictures); level++)
    g_clear_pointer (&pictures[level], cairo_surface_destroy);
}

void
pp_canvas_draw_pins (PpCanvas        *self,
                     cairo_t         *cr,
                     const PpPalette *palette)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  PangoContext *pango = gtk_widget_get_pango_context (GTK_WIDGET (self));
  double size = pp_pin_get_size (pango);

  draw_small_ones (self, cr, palette, size);
  for (guint i = findings->len; i-- > 0;)
    if (is_pin (self, i))
      draw_stem (self, cr, palette, g_ptr_array_index (findings, i), get_pin (self, i));
  for (guint i = findings->len; i-- > 0;)
    if (is_pin (self, i))
      {
        const PpFinding *finding = g_ptr_array_index (findings, i);
        PpPoint px = get_pin (self, i);

        pp_pin_draw (cr, pango, palette, finding->level, i + 1, px.x, px.y, size,
                     (int) i == self->lit);
      }
}

void
pp_canvas_add_pin_boxes (PpCanvas *self,
                         GArray   *boxes)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  double half = pp_pin_get_size (gtk_widget_get_pango_context (GTK_WIDGET (self))) / 2;

  for (guint i = 0; i < findings->len; i++)
    if (is_pin (self, i))
      {
        PpPoint px = get_pin (self, i);
        PpBox box = { px.x - half, px.y - half, px.x + half, px.y + half };

        g_array_append_val (boxes, box);
      }
}
