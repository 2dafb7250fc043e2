/* tick.c: the mark of what is done: a tick.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/tick.h"

#include "desk/pin.h"

struct _PpTick
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (PpTick, pp_tick, GTK_TYPE_WIDGET)

/* As large as a pin, in whose place it stands. */
static double
get_size (GtkWidget *widget)
{
  return pp_pin_get_size (gtk_widget_get_pango_context (widget));
}

static void
pp_tick_measure (GtkWidget      *widget,
                 GtkOrientation  orientation,
                 int             for_size,
                 int            *minimum,
                 int            *natural,
                 int            *minimum_baseline,
                 int            *natural_baseline)
{
  *minimum = *natural = (int) ceil (get_size (widget));
}

static void
pp_tick_snapshot (GtkWidget   *widget,
                  GtkSnapshot *snapshot)
{
  PpPalette palette = pp_palette_of (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  cairo_translate (cr, (double) width / 2, (double) height / 2);
  cairo_scale (cr, get_size (widget), get_size (widget));
  cairo_move_to (cr, -0.3, 0.02);
  cairo_line_to (cr, -0.09, 0.24);
  cairo_line_to (cr, 0.31, -0.24);
  cairo_set_line_width (cr, 0.13);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  pp_palette_set (cr, &palette.done, 1);
  cairo_stroke (cr);
  cairo_destroy (cr);
}

static void
pp_tick_class_init (PpTickClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = pp_tick_measure;
  widget_class->snapshot = pp_tick_snapshot;
  gtk_widget_class_set_css_name (widget_class, "pp-tick");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
pp_tick_init (PpTick *self)
{
}
