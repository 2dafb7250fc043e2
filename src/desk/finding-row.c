/* finding-row.c: a finding that stands open: its pin, its sentence and what can be done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/finding-row.h"

#include "advise/curable.h"
#include "desk/focus-within.h"
#include "desk/pin.h"
#include "desk/template.h"
#include "panel/i18n.h"

struct _PpFindingRow
{
  GtkWidget  parent_instance;
  GtkWidget *body;
  PpPin     *pin;
  GtkLabel  *sentence;
  GtkWidget *show_me;
  GtkWidget *put_right;
  GtkWidget *i_know;
  GtkWidget *speak;
  char      *name; /* to assistive technology; all that is shown follows from it and the level */
};

G_DEFINE_FINAL_TYPE (PpFindingRow, pp_finding_row, GTK_TYPE_WIDGET)

enum
{
  SHOW_ME,
  LIGHT,
  PUT_RIGHT,
  QUIET,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
enter_cb (GtkEventControllerMotion *motion,
          double                    x,
          double                    y,
          PpFindingRow             *self)
{
  g_signal_emit (self, signals[LIGHT], 0, TRUE);
}

static void
leave_cb (GtkEventControllerMotion *motion,
          PpFindingRow             *self)
{
  g_signal_emit (self, signals[LIGHT], 0, FALSE);
}

static void
show_me_cb (GtkButton    *button,
            PpFindingRow *self)
{
  g_signal_emit (self, signals[SHOW_ME], 0);
}

static void
put_right_cb (GtkButton    *button,
              PpFindingRow *self)
{
  g_signal_emit (self, signals[PUT_RIGHT], 0);
}

static void
i_know_cb (GtkButton    *button,
           PpFindingRow *self)
{
  g_signal_emit (self, signals[QUIET], 0, TRUE);
}

static void
speak_cb (GtkButton    *button,
          PpFindingRow *self)
{
  g_signal_emit (self, signals[QUIET], 0, FALSE);
}

static gboolean
pp_finding_row_grab_focus (GtkWidget *widget)
{
  PpFindingRow *self = PP_FINDING_ROW (widget);

  return gtk_widget_grab_focus (gtk_widget_get_visible (self->show_me) ? self->show_me
                                                                       : self->speak);
}

static void
pp_finding_row_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_FINDING_ROW);
  G_OBJECT_CLASS (pp_finding_row_parent_class)->dispose (object);
}

static void
pp_finding_row_finalize (GObject *object)
{
  g_free (PP_FINDING_ROW (object)->name);
  G_OBJECT_CLASS (pp_finding_row_parent_class)->finalize (object);
}

static void
pp_finding_row_class_init (PpFindingRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  object_class->dispose = pp_finding_row_dispose;
  object_class->finalize = pp_finding_row_finalize;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_finding_row_grab_focus;
  signals[SHOW_ME] = g_signal_new ("show-me", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  signals[LIGHT] = g_signal_new ("light", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  signals[PUT_RIGHT] = g_signal_new ("put-right", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 0);
  signals[QUIET] = g_signal_new ("quiet", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  g_type_ensure (PP_TYPE_PIN);
  gtk_widget_class_set_css_name (widget_class, "pp-finding-row");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/finding-row.ui");
  gtk_widget_class_bind_template_child (widget_class, PpFindingRow, body);
  gtk_widget_class_bind_template_child (widget_class, PpFindingRow, pin);
  gtk_widget_class_bind_template_child (widget_class, PpFindingRow, sentence);
  gtk_widget_class_bind_template_child (widget_class, PpFindingRow, show_me);
  gtk_widget_class_bind_template_child (widget_class, PpFindingRow, put_right);
  gtk_widget_class_bind_template_child (widget_class, PpFindingRow, i_know);
  gtk_widget_class_bind_template_child (widget_class, PpFindingRow, speak);
  gtk_widget_class_bind_template_callback (widget_class, enter_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_me_cb);
  gtk_widget_class_bind_template_callback (widget_class, put_right_cb);
  gtk_widget_class_bind_template_callback (widget_class, i_know_cb);
  gtk_widget_class_bind_template_callback (widget_class, speak_cb);
}

static void
pp_finding_row_init (PpFindingRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
pp_finding_row_new (void)
{
  return g_object_new (PP_TYPE_FINDING_ROW, NULL);
}

/* "Fault 1 of 5: 3/4 in of wire shows". */
static char *
make_name (const PpFinding *finding,
           guint            number,
           guint            n)
{
  g_autofree char *pin = pp_pin_dup_name (finding->level, number);

  if (number == 0)
    /* Translators: the kind of finding ("Caution"), then its sentence. */
    return g_strdup_printf (_("%s, kept quiet: %s"), pin, finding->text);
  /* Translators: a finding ("Caution 2"), of how many, then its sentence. */
  return g_strdup_printf (_("%s of %u: %s"), pin, n, finding->text);
}

static void
name_button (GtkWidget  *button,
             const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static const char *
get_advice (PpLevel level)
{
  switch (level)
    {
    case PP_LEVEL_FAULT:
      return _("A fault: do not glue it like this");
    case PP_LEVEL_CAUTION:
      return _("A caution: look again before you glue");
    case PP_LEVEL_NOTE:
      return _("A note: good to know");
    }
  g_return_val_if_reached (NULL);
}

static void
set_sentence (PpFindingRow *self,
              const char   *text)
{
  g_autofree char *show_me = NULL, *put_right = NULL, *i_know = NULL, *speak = NULL;

  if (g_str_equal (gtk_label_get_text (self->sentence), text))
    return;
  gtk_label_set_text (self->sentence, text);
  /* Translators: what a button does, then the sentence of the finding. */
  show_me = g_strdup_printf (_("Show me where: %s"), text);
  put_right = g_strdup_printf (_("Put this right: %s"), text);
  i_know = g_strdup_printf (_("I know, keep this quiet: %s"), text);
  speak = g_strdup_printf (_("Let it speak again: %s"), text);
  name_button (self->show_me, show_me);
  name_button (self->put_right, put_right);
  name_button (self->i_know, i_know);
  name_button (self->speak, speak);
}

void
pp_finding_row_set (PpFindingRow    *self,
                    const PpFinding *finding,
                    guint            number,
                    guint            n)
{
  g_autofree char *name = NULL;

  g_return_if_fail (PP_IS_FINDING_ROW (self) && finding != NULL);

  name = make_name (finding, number, n);
  if (g_strcmp0 (name, self->name) == 0)
    return;
  g_free (self->name);
  self->name = g_steal_pointer (&name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, self->name,
                                  -1);
  pp_pin_set (self->pin, finding->level, number);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->pin), get_advice (finding->level));
  set_sentence (self, finding->text);
  gtk_widget_set_visible (self->show_me, number > 0);
  gtk_widget_set_visible (self->put_right, number > 0 && pp_advise_can_cure (finding->code));
  gtk_widget_set_visible (self->i_know, number > 0 && finding->level != PP_LEVEL_FAULT);
  gtk_widget_set_visible (self->speak, number == 0);
}
