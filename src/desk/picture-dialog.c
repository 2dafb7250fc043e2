/* picture-dialog.c: asks how large a picture is wanted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/picture-dialog.h"

struct _PpPictureDialog
{
  GtkWindow       parent_instance;
  GtkSpinButton  *width;
  GtkCheckButton *behind;
};

G_DEFINE_FINAL_TYPE (PpPictureDialog, pp_picture_dialog, GTK_TYPE_WINDOW)

static guint accepted_signal;

static void
accept_cb (GtkButton       *button,
           PpPictureDialog *self)
{
  gtk_spin_button_update (self->width);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_emit (self, accepted_signal, 0, gtk_spin_button_get_value_as_int (self->width),
                 gtk_check_button_get_active (self->behind));
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
cancel_cb (GtkButton       *button,
           PpPictureDialog *self)
{
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
pp_picture_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_PICTURE_DIALOG);
  G_OBJECT_CLASS (pp_picture_dialog_parent_class)->dispose (object);
}

static void
pp_picture_dialog_class_init (PpPictureDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_picture_dialog_dispose;
  accepted_signal = g_signal_new ("accepted", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_INT, G_TYPE_BOOLEAN);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/picture-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, PpPictureDialog, width);
  gtk_widget_class_bind_template_child (widget_class, PpPictureDialog, behind);
  gtk_widget_class_bind_template_callback (widget_class, accept_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
pp_picture_dialog_init (PpPictureDialog *self)
{
  GtkEditable *text;

  gtk_widget_init_template (GTK_WIDGET (self));
  text = gtk_editable_get_delegate (GTK_EDITABLE (self->width));
  gtk_text_set_activates_default (GTK_TEXT (text), TRUE);
}

PpPictureDialog *
pp_picture_dialog_new (GtkWindow *parent,
                       gboolean   from_behind)
{
  PpPictureDialog *self = g_object_new (PP_TYPE_PICTURE_DIALOG, "transient-for", parent, NULL);

  gtk_check_button_set_active (self->behind, from_behind);
  return self;
}
