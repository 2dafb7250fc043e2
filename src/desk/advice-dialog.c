/* advice-dialog.c: what would put the panel right, to look at before it is done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/advice-dialog.h"

#include "desk/em.h"
#include "desk/lines.h"
#include "desk/palette.h"
#include "desk/panel-picture.h"
#include "panel/i18n.h"

#define PICTURE_EM 26 /* side of the picture where there is room; at least half of that */

struct _PpAdviceDialog
{
  GtkWindow   parent_instance;
  GtkLabel   *sum;
  GtkPicture *picture;
  GtkBox     *changes;
  GtkWidget  *cures;
  GtkBox     *cured;
  GtkWidget  *leaves;
  GtkBox     *left;
  PpAdvice   *advice;
};

G_DEFINE_FINAL_TYPE (PpAdviceDialog, pp_advice_dialog, GTK_TYPE_WINDOW)

static guint accepted;

static void
accept_cb (GtkButton      *button,
           PpAdviceDialog *self)
{
  g_signal_emit (self, accepted, 0);
}

static void
leave_cb (GtkButton      *button,
          PpAdviceDialog *self)
{
  gtk_window_close (GTK_WINDOW (self));
}

static void
pp_advice_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_ADVICE_DIALOG);
  G_OBJECT_CLASS (pp_advice_dialog_parent_class)->dispose (object);
}

static void
pp_advice_dialog_finalize (GObject *object)
{
  g_clear_pointer (&PP_ADVICE_DIALOG (object)->advice, pp_advice_free);
  G_OBJECT_CLASS (pp_advice_dialog_parent_class)->finalize (object);
}

static void
pp_advice_dialog_class_init (PpAdviceDialogClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = pp_advice_dialog_dispose;
  object_class->finalize = pp_advice_dialog_finalize;
  accepted = g_signal_new ("accepted", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                           NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/advice-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, PpAdviceDialog, sum);
  gtk_widget_class_bind_template_child (widget_class, PpAdviceDialog, picture);
  gtk_widget_class_bind_template_child (widget_class, PpAdviceDialog, changes);
  gtk_widget_class_bind_template_child (widget_class, PpAdviceDialog, cures);
  gtk_widget_class_bind_template_child (widget_class, PpAdviceDialog, cured);
  gtk_widget_class_bind_template_child (widget_class, PpAdviceDialog, leaves);
  gtk_widget_class_bind_template_child (widget_class, PpAdviceDialog, left);
  gtk_widget_class_bind_template_callback (widget_class, accept_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
pp_advice_dialog_init (PpAdviceDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
add_changes (PpAdviceDialog *self)
{
  for (guint i = 0; i < self->advice->changes->len; i++)
    {
      const PpChange *change = g_ptr_array_index (self->advice->changes, i);
      /* Translators: a change, "the wire 12 mm longer", as a sentence of its own. */
      g_autofree char *sentence = g_strdup_printf (_("%s."), change->text);

      pp_lines_add (self->changes, sentence);
    }
}

static void
add_findings (GtkWidget *heading,
              GtkBox    *box,
              GPtrArray *findings)
{
  for (guint i = 0; i < findings->len; i++)
    pp_lines_add (box, ((const PpFinding *) g_ptr_array_index (findings, i))->text);
  gtk_widget_set_visible (heading, findings->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (box), findings->len > 0);
}

static void
draw (PpAdviceDialog *self,
      PpGallery      *gallery)
{
  PpPalette palette = pp_palette_of (GTK_WIDGET (self));
  int side = (int) (PICTURE_EM * pp_em_of (GTK_WIDGET (self)));
  g_autoptr (PpScene) before = pp_scene_new (self->advice->check_before->panel, NULL);
  g_autoptr (PpScene) after = pp_scene_new (self->advice->panel, NULL);
  g_autoptr (GdkTexture) texture
    = pp_panel_picture_new (after, gallery, side * 2, before, &palette.accent);

  g_autoptr (GdkPaintable) paintable = pp_panel_picture_halve (texture);

  gtk_picture_set_paintable (self->picture, paintable);
  gtk_widget_set_size_request (GTK_WIDGET (self->picture), side / 2, side / 2);
}

PpAdviceDialog *
pp_advice_dialog_new (GtkWindow *parent,
                      PpAdvice  *advice,
                      PpGallery *gallery)
{
  PpAdviceDialog *self;
  g_autofree char *sum = NULL;
  guint n;

  g_return_val_if_fail (advice != NULL, NULL);

  n = advice->cured->len;
  self = g_object_new (PP_TYPE_ADVICE_DIALOG, "transient-for", parent, NULL);
  self->advice = advice;
  sum = g_strdup_printf (ngettext ("These changes put %u thing right.",
                                   "These changes put %u things right.", n), n);
  gtk_label_set_text (self->sum, sum);
  add_changes (self);
  add_findings (self->cures, self->cured, advice->cured);
  add_findings (self->leaves, self->left, advice->left);
  draw (self, gallery);
  return self;
}

void
pp_advice_dialog_set_words (PpAdviceDialog *self,
                            const char     *title,
                            const char     *sum)
{
  g_return_if_fail (PP_IS_ADVICE_DIALOG (self) && title != NULL && sum != NULL);

  gtk_window_set_title (GTK_WINDOW (self), title);
  if (self->advice->cured->len == 0)
    gtk_label_set_text (self->sum, sum);
}

const PpAdvice *
pp_advice_dialog_get_advice (PpAdviceDialog *self)
{
  g_return_val_if_fail (PP_IS_ADVICE_DIALOG (self), NULL);
  return self->advice;
}
