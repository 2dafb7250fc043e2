/* finding-line.c: a folded finding: its pin and its first words; pressed, it opens.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/finding-line.h"

#include "desk/focus-within.h"
#include "desk/pin.h"
#include "desk/template.h"
#include "panel/i18n.h"

struct _PpFindingLine
{
  GtkWidget  parent_instance;
  GtkWidget *press;
  PpPin     *pin;
  GtkLabel  *words;
  char      *name; /* to assistive technology; all that is shown follows from it */
};

G_DEFINE_FINAL_TYPE (PpFindingLine, pp_finding_line, GTK_TYPE_WIDGET)

static guint open_signal;

static void
press_cb (GtkButton     *button,
          PpFindingLine *self)
{
  g_signal_emit (self, open_signal, 0);
}

static gboolean
pp_finding_line_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (PP_FINDING_LINE (widget)->press);
}

static void
pp_finding_line_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_FINDING_LINE);
  G_OBJECT_CLASS (pp_finding_line_parent_class)->dispose (object);
}

static void
pp_finding_line_finalize (GObject *object)
{
  g_free (PP_FINDING_LINE (object)->name);
  G_OBJECT_CLASS (pp_finding_line_parent_class)->finalize (object);
}

static void
pp_finding_line_class_init (PpFindingLineClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = pp_finding_line_dispose;
  object_class->finalize = pp_finding_line_finalize;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_finding_line_grab_focus;
  open_signal = g_signal_new ("open", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                              NULL, G_TYPE_NONE, 0);
  g_type_ensure (PP_TYPE_PIN);
  gtk_widget_class_set_css_name (widget_class, "pp-finding-line");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/finding-line.ui");
  gtk_widget_class_bind_template_child (widget_class, PpFindingLine, press);
  gtk_widget_class_bind_template_child (widget_class, PpFindingLine, pin);
  gtk_widget_class_bind_template_child (widget_class, PpFindingLine, words);
  gtk_widget_class_bind_template_callback (widget_class, press_cb);
}

static void
pp_finding_line_init (PpFindingLine *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
pp_finding_line_new (void)
{
  return g_object_new (PP_TYPE_FINDING_LINE, NULL);
}

void
pp_finding_line_set (PpFindingLine   *self,
                     const PpFinding *finding,
                     guint            number)
{
  g_autofree char *pin = NULL, *name = NULL, *act = NULL;

  g_return_if_fail (PP_IS_FINDING_LINE (self) && finding != NULL);

  pin = pp_pin_dup_name (finding->level, number);
  /* Translators: a finding ("Caution 2"), then its sentence. */
  name = g_strdup_printf (_("%s: %s"), pin, finding->text);
  if (g_strcmp0 (name, self->name) == 0)
    return;
  /* Translators: what a button does: unfold a finding ("Caution 2: ..."). */
  act = g_strdup_printf (_("Read %s"), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->press), GTK_ACCESSIBLE_PROPERTY_LABEL, act,
                                  -1);
  pp_pin_set (self->pin, finding->level, number);
  gtk_label_set_text (self->words, finding->text);
  gtk_widget_set_tooltip_text (self->press, finding->text);
  g_free (self->name);
  self->name = g_steal_pointer (&name);
}
