/* tray-row-draw.c: the wood of the tray and what is written on it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Colours, edges and hollows are those of the style sheet (ui/tray.css); here comes the grain,
 * long quiet lines that are the same each time, and the headings of the kinds.
 */
#include "config.h"

#include "desk/tray-row-private.h"

#include "desk/tray-words.h"

#define HEAD_PAD 3       /* px over and under a heading */
#define BETWEEN 3.2      /* px between lines of the grain, about */
#define WAVE 140.0       /* px, about how long a line runs before it bends */
#define FAINT 0.03       /* of ink */
#define STRONG 0.13
#define TILE 1120        /* px: after which the grain begins anew */

/* From left to right, px of the row. */
typedef struct
{
  double x0;
  double x1;
} Stretch;

static PangoLayout *
make_heading (PpTrayRow  *self,
              const char *text)
{
  PangoLayout *layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_weight_new (PANGO_WEIGHT_SEMIBOLD));
  pango_attr_list_insert (attributes, pango_attr_scale_new (0.9));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  return layout;
}

int
pp_tray_row_get_head (PpTrayRow *self)
{
  g_autoptr (PangoLayout) layout = make_heading (self, "X");
  int height;

  pango_layout_get_pixel_size (layout, NULL, &height);
  return height + 2 * HEAD_PAD;
}

/* 0 to 1, the same for the same seed: the grain must not crawl when it is drawn again. */
static double
scatter (guint seed)
{
  seed = (seed ^ 61) ^ (seed >> 16);
  seed *= 9;
  seed ^= seed >> 4;
  seed *= 0x27d4eb2d;
  seed ^= seed >> 15;
  return (seed & 0xffff) / 65535.0;
}

/* One line across the tile; it ends as high as it began, so that tiles join. */
static void
draw_line (cairo_t *cr,
           guint    line,
           double   y)
{
  guint step = 0;
  double x = 0;

  cairo_move_to (cr, 0, y);
  while (x < TILE)
    {
      double next = fmin (x + WAVE * (0.6 + scatter (line * 131 + step)), TILE);
      double bend = BETWEEN * (scatter (line * 257 + step) - 0.5);

      cairo_curve_to (cr, x + (next - x) / 3, y + bend, next - (next - x) / 3, y + bend, next, y);
      x = next;
      step++;
    }
  cairo_stroke (cr);
}

/* How much ink there is in each place. (transfer full) */
static cairo_surface_t *
make_grain (int height,
            int factor)
{
  cairo_surface_t *tile = cairo_image_surface_create (CAIRO_FORMAT_A8, TILE * factor,
                                                      height * factor);
  cairo_t *cr;
  guint line = 1;

  cairo_surface_set_device_scale (tile, factor, factor);
  cr = cairo_create (tile);
  for (double y = 1; y < height; y += BETWEEN * (0.5 + scatter (line * 17)), line++)
    {
      double strength = FAINT + (STRONG - FAINT) * scatter (line * 71);

      cairo_set_line_width (cr, 0.6 + scatter (line * 43));
      cairo_set_source_rgba (cr, 0, 0, 0, strength);
      draw_line (cr, line, y);
    }
  cairo_destroy (cr);
  return tile;
}

static void
keep_grain (PpTrayRow *self,
            int        height,
            int        factor)
{
  if (self->grain != NULL && self->grain_height == height && self->grain_factor == factor)
    return;
  g_clear_pointer (&self->grain, cairo_surface_destroy);
  self->grain = make_grain (height, factor);
  self->grain_height = height;
  self->grain_factor = factor;
}

static void
snapshot_grain (PpTrayRow     *self,
                GtkSnapshot   *snapshot,
                const GdkRGBA *ink,
                Stretch           seen)
{
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  double width = seen.x1 - seen.x0;
  cairo_pattern_t *pattern;
  cairo_matrix_t shift;
  cairo_t *cr;

  keep_grain (self, height, gtk_widget_get_scale_factor (GTK_WIDGET (self)));
  pattern = cairo_pattern_create_for_surface (self->grain);
  cairo_pattern_set_extend (pattern, CAIRO_EXTEND_REPEAT);
  /* A row may be so long that its coordinates are too large to draw a pattern in. */
  cairo_matrix_init_translate (&shift, fmod (seen.x0, TILE), 0);
  cairo_pattern_set_matrix (pattern, &shift);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) seen.x0, 0));
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  gdk_cairo_set_source_rgba (cr, ink);
  cairo_mask (cr, pattern);
  cairo_pattern_destroy (pattern);
  cairo_destroy (cr);
  gtk_snapshot_restore (snapshot);
}

/* Over the compartments from `x0` to `x1`, and in sight as long as one of them is. */
static void
snapshot_heading (PpTrayRow     *self,
                  GtkSnapshot   *snapshot,
                  const GdkRGBA *ink,
                  PpKind         kind,
                  Stretch           group,
                  Stretch           seen)
{
  g_autoptr (PangoLayout) layout = make_heading (self, pp_tray_words_kinds (kind));
  double from = fmax (group.x0, seen.x0 + PP_TRAY_RAIL);
  double to = fmin (group.x1, seen.x1 - PP_TRAY_RAIL);
  int width;

  pango_layout_get_pixel_size (layout, &width, NULL);
  width = MIN (width, (int) (group.x1 - group.x0));
  pango_layout_set_width (layout, width * PANGO_SCALE);
  if (gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL)
    from = fmax (to - width, group.x0);
  from = fmin (from, group.x1 - width);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) round (from), HEAD_PAD));
  gtk_snapshot_append_layout (snapshot, layout, ink);
  gtk_snapshot_restore (snapshot);
}

static Stretch
get_extent (PpTrayRow *self,
            guint      i)
{
  GtkAllocation box;

  gtk_widget_get_allocation (pp_tray_row_get (self, i), &box);
  return (Stretch) { box.x, box.x + box.width };
}

static void
snapshot_headings (PpTrayRow     *self,
                   GtkSnapshot   *snapshot,
                   const GdkRGBA *ink,
                   Stretch           seen)
{
  Stretch group = { 0, 0 };

  for (guint i = 0; i < self->order->len; i++)
    {
      Stretch own = get_extent (self, i);
      PpKind kind = pp_tray_row_get_kind (self, i);
      gboolean is_first = i == 0 || kind != pp_tray_row_get_kind (self, i - 1);
      gboolean is_last = i + 1 == self->order->len || kind != pp_tray_row_get_kind (self, i + 1);

      group = is_first ? own : (Stretch) { fmin (group.x0, own.x0), fmax (group.x1, own.x1) };
      if (is_last && group.x1 > seen.x0 && group.x0 < seen.x1)
        snapshot_heading (self, snapshot, ink, kind, group, seen);
    }
}

void
pp_tray_row_snapshot (GtkWidget   *widget,
                      GtkSnapshot *snapshot)
{
  PpTrayRow *self = PP_TRAY_ROW (widget);
  Stretch seen = { 0, gtk_widget_get_width (widget) };
  GdkRGBA ink;

  if (self->adjustment != NULL)
    seen.x0 = floor (gtk_adjustment_get_value (self->adjustment));
  if (self->adjustment != NULL)
    seen.x1 = fmin (seen.x1, ceil (seen.x0 + gtk_adjustment_get_page_size (self->adjustment)) + 1);
  if (seen.x1 <= seen.x0)
    return;
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &ink);
  snapshot_grain (self, snapshot, &ink, seen);
  snapshot_headings (self, snapshot, &ink, seen);
  for (guint i = 0; i < self->order->len; i++)
    {
      Stretch own = get_extent (self, i);

      if (own.x1 > seen.x0 && own.x0 < seen.x1)
        gtk_widget_snapshot_child (widget, pp_tray_row_get (self, i), snapshot);
    }
}
