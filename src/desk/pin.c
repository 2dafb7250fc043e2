/* pin.c: the mark of a finding: its shape says how grave it is, its number which one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The three shapes are made of one polygon each (the circle of none), with rounded corners: a
 * polygon is filled and stroked with a round pen. Their sizes differ so that they look alike: a
 * triangle of the circle's width would look small, and has less room for its number, which stands
 * where the triangle is wide, below the middle.
 */
#include "config.h"

#include "desk/pin.h"

#include "desk/em.h"
#include "panel/i18n.h"

/* All in sizes of the pin. */
#define ROUND 0.09       /* radius of the corners */
#define CIRCLE 0.45      /* radius */
#define EDGE 0.06        /* the bench round the mark */
#define RING 0.075       /* width of the ring of one that is lit */
#define RING_GAP 0.07    /* between the mark and its ring */
#define LIT 1.12         /* how much larger a lit one is */
#define FIGURE 0.52      /* height of the font of one figure */
#define FIGURES_WIDE 0.5 /* what two or more figures may take */

#define SIZE_EM 1.9
#define ROOM 1.14 /* of the widget, in sizes: for the edge and the overhanging corners */

typedef struct
{
  guint  n;            /* corners; 0: a circle */
  double corners[4][2]; /* from the middle, without the round pen */
  double figure_down;   /* where the middle of the number stands */
} Shape;

static const Shape shapes[] = {
  [PP_LEVEL_FAULT] = { 3, { { 0, -0.43 }, { 0.46, 0.37 }, { -0.46, 0.37 } }, 0.13 },
  [PP_LEVEL_CAUTION] = { 4, { { 0, -0.43 }, { 0.43, 0 }, { 0, 0.43 }, { -0.43, 0 } }, 0 },
  [PP_LEVEL_NOTE] = { 0, { { 0 } }, 0 },
};

static void
add_path (cairo_t     *cr,
          const Shape *shape)
{
  cairo_new_path (cr);
  for (guint i = 0; i < shape->n; i++)
    cairo_line_to (cr, shape->corners[i][0], shape->corners[i][1]);
  if (shape->n == 0)
    cairo_arc (cr, 0, 0, CIRCLE - ROUND, 0, 2 * G_PI);
  cairo_close_path (cr);
}

/* The shape, `outward` larger all round. */
static void
fill_shape (cairo_t       *cr,
            const Shape   *shape,
            const GdkRGBA *colour,
            double         outward)
{
  pp_palette_set (cr, colour, 1);
  add_path (cr, shape);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, 2 * (ROUND + outward));
  cairo_stroke (cr);
}

static PangoLayout *
lay_out_number (PangoContext *pango,
                guint         number,
                double        height)
{
  PangoLayout *layout = pango_layout_new (pango);
  PangoFontDescription *font
    = pango_font_description_copy (pango_context_get_font_description (pango));
  char text[16];

  g_snprintf (text, sizeof text, "%u", number);
  pango_font_description_set_weight (font, PANGO_WEIGHT_BOLD);
  pango_font_description_set_absolute_size (font, height * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, text, -1);
  pango_font_description_free (font);
  return layout;
}

/* Its ink is centred, not its advance: a 1 would stand to the left. More figures than have room
 * are drawn narrower rather than much smaller. */
static void
draw_number (cairo_t       *cr,
             PangoContext  *pango,
             const Shape   *shape,
             const GdkRGBA *colour,
             guint          number,
             double         size)
{
  g_autoptr (PangoLayout) layout = lay_out_number (pango, number, FIGURE * size);
  PangoRectangle ink;
  double narrow;

  pango_layout_get_pixel_extents (layout, &ink, NULL);
  if (ink.width == 0)
    return;
  narrow = MIN (1, FIGURES_WIDE * size / ink.width);
  cairo_translate (cr, 0, shape->figure_down * size);
  cairo_scale (cr, narrow, sqrt (narrow));
  cairo_move_to (cr, -ink.x - ink.width / 2.0, -ink.y - ink.height / 2.0);
  pp_palette_set (cr, colour, 1);
  pango_cairo_show_layout (cr, layout);
}

static const GdkRGBA *
get_colour (const PpPalette *palette,
            PpLevel          level)
{
  switch (level)
    {
    case PP_LEVEL_FAULT:
      return &palette->fault;
    case PP_LEVEL_CAUTION:
      return &palette->caution;
    case PP_LEVEL_NOTE:
      return &palette->note;
    }
  g_return_val_if_reached (&palette->note);
}

void
pp_pin_draw (cairo_t         *cr,
             PangoContext    *pango,
             const PpPalette *palette,
             PpLevel          level,
             guint            number,
             double           x,
             double           y,
             double           size,
             gboolean         is_lit)
{
  const Shape *shape = &shapes[level];

  g_return_if_fail (cr != NULL && palette != NULL);
  g_return_if_fail (number == 0 || PANGO_IS_CONTEXT (pango));

  if (is_lit)
    size *= LIT;
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_save (cr);
  cairo_scale (cr, size, size);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  if (is_lit)
    {
      fill_shape (cr, shape, &palette->bench, RING_GAP + RING + EDGE);
      fill_shape (cr, shape, &palette->ink, RING_GAP + RING);
    }
  fill_shape (cr, shape, &palette->bench, is_lit ? RING_GAP : EDGE);
  fill_shape (cr, shape, get_colour (palette, level), 0);
  cairo_restore (cr);
  if (number > 0)
    draw_number (cr, pango, shape, &palette->on_mark, number, size);
  cairo_restore (cr);
}

double
pp_pin_get_size (PangoContext *pango)
{
  g_return_val_if_fail (PANGO_IS_CONTEXT (pango), 0);
  return round (SIZE_EM * pp_em_of_pango (pango));
}

struct _PpPin
{
  GtkWidget parent_instance;
  PpLevel   level;
  guint     number;
  gboolean  is_set;
};

G_DEFINE_FINAL_TYPE (PpPin, pp_pin, GTK_TYPE_WIDGET)

static void
pp_pin_measure (GtkWidget      *widget,
                GtkOrientation  orientation,
                int             for_size,
                int            *minimum,
                int            *natural,
                int            *minimum_baseline,
                int            *natural_baseline)
{
  *minimum = (int) ceil (ROOM * pp_pin_get_size (gtk_widget_get_pango_context (widget)));
  *natural = *minimum;
}

static void
pp_pin_snapshot (GtkWidget   *widget,
                 GtkSnapshot *snapshot)
{
  PpPin *self = PP_PIN (widget);
  PangoContext *pango = gtk_widget_get_pango_context (widget);
  PpPalette palette = pp_palette_of (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  palette.bench = palette.paper; /* lists are on paper */
  pp_pin_draw (cr, pango, &palette, self->level, self->number, (double) width / 2,
               (double) height / 2, pp_pin_get_size (pango), FALSE);
  cairo_destroy (cr);
}

static void
pp_pin_class_init (PpPinClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = pp_pin_measure;
  widget_class->snapshot = pp_pin_snapshot;
  gtk_widget_class_set_css_name (widget_class, "pp-pin");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
pp_pin_init (PpPin *self)
{
  self->level = PP_LEVEL_NOTE;
}

char *
pp_pin_dup_name (PpLevel level,
                 guint   number)
{
  switch (level)
    {
    case PP_LEVEL_FAULT:
      return number > 0 ? g_strdup_printf (_("Fault %u"), number) : g_strdup (_("Fault"));
    case PP_LEVEL_CAUTION:
      return number > 0 ? g_strdup_printf (_("Caution %u"), number) : g_strdup (_("Caution"));
    case PP_LEVEL_NOTE:
      return number > 0 ? g_strdup_printf (_("Note %u"), number) : g_strdup (_("Note"));
    }
  g_return_val_if_reached (NULL);
}

void
pp_pin_set (PpPin   *self,
            PpLevel  level,
            guint    number)
{
  g_autofree char *name = NULL;

  g_return_if_fail (PP_IS_PIN (self));

  if (self->level == level && self->number == number && self->is_set)
    return;
  self->level = level;
  self->number = number;
  self->is_set = TRUE;
  name = pp_pin_dup_name (level, number);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
