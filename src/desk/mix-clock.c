/* mix-clock.c: the working life of one mix, with what is done in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From left to right: mixing, slanted; each step a block; what is waited for stays empty; the time
 * for which a piece is held, a line under the blocks.
 */
#include "config.h"

#include "desk/mix-clock.h"

#include "desk/em.h"
#include "desk/palette.h"

#define HEIGHT_EM 1.2
#define BLOCK_SHARE 0.62 /* of the height; the holds have the rest */
#define HATCH 5.0        /* px */

struct _PpMixClock
{
  GtkWidget     parent_instance;
  const PpPlan *plan;
  guint         mix;
};

G_DEFINE_FINAL_TYPE (PpMixClock, pp_mix_clock, GTK_TYPE_WIDGET)

typedef struct
{
  cairo_t   *cr;
  PpPalette  palette;
  double     width;  /* px */
  double     height; /* px, of the blocks */
  double     scale;  /* px a minute */
} Drawing;

static void
draw_track (const Drawing *drawing)
{
  cairo_rectangle (drawing->cr, 0.5, 0.5, drawing->width - 1, drawing->height - 1);
  pp_palette_set (drawing->cr, &drawing->palette.bench, 1);
  cairo_fill_preserve (drawing->cr);
  pp_palette_set (drawing->cr, &drawing->palette.line, 1);
  cairo_set_line_width (drawing->cr, 1);
  cairo_stroke (drawing->cr);
}

static void
draw_mixing (const Drawing *drawing,
             double         minutes)
{
  double end = minutes * drawing->scale;

  cairo_save (drawing->cr);
  cairo_rectangle (drawing->cr, 1, 1, end - 1, drawing->height - 2);
  cairo_clip (drawing->cr);
  for (double x = -drawing->height; x < end; x += HATCH)
    {
      cairo_move_to (drawing->cr, x, drawing->height);
      cairo_line_to (drawing->cr, x + drawing->height, 0);
    }
  pp_palette_set (drawing->cr, &drawing->palette.accent, 1);
  cairo_set_line_width (drawing->cr, 1);
  cairo_stroke (drawing->cr);
  cairo_restore (drawing->cr);
}

static void
draw_step (const Drawing *drawing,
           const PpStep  *step,
           double         start,
           double         grab)
{
  double x = start * drawing->scale;
  double end = x + step->minutes * drawing->scale;
  double y = drawing->height + 3;

  cairo_rectangle (drawing->cr, x + 1, 1, fmax (end - x - 2, 1), drawing->height - 2);
  pp_palette_set (drawing->cr, &drawing->palette.accent, 1);
  cairo_fill (drawing->cr);
  if (!step->hold)
    return;
  cairo_move_to (drawing->cr, end - 1, drawing->height - 1);
  cairo_line_to (drawing->cr, end - 1, y);
  cairo_line_to (drawing->cr, fmin (end + grab * drawing->scale, drawing->width), y);
  cairo_set_line_width (drawing->cr, 2);
  cairo_stroke (drawing->cr);
}

static void
pp_mix_clock_snapshot (GtkWidget   *widget,
                       GtkSnapshot *snapshot)
{
  PpMixClock *self = PP_MIX_CLOCK (widget);
  const PpAdhesive *glue = self->plan->check->panel->adhesive;
  double start = self->plan->mixes[self->mix].start;
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  Drawing drawing = { .palette = pp_palette_of (widget), .width = width };

  drawing.height = round (height * BLOCK_SHARE);
  drawing.scale = width / glue->working_life;
  drawing.cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width,
                                                                         (float) height));
  if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
    {
      /* time goes as one reads */
      cairo_translate (drawing.cr, width, 0);
      cairo_scale (drawing.cr, -1, 1);
    }
  draw_track (&drawing);
  draw_mixing (&drawing, glue->mixing);
  for (guint i = 0; i < self->plan->n_steps; i++)
    if (self->plan->steps[i].mix == self->mix + 1)
      draw_step (&drawing, &self->plan->steps[i], self->plan->steps[i].start - start, glue->grab);
  cairo_destroy (drawing.cr);
}

static void
pp_mix_clock_measure (GtkWidget      *widget,
                      GtkOrientation  orientation,
                      int             for_size,
                      int            *minimum,
                      int            *natural,
                      int            *minimum_baseline,
                      int            *natural_baseline)
{
  double em = pp_em_of (widget);

  *minimum = *natural = (int) (em * (orientation == GTK_ORIENTATION_VERTICAL ? HEIGHT_EM : 8));
}

static void
pp_mix_clock_dispose (GObject *object)
{
  g_clear_pointer (&PP_MIX_CLOCK (object)->plan, pp_plan_unref);
  G_OBJECT_CLASS (pp_mix_clock_parent_class)->dispose (object);
}

static void
pp_mix_clock_class_init (PpMixClockClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_mix_clock_dispose;
  widget_class->snapshot = pp_mix_clock_snapshot;
  widget_class->measure = pp_mix_clock_measure;
  /* the words beside it say the same */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
pp_mix_clock_init (PpMixClock *self)
{
}

GtkWidget *
pp_mix_clock_new (const PpPlan *plan,
                  guint         mix)
{
  PpMixClock *self = g_object_new (PP_TYPE_MIX_CLOCK, NULL);

  g_return_val_if_fail (plan != NULL && mix < plan->n_mixes, NULL);

  self->plan = pp_plan_ref (plan);
  self->mix = mix;
  return GTK_WIDGET (self);
}
