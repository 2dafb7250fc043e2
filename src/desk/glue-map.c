/* glue-map.c: the panel from above with the numbers of its steps, and the piece in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture of the pieces is kept as a node until something else is to be seen; numbers and
 * figures (glue-map-marks.c) are drawn over it.
 */
#include "config.h"

#include "desk/glue-map-private.h"

#include "art/draw.h"
#include "desk/panel-picture.h"
#include "glue/job.h"

#include <math.h>

#define DOWN_ALPHA 0.5 /* of what lies there already, at the bench */

G_DEFINE_FINAL_TYPE (PpGlueMap, pp_glue_map, GTK_TYPE_WIDGET)

static guint step_signal;

PpPoint
pp_glue_map_to_px (PpGlueMap *self,
                   PpPoint    mm)
{
  return (PpPoint) { self->at.x + mm.x * self->scale, self->at.y + mm.y * self->scale };
}

/* As large as it goes; at the bench the figures stand at the left and on top. */
static void
fit (PpGlueMap     *self,
     const PpScene *scene)
{
  double em = pp_em_of (GTK_WIDGET (self));
  double left = em * (self->is_bench ? PP_GLUE_MAP_LEFT_EM : 1.5);
  double top = em * (self->is_bench ? PP_GLUE_MAP_TOP_EM : 1.5);
  double width = gtk_widget_get_width (GTK_WIDGET (self)) - left - 1.5 * em;
  double height = gtk_widget_get_height (GTK_WIDGET (self)) - top - 1.5 * em;
  PpBox box = pp_panel_picture_get_box (scene);

  self->scale = fmax (fmin (width / pp_box_width (box), height / pp_box_height (box)), 0.01);
  self->at.x = left + (width - pp_box_width (box) * self->scale) / 2 - box.x0 * self->scale;
  self->at.y = top + (height - pp_box_height (box) * self->scale) / 2 - box.y0 * self->scale;
}

/* FALSE: later. */
static gboolean
is_down (const PpScene *scene,
         guint          body)
{
  return pp_job_is_done (scene->panel, scene->n_knots, scene->n_knots + body);
}

static void
stroke_outline (cairo_t       *cr,
                const PpBody  *body,
                const GdkRGBA *colour,
                double         width)
{
  pp_draw_outline_path (cr, body->outline);
  pp_palette_set (cr, colour, 1);
  cairo_set_line_width (cr, width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

static void
draw_down (PpGlueMap     *self,
           cairo_t       *cr,
           const PpScene *scene,
           PpGallery     *gallery,
           guint          body)
{
  PpPalette palette = pp_palette_of (GTK_WIDGET (self));
  PpArt *art = gallery != NULL ? pp_gallery_get (gallery, scene->bodies[body]->piece) : NULL;

  cairo_push_group (cr);
  pp_draw_body (cr, scene->bodies[body], art);
  cairo_pop_group_to_source (cr);
  cairo_paint_with_alpha (cr, DOWN_ALPHA);
  stroke_outline (cr, scene->bodies[body], &palette.line, 1 / self->scale);
}

static void
draw_bench (PpGlueMap     *self,
            cairo_t       *cr,
            const PpScene *scene,
            PpGallery     *gallery)
{
  PpViewFrom front = { 0 };

  pp_draw_bare (cr, scene, &front);
  for (guint i = 0; i < scene->n_bodies; i++)
    if (is_down (scene, i))
      draw_down (self, cr, scene, gallery, i);
}

static void
draw_page (PpGlueMap     *self,
           cairo_t       *cr,
           const PpScene *scene,
           PpGallery     *gallery)
{
  PpViewFrom front = { 0 };
  g_autofree double *bases = g_new (double, scene->n_bodies + 1);
  g_autofree double *tops = g_new (double, scene->n_bodies + 1);

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const char *id = scene->bodies[i]->placement->id;

      bases[i] = pp_document_get_base (self->document, id);
      tops[i] = pp_document_get_top (self->document, id);
    }
  pp_draw_scene (cr, scene, gallery, bases, tops, &front);
}

static void
draw_picture (PpGlueMap     *self,
              const PpScene *scene)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  PpGallery *gallery = pp_document_get_gallery (self->document);
  cairo_t *cr;

  self->picture = gsk_cairo_node_new (&GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  cr = gsk_cairo_node_get_draw_context (self->picture);
  cairo_translate (cr, self->at.x, self->at.y);
  cairo_scale (cr, self->scale, self->scale);
  if (gallery == NULL)
    ; /* the art comes in a moment */
  else if (self->is_bench)
    draw_bench (self, cr, scene, gallery);
  else
    draw_page (self, cr, scene, gallery);
  cairo_destroy (cr);
}

/* The piece in hand. */
static void
draw_now (PpGlueMap     *self,
          cairo_t       *cr,
          const PpScene *scene)
{
  PpPalette palette = pp_palette_of (GTK_WIDGET (self));
  PpGallery *gallery = pp_document_get_gallery (self->document);
  guint job = self->plan->steps[self->step].job;
  const PpBody *body;

  if (job < scene->n_knots)
    {
      PpPoint at = pp_scene_knot_place (scene, job);

      cairo_arc (cr, at.x, at.y, scene->panel->wire->knot_diameter / 2 + 2 / self->scale, 0,
                 2 * G_PI);
      pp_palette_set (cr, &palette.accent, 1);
      cairo_set_line_width (cr, 3 / self->scale);
      cairo_stroke (cr);
      return;
    }
  body = scene->bodies[job - scene->n_knots];
  if (self->is_bench)
    pp_draw_body (cr, body, gallery != NULL ? pp_gallery_get (gallery, body->piece) : NULL);
  stroke_outline (cr, body, &palette.paper, 6 / self->scale);
  stroke_outline (cr, body, &palette.accent, 3 / self->scale);
}

/* The plan of before, while the next is worked out, may be of a panel with the wire on or off. */
static gboolean
has_jobs_of (const PpPlan  *plan,
             const PpScene *scene)
{
  return plan->check->n == scene->n_bodies && plan->order->n_knots == scene->n_knots;
}

static void
pp_glue_map_snapshot (GtkWidget   *widget,
                      GtkSnapshot *snapshot)
{
  PpGlueMap *self = PP_GLUE_MAP (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  PpScene *scene;
  cairo_t *cr;

  if (self->document == NULL || width <= 0 || height <= 0)
    return;
  scene = pp_document_get_scene (self->document);
  if (self->picture == NULL)
    {
      fit (self, scene);
      draw_picture (self, scene);
    }
  gtk_snapshot_append_node (snapshot, self->picture);
  if (self->plan == NULL || !has_jobs_of (self->plan, scene))
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width,
                                                                 (float) height));
  if (self->step != PP_NO_STEP)
    {
      cairo_save (cr);
      cairo_translate (cr, self->at.x, self->at.y);
      cairo_scale (cr, self->scale, self->scale);
      draw_now (self, cr, scene);
      cairo_restore (cr);
    }
  if (self->is_bench && self->step != PP_NO_STEP)
    pp_glue_map_draw_figures (self, cr, scene);
  else if (!self->is_bench)
    pp_glue_map_draw_numbers (self, cr, scene);
  cairo_destroy (cr);
}

static void
forget_picture (PpGlueMap *self)
{
  g_clear_pointer (&self->picture, gsk_render_node_unref);
  g_clear_pointer (&self->labels, g_free);
}

static void
pp_glue_map_size_allocate (GtkWidget *widget,
                           int        width,
                           int        height,
                           int        baseline)
{
  forget_picture (PP_GLUE_MAP (widget));
}

static void
pp_glue_map_css_changed (GtkWidget         *widget,
                         GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (pp_glue_map_parent_class)->css_changed (widget, change);
  forget_picture (PP_GLUE_MAP (widget));
  gtk_widget_queue_draw (widget);
}

static void
drawn_cb (PpDocument *document,
          PpGlueMap  *self)
{
  forget_picture (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
pressed_cb (GtkGestureClick *gesture,
            int              n_press,
            double           x,
            double           y,
            PpGlueMap       *self)
{
  int step = self->plan != NULL && self->document != NULL
             ? pp_glue_map_find_step (self, (PpPoint) { x, y }) : PP_NO_STEP;

  if (step != PP_NO_STEP)
    g_signal_emit (self, step_signal, 0, (guint) step);
}

static void
set_document (PpGlueMap  *self,
              PpDocument *document)
{
  if (self->document == document)
    return;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document != NULL)
    g_signal_connect (document, "drawn", G_CALLBACK (drawn_cb), self);
}

static void
pp_glue_map_dispose (GObject *object)
{
  PpGlueMap *self = PP_GLUE_MAP (object);

  set_document (self, NULL);
  g_clear_pointer (&self->plan, pp_plan_unref);
  g_clear_pointer (&self->panel, pp_panel_unref);
  forget_picture (self);
  G_OBJECT_CLASS (pp_glue_map_parent_class)->dispose (object);
}

static void
pp_glue_map_class_init (PpGlueMapClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_glue_map_dispose;
  widget_class->snapshot = pp_glue_map_snapshot;
  widget_class->size_allocate = pp_glue_map_size_allocate;
  widget_class->css_changed = pp_glue_map_css_changed;
  gtk_widget_class_set_css_name (widget_class, "pp-glue-map");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  step_signal = g_signal_new ("step", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                              NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
pp_glue_map_init (PpGlueMap *self)
{
  GtkGesture *press = gtk_gesture_click_new ();

  self->step = PP_NO_STEP;
  g_signal_connect (press, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (press));
}

void
pp_glue_map_show (PpGlueMap    *self,
                  PpDocument   *document,
                  const PpPlan *plan,
                  int           step,
                  gboolean      is_bench)
{
  const PpPanel *panel = document != NULL ? pp_document_get_panel (document) : NULL;

  g_return_if_fail (PP_IS_GLUE_MAP (self));

  if (panel != self->panel || plan != self->plan || is_bench != self->is_bench)
    forget_picture (self);
  set_document (self, document);
  if (plan != NULL)
    pp_plan_ref (plan);
  g_clear_pointer (&self->plan, pp_plan_unref);
  self->plan = plan;
  if (panel != NULL)
    pp_panel_ref (panel);
  g_clear_pointer (&self->panel, pp_panel_unref);
  self->panel = panel;
  self->step = plan != NULL ? step : PP_NO_STEP;
  self->is_bench = is_bench;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
