/* export-dialog.c: asks which sheets are wanted, and how.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/export-dialog.h"

#include "desk/file-words.h"
#include "panel/i18n.h"

struct _PpExportDialog
{
  GtkWindow    parent_instance;
  GtkBox      *kinds;   /* a check button a kind, in order */
  GtkLabel    *format_label;
  GtkDropDown *format;
  GtkLabel    *paper_label;
  GtkDropDown *paper;
  GtkCheckButton *mono;
  GtkButton   *accept;
};

G_DEFINE_FINAL_TYPE (PpExportDialog, pp_export_dialog, GTK_TYPE_WINDOW)

static guint accepted_signal;

/* Ids of what is ticked, ended by NULL. (transfer full) */
static char **
dup_ticked (PpExportDialog *self)
{
  GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (self->kinds));
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();
  guint n;
  const PpSheetKind *kinds = pp_sheet_kinds (&n);

  for (guint i = 0; i < n; i++, button = gtk_widget_get_next_sibling (button))
    if (gtk_check_button_get_active (GTK_CHECK_BUTTON (button)))
      g_strv_builder_add (ids, kinds[i].id);
  return g_strv_builder_end (ids);
}

static void
ticked_cb (PpExportDialog *self)
{
  g_auto (GStrv) ticked = dup_ticked (self);

  gtk_widget_set_sensitive (GTK_WIDGET (self->accept), ticked[0] != NULL);
}

static void
accept_cb (GtkButton      *button,
           PpExportDialog *self)
{
  g_autoptr (PpSheetChoice) choice = g_new0 (PpSheetChoice, 1);
  guint n;

  choice->kinds = dup_ticked (self);
  choice->format = pp_sheet_formats (&n)[gtk_drop_down_get_selected (self->format)].format;
  pp_paper_parse (pp_sheet_papers (&n)[gtk_drop_down_get_selected (self->paper)].id,
                  &choice->paper);
  choice->mono = gtk_check_button_get_active (self->mono);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_emit (self, accepted_signal, 0, choice);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
cancel_cb (GtkButton      *button,
           PpExportDialog *self)
{
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
pp_export_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_EXPORT_DIALOG);
  G_OBJECT_CLASS (pp_export_dialog_parent_class)->dispose (object);
}

static void
pp_export_dialog_class_init (PpExportDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_export_dialog_dispose;
  accepted_signal = g_signal_new ("accepted", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/export-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, PpExportDialog, kinds);
  gtk_widget_class_bind_template_child (widget_class, PpExportDialog, format_label);
  gtk_widget_class_bind_template_child (widget_class, PpExportDialog, format);
  gtk_widget_class_bind_template_child (widget_class, PpExportDialog, paper_label);
  gtk_widget_class_bind_template_child (widget_class, PpExportDialog, paper);
  gtk_widget_class_bind_template_child (widget_class, PpExportDialog, mono);
  gtk_widget_class_bind_template_child (widget_class, PpExportDialog, accept);
  gtk_widget_class_bind_template_callback (widget_class, accept_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
add_kinds (PpExportDialog *self)
{
  guint n;
  const PpSheetKind *kinds = pp_sheet_kinds (&n);

  for (guint i = 0; i < n; i++)
    {
      GtkWidget *button = gtk_check_button_new_with_label (_(kinds[i].title));

      gtk_check_button_set_active (GTK_CHECK_BUTTON (button), TRUE);
      g_signal_connect_swapped (button, "toggled", G_CALLBACK (ticked_cb), self);
      gtk_box_append (self->kinds, button);
    }
}

static void
add_formats (PpExportDialog *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  guint n;
  const PpSheetFormat *formats = pp_sheet_formats (&n);

  for (guint i = 0; i < n; i++)
    gtk_string_list_append (list, _(formats[i].title));
  gtk_drop_down_set_model (self->format, G_LIST_MODEL (list));
}

static void
add_papers (PpExportDialog *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  const char *usual = pp_file_paper_of (gtk_paper_size_get_default ());
  guint n, chosen = 0;
  const PpSheetPaper *papers = pp_sheet_papers (&n);

  for (guint i = 0; i < n; i++)
    {
      gtk_string_list_append (list, _(papers[i].title));
      if (g_str_equal (papers[i].id, usual))
        chosen = i;
    }
  gtk_drop_down_set_model (self->paper, G_LIST_MODEL (list));
  gtk_drop_down_set_selected (self->paper, chosen);
}

static void
pp_export_dialog_init (PpExportDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_kinds (self);
  add_formats (self);
  add_papers (self);
}

static void
show_for_printer (PpExportDialog *self)
{
  gtk_window_set_title (GTK_WINDOW (self), _("Print the sheets"));
  gtk_button_set_label (self->accept, _("_Choose a printer…"));
  gtk_widget_set_visible (GTK_WIDGET (self->format_label), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->format), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->paper_label), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->paper), FALSE);
}

PpExportDialog *
pp_export_dialog_new (GtkWindow *parent,
                      gboolean   is_for_printer)
{
  PpExportDialog *self = g_object_new (PP_TYPE_EXPORT_DIALOG, "transient-for", parent, NULL);

  if (is_for_printer)
    show_for_printer (self);
  return self;
}
