/* work-dialog.c: shows how far a work is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/work-dialog.h"

#define LOOK_MSEC 100
#define SHOW_AFTER 4  /* looks */
#define STILL_AFTER 5 /* looks without a step forward; the bar then only says that it goes on */

struct _PpWorkDialog
{
  GtkWindow       parent_instance;
  GtkLabel       *sentence;
  GtkProgressBar *bar;
  PpWork         *work;
  guint           timer;
  guint           n_looks;
  guint           n_still;
};

G_DEFINE_FINAL_TYPE (PpWorkDialog, pp_work_dialog, GTK_TYPE_WINDOW)

/* The dialog stays until the work has noticed. */
static void
stop (PpWorkDialog *self)
{
  g_cancellable_cancel (pp_work_get_cancellable (self->work));
}

static void
stop_cb (GtkButton    *button,
         PpWorkDialog *self)
{
  stop (self);
}

static gboolean
pp_work_dialog_close_request (GtkWindow *window)
{
  stop (PP_WORK_DIALOG (window));
  return TRUE;
}

static void
show_done (PpWorkDialog *self)
{
  double done = pp_work_get_done (self->work);

  if (done > gtk_progress_bar_get_fraction (self->bar))
    self->n_still = 0;
  else
    self->n_still++;
  if (self->n_still > STILL_AFTER)
    gtk_progress_bar_pulse (self->bar);
  else
    gtk_progress_bar_set_fraction (self->bar, done);
}

static gboolean
look_cb (gpointer data)
{
  PpWorkDialog *self = data;

  show_done (self);
  if (++self->n_looks == SHOW_AFTER)
    gtk_window_present (GTK_WINDOW (self));
  return G_SOURCE_CONTINUE;
}

static void
pp_work_dialog_dispose (GObject *object)
{
  PpWorkDialog *self = PP_WORK_DIALOG (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_pointer (&self->work, pp_work_unref);
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_WORK_DIALOG);
  G_OBJECT_CLASS (pp_work_dialog_parent_class)->dispose (object);
}

static void
pp_work_dialog_class_init (PpWorkDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_work_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = pp_work_dialog_close_request;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/work-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, PpWorkDialog, sentence);
  gtk_widget_class_bind_template_child (widget_class, PpWorkDialog, bar);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
}

static void
pp_work_dialog_init (PpWorkDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

PpWorkDialog *
pp_work_dialog_new (GtkWindow  *parent,
                    const char *sentence,
                    PpWork     *work)
{
  PpWorkDialog *self;

  g_return_val_if_fail (sentence != NULL && work != NULL, NULL);

  self = g_object_new (PP_TYPE_WORK_DIALOG, "transient-for", parent, NULL);
  self->work = pp_work_ref (work);
  gtk_label_set_text (self->sentence, sentence);
  self->timer = g_timeout_add (LOOK_MSEC, look_cb, self);
  return self;
}
