/* name-dialog.c: asks for a name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/name-dialog.h"

#define MOST_LETTERS 80

struct _PpNameDialog
{
  GtkWindow  parent_instance;
  GtkLabel  *sentence;
  GtkEntry  *entry;
  GtkLabel  *fault;
  GtkButton *accept;
};

G_DEFINE_FINAL_TYPE (PpNameDialog, pp_name_dialog, GTK_TYPE_WINDOW)

static guint named;

/* (transfer full) */
static char *
dup_name (PpNameDialog *self)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
}

static void
changed_cb (GtkEditable  *editable,
            PpNameDialog *self)
{
  g_autofree char *name = dup_name (self);

  gtk_widget_set_sensitive (GTK_WIDGET (self->accept), *name != '\0');
  gtk_widget_set_visible (GTK_WIDGET (self->fault), FALSE);
  gtk_accessible_reset_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID);
}

static void
accept_cb (GtkButton    *button,
           PpNameDialog *self)
{
  g_autofree char *name = dup_name (self);
  gboolean is_taken = FALSE;

  g_signal_emit (self, named, 0, name, &is_taken);
  if (is_taken)
    gtk_window_destroy (GTK_WINDOW (self));
}

static void
leave_cb (GtkButton    *button,
          PpNameDialog *self)
{
  gtk_window_close (GTK_WINDOW (self));
}

static void
pp_name_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_NAME_DIALOG);
  G_OBJECT_CLASS (pp_name_dialog_parent_class)->dispose (object);
}

static void
pp_name_dialog_class_init (PpNameDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_name_dialog_dispose;
  named = g_signal_new ("named", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                        G_TYPE_BOOLEAN, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/name-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, PpNameDialog, sentence);
  gtk_widget_class_bind_template_child (widget_class, PpNameDialog, entry);
  gtk_widget_class_bind_template_child (widget_class, PpNameDialog, fault);
  gtk_widget_class_bind_template_child (widget_class, PpNameDialog, accept);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, accept_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
pp_name_dialog_init (PpNameDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_entry_set_max_length (self->entry, MOST_LETTERS);
}

PpNameDialog *
pp_name_dialog_new (GtkWindow  *parent,
                    const char *title,
                    const char *sentence,
                    const char *name,
                    const char *act)
{
  PpNameDialog *self = g_object_new (PP_TYPE_NAME_DIALOG, "transient-for", parent, "title", title,
                                     NULL);

  gtk_label_set_text (self->sentence, sentence);
  gtk_button_set_label (self->accept, act);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), name);
  changed_cb (GTK_EDITABLE (self->entry), self);
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  return self;
}

void
pp_name_dialog_refuse (PpNameDialog *self,
                       const char   *sentence)
{
  g_return_if_fail (PP_IS_NAME_DIALOG (self) && sentence != NULL);

  gtk_label_set_text (self->fault, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->fault), TRUE);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               GTK_ACCESSIBLE_INVALID_TRUE, -1);
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
}
