/* change-bar.c: the bar that says that another program changed the file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/change-bar.h"

#include "desk/template.h"

struct _PpChangeBar
{
  GtkWidget    parent_instance;
  GtkRevealer *revealer;
  GtkLabel    *sentence;
};

G_DEFINE_FINAL_TYPE (PpChangeBar, pp_change_bar, GTK_TYPE_WIDGET)

enum
{
  KEEP_MINE,
  SHOW_THEIRS,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
keep_mine_cb (GtkButton   *button,
              PpChangeBar *self)
{
  g_signal_emit (self, signals[KEEP_MINE], 0);
}

static void
show_theirs_cb (GtkButton   *button,
                PpChangeBar *self)
{
  g_signal_emit (self, signals[SHOW_THEIRS], 0);
}

static void
pp_change_bar_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_CHANGE_BAR);
  G_OBJECT_CLASS (pp_change_bar_parent_class)->dispose (object);
}

static void
pp_change_bar_class_init (PpChangeBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_change_bar_dispose;
  signals[KEEP_MINE] = g_signal_new ("keep-mine", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 0);
  signals[SHOW_THEIRS] = g_signal_new ("show-theirs", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                       NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/change-bar.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, PpChangeBar, revealer);
  gtk_widget_class_bind_template_child (widget_class, PpChangeBar, sentence);
  gtk_widget_class_bind_template_callback (widget_class, keep_mine_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_theirs_cb);
}

static void
pp_change_bar_init (PpChangeBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
pp_change_bar_new (void)
{
  return g_object_new (PP_TYPE_CHANGE_BAR, NULL);
}

void
pp_change_bar_show (PpChangeBar *self,
                    const char  *sentence)
{
  g_return_if_fail (PP_IS_CHANGE_BAR (self));

  if (sentence != NULL)
    {
      gtk_label_set_text (self->sentence, sentence);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      sentence, -1);
    }
  gtk_revealer_set_reveal_child (self->revealer, sentence != NULL);
}
