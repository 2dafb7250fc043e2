/* bench-view.c: the bench: one piece at a time, to be read at arm's length.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/bench-view-private.h"

#include "desk/bell.h"
#include "desk/css-class.h"
#include "desk/em.h"
#include "desk/saving.h"
#include "desk/shown-page.h"
#include "desk/side-layout.h"
#include "desk/template.h"
#include "glue/last-act.h"
#include "panel/i18n.h"

#define LOOK_MS 200     /* how often the clock is looked at */
#define TIGHT_WIDTH 75  /* em of the window's text: below it the bench writes smaller */
#define TIGHT_HEIGHT 56
#define SMALL_WIDTH 56   /* and smaller still */

G_DEFINE_FINAL_TYPE (PpBenchView, pp_bench_view, GTK_TYPE_WIDGET)

static guint leave_signal;

static gboolean
look_cb (gpointer data)
{
  pp_bench_view_refresh (data);
  return G_SOURCE_CONTINUE;
}

static void
kept_cb (const char *fault,
         gpointer    data)
{
  PpBenchView *self = data;

  gtk_label_set_text (self->fault, fault != NULL ? fault : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fault), fault != NULL);
  gtk_widget_set_visible (self->save, fault != NULL);
  pp_bench_view_refresh (self);
}

void
pp_bench_view_leave (PpBenchView *self)
{
  g_signal_emit (self, leave_signal, 0);
}

static void
focus_act (PpBenchView *self)
{
  gtk_popover_popdown (self->happenings);
  if (!self->is_choosing)
    gtk_widget_grab_focus (self->act);
}

static void
act_cb (GtkButton   *button,
        PpBenchView *self)
{
  pp_bench_acts_go_on (self);
}

static void
hurry_cb (GtkButton   *button,
          PpBenchView *self)
{
  self->is_hurried = TRUE;
  pp_bench_view_refresh (self);
  focus_act (self);
}

static void
take_back_cb (GtkButton   *button,
              PpBenchView *self)
{
  pp_bench_acts_take_back (self);
  focus_act (self);
}

static void
remixed_cb (GtkButton   *button,
            PpBenchView *self)
{
  pp_bench_acts_remix (self);
  focus_act (self);
}

static void
fell_cb (GtkButton   *button,
         PpBenchView *self)
{
  gtk_popover_popdown (self->happenings);
  pp_bench_choice_ask (self, FALSE);
}

static void
broke_cb (GtkButton   *button,
          PpBenchView *self)
{
  gtk_popover_popdown (self->happenings);
  pp_bench_choice_ask (self, TRUE);
}

static void
elsewhere_cb (GtkButton   *button,
              PpBenchView *self)
{
  gtk_popover_popdown (self->happenings);
  pp_bench_choice_ask_where (self);
}

static void
pause_cb (GtkButton   *button,
          PpBenchView *self)
{
  gtk_popover_popdown (self->happenings);
  pp_bench_acts_pause (self);
  pp_bench_view_leave (self);
}

static void
leave_cb (GtkButton   *button,
          PpBenchView *self)
{
  pp_bench_view_leave (self);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (PpBenchView) self = data;

  if (pp_saving_run_finish (result) && self->document != NULL)
    kept_cb (NULL, self);
}

static void
save_cb (GtkButton   *button,
         PpBenchView *self)
{
  pp_saving_run_async (self->window, TRUE, saved_cb, g_object_ref (self));
}

/* Turned on it is heard at once, so that the maker knows what to listen for. */
static void
bell_cb (GtkButton   *button,
         PpBenchView *self)
{
  pp_bell_set_on (!pp_bell_is_on ());
  pp_bell_ring (GTK_WIDGET (self));
  pp_bench_view_refresh (self);
  focus_act (self);
}

static gboolean
is_space (guint key)
{
  return key == GDK_KEY_space || key == GDK_KEY_KP_Space;
}

/* Space is the big control, once for each press however long it is held; on another button that has
 * the focus it is that button's. */
static gboolean
pressed_cb (GtkEventControllerKey *controller,
            guint                  key,
            guint                  code,
            GdkModifierType        state,
            PpBenchView           *self)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));

  if (key == GDK_KEY_Escape && self->is_choosing)
    {
      pp_bench_choice_end (self);
      return TRUE;
    }
  if (!is_space (key) || self->is_choosing
      || (focus != NULL && focus != self->act && gtk_widget_is_ancestor (focus, GTK_WIDGET (self))))
    return FALSE;
  if (!self->is_held)
    {
      self->is_held = TRUE;
      pp_bench_acts_go_on (self);
    }
  return TRUE;
}

static void
released_cb (GtkEventControllerKey *controller,
             guint                  key,
             guint                  code,
             GdkModifierType        state,
             PpBenchView           *self)
{
  if (is_space (key))
    self->is_held = FALSE;
}

static void
fit_text (PpBenchView *self,
          int          width,
          int          height)
{
  double em = pp_em_of (GTK_WIDGET (self));

  pp_css_class_set (self->body, "pp-tight", width < TIGHT_WIDTH * em || height < TIGHT_HEIGHT * em);
  pp_css_class_set (self->body, "pp-small", width < SMALL_WIDTH * em);
}

static void
sized_cb (GdkSurface  *surface,
          int          width,
          int          height,
          PpBenchView *self)
{
  fit_text (self, width, height);
}

static void
keep_awake (PpBenchView *self)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self->window));

  self->cookie = gtk_application_inhibit (application, GTK_WINDOW (self->window),
                                          GTK_APPLICATION_INHIBIT_IDLE
                                          | GTK_APPLICATION_INHIBIT_SUSPEND,
                                          _("A panel is being glued"));
}

/* Something was done and not taken back, and it was not put off to another day. */
static gboolean
has_begun (const PpPanel *panel)
{
  g_autofree char *last = pp_last_act_find (panel);

  return last != NULL;
}

void
pp_bench_view_begin (PpBenchView  *self,
                     PpWindow     *window,
                     const PpPlan *plan)
{
  GdkSurface *surface;

  g_return_if_fail (PP_IS_BENCH_VIEW (self) && PP_IS_WINDOW (window) && plan != NULL);

  pp_bench_view_end (self);
  self->window = window;
  self->document = g_object_ref (pp_window_get_document (window));
  self->plan = pp_plan_ref (plan);
  self->keep = pp_bench_keep_new (window, kept_cb, self);
  self->is_ready = has_begun (pp_document_get_panel (self->document));
  self->is_hurried = FALSE;
  self->is_choosing = FALSE;
  self->step = NULL;
  self->rung = 0;
  gtk_widget_set_visible (GTK_WIDGET (self->fault), FALSE);
  gtk_widget_set_visible (self->save, FALSE);
  self->timer = g_timeout_add (LOOK_MS, look_cb, self);
  keep_awake (self);
  surface = gtk_native_get_surface (GTK_NATIVE (window));
  fit_text (self, gdk_surface_get_width (surface), gdk_surface_get_height (surface));
  g_signal_connect (surface, "layout", G_CALLBACK (sized_cb), self);
  gtk_window_fullscreen (GTK_WINDOW (window));
  pp_bench_view_refresh (self);
  gtk_widget_grab_focus (self->act);
}

void
pp_bench_view_end (PpBenchView *self)
{
  GdkSurface *surface;

  g_return_if_fail (PP_IS_BENCH_VIEW (self));

  if (self->document == NULL)
    return;
  g_clear_handle_id (&self->timer, g_source_remove);
  surface = gtk_native_get_surface (GTK_NATIVE (self->window));
  if (surface != NULL)
    g_signal_handlers_disconnect_by_data (surface, self);
  if (self->cookie != 0)
    gtk_application_uninhibit (gtk_window_get_application (GTK_WINDOW (self->window)),
                               self->cookie);
  self->cookie = 0;
  gtk_window_unfullscreen (GTK_WINDOW (self->window));
  g_clear_pointer (&self->keep, pp_bench_keep_free);
  pp_glue_map_show (self->map, NULL, NULL, PP_NO_STEP, TRUE);
  pp_back_view_show (self->back, NULL, 0);
  g_clear_pointer (&self->plan, pp_plan_unref);
  g_clear_object (&self->document);
  self->window = NULL;
}

/* Its height is asked without a width: large labels that wrap do not agree with themselves to the
 * last pixel, and the screen is filled in any case. */
static void
pp_bench_view_measure (GtkWidget      *widget,
                       GtkOrientation  orientation,
                       int             for_size,
                       int            *minimum,
                       int            *natural,
                       int            *minimum_baseline,
                       int            *natural_baseline)
{
  gtk_widget_measure (PP_BENCH_VIEW (widget)->body, orientation, -1, minimum, natural, NULL, NULL);
}

static void
pp_bench_view_size_allocate (GtkWidget *widget,
                             int        width,
                             int        height,
                             int        baseline)
{
  gtk_widget_allocate (PP_BENCH_VIEW (widget)->body, width, height, baseline, NULL);
}

static void
pp_bench_view_dispose (GObject *object)
{
  PpBenchView *self = PP_BENCH_VIEW (object);

  if (self->document != NULL)
    pp_bench_view_end (self);
  g_clear_pointer (&self->chosen, g_ptr_array_unref);
  pp_template_dispose (GTK_WIDGET (self), PP_TYPE_BENCH_VIEW);
  G_OBJECT_CLASS (pp_bench_view_parent_class)->dispose (object);
}

static void
bind_screens (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, body);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, count);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, fault);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, save);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, bell);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, leave);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, screen);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, title);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, lines);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, map);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, name);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, where);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, needs);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, back_box);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, back);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, question);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, answers);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, meanwhile);
}

static void
bind_controls (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, bar);
  gtk_widget_class_bind_template_child_full (widget_class, "clock", FALSE,
                                             G_STRUCT_OFFSET (PpBenchView, clock_box));
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, age);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, life);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, life_words);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, act);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, act_words);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, hurry);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, take_back);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, take_back_words);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, happened);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, happenings);
  gtk_widget_class_bind_template_child (widget_class, PpBenchView, remixed);
}

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, act_cb);
  gtk_widget_class_bind_template_callback (widget_class, hurry_cb);
  gtk_widget_class_bind_template_callback (widget_class, take_back_cb);
  gtk_widget_class_bind_template_callback (widget_class, remixed_cb);
  gtk_widget_class_bind_template_callback (widget_class, fell_cb);
  gtk_widget_class_bind_template_callback (widget_class, broke_cb);
  gtk_widget_class_bind_template_callback (widget_class, elsewhere_cb);
  gtk_widget_class_bind_template_callback (widget_class, pause_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_bind_template_callback (widget_class, bell_cb);
  gtk_widget_class_bind_template_callback (widget_class, save_cb);
}

static void
pp_bench_view_class_init (PpBenchViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_bench_view_dispose;
  widget_class->measure = pp_bench_view_measure;
  widget_class->size_allocate = pp_bench_view_size_allocate;
  g_type_ensure (PP_TYPE_BACK_VIEW);
  g_type_ensure (PP_TYPE_GLUE_MAP);
  g_type_ensure (PP_TYPE_SIDE_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/bench-view.ui");
  bind_screens (widget_class);
  bind_controls (widget_class);
  bind_callbacks (widget_class);
  leave_signal = g_signal_new ("leave", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 0);
}

static void
pp_bench_view_init (PpBenchView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  pp_shown_page_tell (self->screen);
  self->chosen = g_ptr_array_new_with_free_func (g_free);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (pressed_cb), self);
  g_signal_connect (keys, "key-released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

void
pp_bench_view_set_clock (PpBenchView *self,
                         PpClock      clock)
{
  g_return_if_fail (PP_IS_BENCH_VIEW (self));
  self->clock = clock;
}
