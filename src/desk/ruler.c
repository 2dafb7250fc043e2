/* ruler.c: a rule along the glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/ruler.h"

#include "desk/palette.h"
#include "desk/ticks.h"

#define LEAST_BETWEEN_LINES 5 /* px */
#define SMALL 0.18            /* of the ruler's breadth */
#define MEDIUM 0.30
#define LARGE 0.45

struct _PpRuler
{
  GtkWidget      parent_instance;
  GtkOrientation orientation;
  PpZoom         zoom;
  PpUnits        units;
};

enum
{
  PROP_ORIENTATION = 1,
};

G_DEFINE_FINAL_TYPE_WITH_CODE (PpRuler, pp_ruler, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_ORIENTABLE, NULL))

static PangoLayout *
make_layout (PpRuler *self)
{
  PangoLayout *layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), NULL);
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_scale_new (PANGO_SCALE_SMALL));
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  return layout;
}

static void
measure_figure (PpRuler *self,
                int     *width,
                int     *height)
{
  g_autoptr (PangoLayout) layout = make_layout (self);

  pango_layout_set_text (layout, "0000", -1);
  pango_layout_get_pixel_size (layout, width, height);
}

static void
pp_ruler_measure (GtkWidget      *widget,
                  GtkOrientation  orientation,
                  int             for_size,
                  int            *minimum,
                  int            *natural,
                  int            *minimum_baseline,
                  int            *natural_baseline)
{
  PpRuler *self = PP_RULER (widget);
  int width, height;

  measure_figure (self, &width, &height);
  if (orientation == self->orientation)
    *minimum = *natural = 0;
  else if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = MAX (width, height) + 8;
  else
    *minimum = *natural = height + 12;
}

/* The figure at a line: whole millimetres or inches, without the unit. */
static char *
write_figure (double  mm,
              PpUnits units)
{
  double figure = units == PP_UNITS_INCH ? mm / PP_MM_PER_INCH : mm;

  return g_strdup_printf ("%.0f", figure);
}

static void
draw_figure (PpRuler         *self,
             cairo_t         *cr,
             PangoLayout     *layout,
             const PpPalette *palette,
             double           at,
             double           mm,
             double           breadth)
{
  g_autofree char *figure = write_figure (mm, self->units);
  int width, height;

  pango_layout_set_text (layout, figure, -1);
  pango_layout_get_pixel_size (layout, &width, &height);
  pp_palette_set (cr, &palette->faint, 1);
  if (self->orientation == GTK_ORIENTATION_HORIZONTAL)
    cairo_move_to (cr, at + 3, 1);
  else
    cairo_move_to (cr, MAX (1, breadth * (1 - LARGE) - width + 2), at + 1);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_line (PpRuler *self,
           cairo_t *cr,
           double   at,
           double   breadth,
           double   share)
{
  double from = breadth * (1 - share);

  at = floor (at) + 0.5;
  if (self->orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      cairo_move_to (cr, at, from);
      cairo_line_to (cr, at, breadth);
    }
  else
    {
      cairo_move_to (cr, from, at);
      cairo_line_to (cr, breadth, at);
    }
}

static void
draw_ticks (PpRuler         *self,
            cairo_t         *cr,
            const PpPalette *palette,
            double           length,
            double           breadth)
{
  g_autoptr (PangoLayout) layout = make_layout (self);
  gboolean across = self->orientation == GTK_ORIENTATION_HORIZONTAL;
  double sign = across && self->zoom.from_behind ? -1 : 1;
  double origin = across ? self->zoom.x : self->zoom.y;
  double step, first, last;
  PpTicks ticks;
  int width, height;

  measure_figure (self, &width, &height);
  ticks = pp_ticks_choose (self->zoom.scale, self->units, LEAST_BETWEEN_LINES, width + 8);
  step = ticks.small * self->zoom.scale;
  first = sign > 0 ? -origin / step : (origin - length) / step;
  last = first + length / step;
  for (double i = floor (first); i <= ceil (last); i++)
    {
      double at = origin + sign * i * step;
      gboolean is_large = fmod (i, ticks.large) == 0;
      double share = is_large ? LARGE : fmod (i, ticks.medium) == 0 ? MEDIUM : SMALL;

      draw_line (self, cr, at, breadth, share);
      if (is_large)
        {
          pp_palette_set (cr, &palette->line, 1);
          cairo_stroke (cr);
          draw_figure (self, cr, layout, palette, at, i * ticks.small, breadth);
        }
    }
  pp_palette_set (cr, &palette->line, 1);
  cairo_stroke (cr);
}

static void
pp_ruler_snapshot (GtkWidget   *widget,
                   GtkSnapshot *snapshot)
{
  PpRuler *self = PP_RULER (widget);
  PpPalette palette = pp_palette_of (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr;

  if (self->zoom.scale <= 0 || width <= 0 || height <= 0)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  cairo_set_line_width (cr, 1);
  if (self->orientation == GTK_ORIENTATION_HORIZONTAL)
    draw_ticks (self, cr, &palette, width, height);
  else
    draw_ticks (self, cr, &palette, height, width);
  cairo_destroy (cr);
}

static void
pp_ruler_get_property (GObject    *object,
                       guint       prop_id,
                       GValue     *value,
                       GParamSpec *pspec)
{
  if (prop_id == PROP_ORIENTATION)
    g_value_set_enum (value, PP_RULER (object)->orientation);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
pp_ruler_set_property (GObject      *object,
                       guint         prop_id,
                       const GValue *value,
                       GParamSpec   *pspec)
{
  if (prop_id == PROP_ORIENTATION)
    PP_RULER (object)->orientation = g_value_get_enum (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
pp_ruler_class_init (PpRulerClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = pp_ruler_get_property;
  object_class->set_property = pp_ruler_set_property;
  widget_class->measure = pp_ruler_measure;
  widget_class->snapshot = pp_ruler_snapshot;
  g_object_class_override_property (object_class, PROP_ORIENTATION, "orientation");
  gtk_widget_class_set_css_name (widget_class, "pp-ruler");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
pp_ruler_init (PpRuler *self)
{
  /* "-50" stays that, whichever way is read */
  gtk_widget_set_direction (GTK_WIDGET (self), GTK_TEXT_DIR_LTR);
}

void
pp_ruler_set (PpRuler      *self,
              const PpZoom *zoom,
              PpUnits       units)
{
  g_return_if_fail (PP_IS_RULER (self) && zoom != NULL);

  /* asked at each step of a drag */
  if (pp_zoom_equal (&self->zoom, zoom) && self->units == units)
    return;
  self->zoom = *zoom;
  self->units = units;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
