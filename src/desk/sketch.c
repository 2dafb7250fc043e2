/* sketch.c: small pictures of our own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is drawn in a frame of its own, in units of which WIDTH and HEIGHT make the whole picture.
 */
#include "config.h"

#include "desk/sketch.h"

#include "desk/em.h"
#include "desk/palette.h"

struct _PpSketch
{
  GtkWidget    parent_instance;
  PpSketchKind kind;
};

G_DEFINE_FINAL_TYPE (PpSketch, pp_sketch, GTK_TYPE_WIDGET)

G_DEFINE_ENUM_TYPE (PpSketchKind, pp_sketch_kind,
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_NONE, "none"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_WALL, "wall"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_WINDOW, "window"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_RECTANGLE, "rectangle"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_OVAL, "oval"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_ARCH, "arch"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_TOUCH_ALL, "touch-all"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_TOUCH_MIDDLE, "touch-middle"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_TOUCH_RIM, "touch-rim"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_TOUCH_ENDS, "touch-ends"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_TOUCH_BASE, "touch-base"),
                    G_DEFINE_ENUM_VALUE (PP_SKETCH_TOUCH_TIP, "touch-tip"))

#define UNIT 1.35 /* of the text's size */
#define LINE 0.08 /* units */
#define N_PETALS 8

/* Of each kind, in units. */
static const struct
{
  double width;
  double height;
} sizes[] = {
  [PP_SKETCH_NONE] = { 0, 0 },        [PP_SKETCH_WALL] = { 9, 4.9 },
  [PP_SKETCH_WINDOW] = { 9, 4.9 },    [PP_SKETCH_RECTANGLE] = { 2.4, 2.8 },
  [PP_SKETCH_OVAL] = { 2.4, 2.8 },    [PP_SKETCH_ARCH] = { 2.4, 2.8 },
  [PP_SKETCH_TOUCH_ALL] = { 3.6, 1.3 },   [PP_SKETCH_TOUCH_MIDDLE] = { 3.6, 1.3 },
  [PP_SKETCH_TOUCH_RIM] = { 3.6, 1.3 },   [PP_SKETCH_TOUCH_ENDS] = { 3.6, 1.3 },
  [PP_SKETCH_TOUCH_BASE] = { 3.6, 1.3 },  [PP_SKETCH_TOUCH_TIP] = { 3.6, 1.3 },
};

static void
stroke (cairo_t         *cr,
        const PpPalette *palette)
{
  pp_palette_set (cr, &palette->ink, 0.85);
  cairo_stroke (cr);
}

/* What is on the path: glass, a breath of the accent, with its edge. */
static void
fill_glass (cairo_t         *cr,
            const PpPalette *palette)
{
  pp_palette_set (cr, &palette->accent, 0.13);
  cairo_fill_preserve (cr);
  stroke (cr, palette);
}

static void
draw_flower (cairo_t         *cr,
             const PpPalette *palette,
             double           x,
             double           y,
             double           size)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  pp_palette_set (cr, &palette->accent, 0.75);
  for (guint i = 0; i < N_PETALS; i++)
    {
      cairo_save (cr);
      cairo_rotate (cr, 2 * G_PI * i / N_PETALS);
      cairo_translate (cr, size * 0.62, 0);
      cairo_scale (cr, size * 0.4, size * 0.2);
      cairo_arc (cr, 0, 0, 1, 0, 2 * G_PI);
      cairo_restore (cr);
      cairo_fill (cr);
    }
  cairo_arc (cr, 0, 0, size * 0.24, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->caution, 0.9);
  cairo_fill (cr);
  cairo_restore (cr);
}

/* A panel 2 wide and 2.7 high whose wire meets at (x, y). */
static void
draw_panel (cairo_t         *cr,
            const PpPalette *palette,
            double           x,
            double           y)
{
  cairo_move_to (cr, x - 0.5, y + 0.75);
  cairo_line_to (cr, x, y);
  cairo_line_to (cr, x + 0.5, y + 0.75);
  stroke (cr, palette);
  cairo_arc (cr, x, y, LINE * 1.3, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_fill (cr);
  cairo_rectangle (cr, x - 1, y + 0.35, 2, 2.7);
  fill_glass (cr, palette);
  pp_palette_set (cr, &palette->done, 0.9);
  cairo_move_to (cr, x - 0.35, y + 2.6);
  cairo_curve_to (cr, x - 0.3, y + 2, x - 0.2, y + 1.6, x - 0.35, y + 1.15);
  cairo_move_to (cr, x - 0.3, y + 2.6);
  cairo_curve_to (cr, x, y + 2.3, x + 0.3, y + 2.1, x + 0.4, y + 1.8);
  cairo_stroke (cr);
  draw_flower (cr, palette, x - 0.35, y + 1.1, 0.5);
  draw_flower (cr, palette, x + 0.42, y + 1.7, 0.38);
}

/* Seen across a room: the panel over a low shelf with a jug. */
static void
draw_wall (cairo_t         *cr,
           const PpPalette *palette)
{
  pp_palette_set (cr, &palette->line, 0.28);
  cairo_rectangle (cr, 0.2, 0.2, 8.6, 4.4);
  cairo_fill (cr);
  draw_panel (cr, palette, 4.5, 0.75);
  cairo_move_to (cr, 0.2, 4.6);
  cairo_line_to (cr, 8.8, 4.6);
  stroke (cr, palette);
  cairo_move_to (cr, 6.75, 3.2);
  cairo_curve_to (cr, 6.35, 3.7, 6.3, 4.2, 6.6, 4.6);
  cairo_line_to (cr, 7.5, 4.6);
  cairo_curve_to (cr, 7.8, 4.2, 7.75, 3.7, 7.35, 3.2);
  cairo_close_path (cr);
  pp_palette_set (cr, &palette->caution, 0.25);
  cairo_fill_preserve (cr);
  stroke (cr, palette);
  cairo_arc (cr, 7.7, 3.85, 0.36, -G_PI / 2.2, G_PI / 2.4);
  stroke (cr, palette);
  cairo_rectangle (cr, 0.9, 4.2, 1.5, 0.4);
  stroke (cr, palette);
  cairo_rectangle (cr, 1.15, 3.85, 1.2, 0.35);
  stroke (cr, palette);
}

/* A sash with the sky in it and the panel hung before it. */
static void
draw_window (cairo_t         *cr,
             const PpPalette *palette)
{
  cairo_rectangle (cr, 1.9, 0.3, 5.2, 4.1);
  pp_palette_set (cr, &palette->note, 0.16);
  cairo_fill_preserve (cr);
  stroke (cr, palette);
  cairo_rectangle (cr, 2.15, 0.55, 4.7, 3.6);
  stroke (cr, palette);
  cairo_move_to (cr, 2.15, 3.3);
  cairo_curve_to (cr, 3.3, 2.6, 4.2, 3.4, 5, 3);
  cairo_curve_to (cr, 5.8, 2.6, 6.4, 2.9, 6.85, 3.1);
  pp_palette_set (cr, &palette->done, 0.7);
  cairo_stroke (cr);
  cairo_arc (cr, 6.1, 1.3, 0.4, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->caution, 0.45);
  cairo_fill (cr);
  cairo_rectangle (cr, 1.5, 4.4, 6, 0.3);
  pp_palette_set (cr, &palette->line, 0.5);
  cairo_fill_preserve (cr);
  stroke (cr, palette);
  draw_panel (cr, palette, 4.5, 0.65);
}

static void
draw_rectangle (cairo_t         *cr,
                const PpPalette *palette)
{
  cairo_rectangle (cr, 0.25, 0.15, 1.9, 2.5);
  fill_glass (cr, palette);
}

static void
draw_oval (cairo_t         *cr,
           const PpPalette *palette)
{
  cairo_save (cr);
  cairo_translate (cr, 1.2, 1.4);
  cairo_scale (cr, 0.95, 1.25);
  cairo_arc (cr, 0, 0, 1, 0, 2 * G_PI);
  cairo_restore (cr);
  fill_glass (cr, palette);
}

static void
draw_arch (cairo_t         *cr,
           const PpPalette *palette)
{
  cairo_move_to (cr, 0.25, 2.65);
  cairo_save (cr);
  cairo_translate (cr, 1.2, 0.9);
  cairo_scale (cr, 0.95, 0.75);
  cairo_arc (cr, 0, 0, 1, G_PI, 2 * G_PI);
  cairo_restore (cr);
  cairo_line_to (cr, 2.15, 2.65);
  cairo_close_path (cr);
  fill_glass (cr, palette);
}

#define TOP 1.15    /* units: where the flat top is */
#define HALF 1.45   /* of the piece's length */
#define RISE 0.62
#define N_PLACES 24

/* Height of the underside at `t`, -1 at the base to 1 at the tip. */
static double
lift (PpSketchKind kind,
      double       t)
{
  switch ((int) kind)
    {
    case PP_SKETCH_TOUCH_MIDDLE:
      return RISE * t * t;
    case PP_SKETCH_TOUCH_RIM:
    case PP_SKETCH_TOUCH_ENDS:
      return RISE * (1 - t * t);
    case PP_SKETCH_TOUCH_BASE:
      return RISE * fmax (t + 0.1, 0) * fmax (t + 0.1, 0);
    case PP_SKETCH_TOUCH_TIP:
      return RISE * fmax (0.1 - t, 0) * fmax (0.1 - t, 0);
    default:
      return 0;
    }
}

/* The piece's tip, at the right, is thinner, but for those that have none. */
static void
draw_touching (cairo_t         *cr,
               const PpPalette *palette,
               PpSketchKind     kind)
{
  gboolean is_round = kind == PP_SKETCH_TOUCH_RIM || kind == PP_SKETCH_TOUCH_MIDDLE;

  cairo_move_to (cr, 0.1, TOP + LINE / 2);
  cairo_line_to (cr, 3.5, TOP + LINE / 2);
  stroke (cr, palette);
  for (int i = 0; i <= N_PLACES; i++)
    {
      double t = 2.0 * i / N_PLACES - 1;

      cairo_line_to (cr, 1.8 + HALF * t, TOP - LINE / 2 - lift (kind, t));
    }
  for (int i = N_PLACES; i >= 0; i--)
    {
      double t = 2.0 * i / N_PLACES - 1;
      double thick = is_round ? 0.24 : 0.27 - 0.1 * t;

      cairo_line_to (cr, 1.8 + HALF * t, TOP - LINE / 2 - lift (kind, t) - thick);
    }
  cairo_close_path (cr);
  pp_palette_set (cr, &palette->accent, 0.5);
  cairo_fill_preserve (cr);
  stroke (cr, palette);
}

typedef void (*DrawFunc) (cairo_t         *cr,
                          const PpPalette *palette);

static const DrawFunc drawings[] = {
  [PP_SKETCH_WALL] = draw_wall,           [PP_SKETCH_WINDOW] = draw_window,
  [PP_SKETCH_RECTANGLE] = draw_rectangle, [PP_SKETCH_OVAL] = draw_oval,
  [PP_SKETCH_ARCH] = draw_arch,
};

static void
pp_sketch_measure (GtkWidget      *widget,
                   GtkOrientation  orientation,
                   int             for_size,
                   int            *minimum,
                   int            *natural,
                   int            *minimum_baseline,
                   int            *natural_baseline)
{
  PpSketchKind kind = PP_SKETCH (widget)->kind;
  double units = orientation == GTK_ORIENTATION_HORIZONTAL ? sizes[kind].width
                                                           : sizes[kind].height;

  *minimum = *natural = (int) ceil (units * UNIT * pp_em_of (widget));
}

static void
pp_sketch_snapshot (GtkWidget   *widget,
                    GtkSnapshot *snapshot)
{
  PpSketchKind kind = PP_SKETCH (widget)->kind;
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  PpPalette palette;
  double unit = UNIT * pp_em_of (widget);
  cairo_t *cr;

  if (kind == PP_SKETCH_NONE)
    return;
  palette = pp_palette_of (widget);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  cairo_translate (cr, ((double) width - sizes[kind].width * unit) / 2,
                   ((double) height - sizes[kind].height * unit) / 2);
  cairo_scale (cr, unit, unit);
  cairo_set_line_width (cr, LINE);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  if (kind >= PP_SKETCH_TOUCH_ALL)
    draw_touching (cr, &palette, kind);
  else
    drawings[kind] (cr, &palette);
  cairo_destroy (cr);
}

static void
pp_sketch_class_init (PpSketchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = pp_sketch_measure;
  widget_class->snapshot = pp_sketch_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
  gtk_widget_class_set_css_name (widget_class, "pp-sketch");
}

static void
pp_sketch_init (PpSketch *self)
{
}

void
pp_sketch_set_kind (PpSketch     *self,
                    PpSketchKind  kind)
{
  g_return_if_fail (PP_IS_SKETCH (self));
  self->kind = kind;
  gtk_widget_set_visible (GTK_WIDGET (self), kind != PP_SKETCH_NONE);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
