/* back-view.c: the back of a piece with its dabs, as it lies in the hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/back-view.h"

#include "art/draw.h"
#include "desk/palette.h"

#define PADDING 6.0     /* px */
#define SCALE_MAX 6.0   /* px a mm */
#define LEAST_DAB 7.0   /* px, radius */

struct _PpBackView
{
  GtkWidget      parent_instance;
  const PpCheck *check;
  guint          placement;
};

G_DEFINE_FINAL_TYPE (PpBackView, pp_back_view, GTK_TYPE_WIDGET)

/* Mirrored in the upright middle of the widget. */
static double
set_view (PpBackView *self,
          cairo_t    *cr,
          PpBox       box)
{
  double width = gtk_widget_get_width (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  double scale = fmin ((width - 2 * PADDING) / pp_box_width (box),
                       (height - 2 * PADDING) / pp_box_height (box));
  PpPoint middle = pp_box_middle (box);

  scale = CLAMP (scale, 0.01, SCALE_MAX);
  cairo_translate (cr, width / 2, height / 2);
  cairo_scale (cr, -scale, scale);
  cairo_translate (cr, -middle.x, -middle.y);
  return scale;
}

static void
draw_shape (cairo_t         *cr,
            const PpPalette *palette,
            const PpBody    *body,
            double           scale)
{
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  pp_draw_outline_path (cr, body->outline);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, &palette->line, 0.35);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_set_line_width (cr, 2 / scale);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

static void
draw_dab (cairo_t         *cr,
          const PpPalette *palette,
          const PpDab     *dab,
          double           scale)
{
  double radius = fmax (dab->diameter / 2, LEAST_DAB / scale);

  cairo_new_path (cr);
  cairo_arc (cr, dab->at.x, dab->at.y, radius, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, &palette->accent, 0.35);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, &palette->accent, 1);
  cairo_set_line_width (cr, 3 / scale);
  cairo_stroke (cr);
  cairo_arc (cr, dab->at.x, dab->at.y, 2.5 / scale, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
pp_back_view_snapshot (GtkWidget   *widget,
                       GtkSnapshot *snapshot)
{
  PpBackView *self = PP_BACK_VIEW (widget);
  PpPalette palette = pp_palette_of (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const PpBody *body;
  const PpJoint *joint;
  double scale;
  cairo_t *cr;

  if (self->check == NULL || width <= 0 || height <= 0)
    return;
  body = self->check->scene->bodies[self->placement];
  joint = self->check->joints[self->placement];
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width,
                                                                 (float) height));
  scale = set_view (self, cr, body->box);
  draw_shape (cr, &palette, body, scale);
  for (guint i = 0; i < joint->n_dabs; i++)
    draw_dab (cr, &palette, &joint->places[i], scale);
  cairo_destroy (cr);
}

static void
pp_back_view_dispose (GObject *object)
{
  g_clear_pointer (&PP_BACK_VIEW (object)->check, pp_check_unref);
  G_OBJECT_CLASS (pp_back_view_parent_class)->dispose (object);
}

static void
pp_back_view_class_init (PpBackViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_back_view_dispose;
  widget_class->snapshot = pp_back_view_snapshot;
  gtk_widget_class_set_css_name (widget_class, "pp-back-view");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
pp_back_view_init (PpBackView *self)
{
}

void
pp_back_view_show (PpBackView    *self,
                   const PpCheck *check,
                   guint          placement)
{
  g_return_if_fail (PP_IS_BACK_VIEW (self) && (check == NULL || placement < check->n));

  if (check != NULL)
    pp_check_ref ((PpCheck *) check);
  g_clear_pointer (&self->check, pp_check_unref);
  self->check = check;
  self->placement = placement;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
