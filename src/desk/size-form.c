/* size-form.c: the size of a piece of glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/size-form.h"

#include "desk/choice.h"
#include "desk/common-glass.h"
#include "desk/focus-within.h"
#include "desk/length-entry.h"
#include "desk/template.h"
#include "desk/wrap-layout.h"
#include "panel/i18n.h"

struct _PpSizeForm
{
  GtkWidget      parent_instance;
  PpNewPanel     wish; /* units and sides of it */
  gboolean       is_showing;
  PpChoice      *choices[PP_COMMON_SIZES];

  GtkWidget     *size_box;
  PpLengthEntry *width;
  PpLengthEntry *height;
  GtkButton     *turn;
};

G_DEFINE_FINAL_TYPE (PpSizeForm, pp_size_form, GTK_TYPE_WIDGET)

static guint changed_signal;

static void
show (PpSizeForm *self)
{
  const PpNewPanel *wish = &self->wish;

  self->is_showing = TRUE;
  for (guint i = 0; i < PP_COMMON_SIZES; i++)
    {
      g_autofree char *spoken = pp_common_size_speak (wish->units, i);
      g_autofree char *words = pp_common_size_write (wish->units, i);

      pp_choice_set_words (self->choices[i], words, spoken);
      gtk_check_button_set_active (GTK_CHECK_BUTTON (self->choices[i]),
                                   pp_common_size_is (wish, i));
    }
  pp_length_entry_set_units (self->width, wish->units);
  pp_length_entry_set_units (self->height, wish->units);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->width), wish->width);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->height), wish->height);
  gtk_button_set_label (self->turn, wish->width > wish->height ? _("Stand it upright")
                                                               : _("Lay it sideways"));
  gtk_widget_set_sensitive (GTK_WIDGET (self->turn),
                            !pp_common_is_close (wish->width, wish->height));
  self->is_showing = FALSE;
}

static void
change (PpSizeForm *self)
{
  show (self);
  g_signal_emit (self, changed_signal, 0);
}

static void
size_cb (PpChoice   *choice,
         PpSizeForm *self)
{
  if (self->is_showing || !gtk_check_button_get_active (GTK_CHECK_BUTTON (choice)))
    return;
  for (guint i = 0; i < PP_COMMON_SIZES; i++)
    if (choice == self->choices[i])
      pp_common_size_take (&self->wish, i);
  change (self);
}

static void
sized_cb (PpFigureEntry *entry,
          double         value,
          gboolean       stepped,
          PpSizeForm    *self)
{
  if (entry == PP_FIGURE_ENTRY (self->width))
    self->wish.width = value;
  else
    self->wish.height = value;
  change (self);
}

static void
turn_cb (GtkButton  *button,
         PpSizeForm *self)
{
  double width = self->wish.width;

  self->wish.width = self->wish.height;
  self->wish.height = width;
  change (self);
}

static gboolean
pp_size_form_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (PP_SIZE_FORM (widget)->choices[0]));
}

static void
pp_size_form_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_SIZE_FORM);
  G_OBJECT_CLASS (pp_size_form_parent_class)->dispose (object);
}

static void
pp_size_form_class_init (PpSizeFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_size_form_dispose;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_size_form_grab_focus;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  g_type_ensure (PP_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/size-form.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, PpSizeForm, size_box);
  gtk_widget_class_bind_template_child (widget_class, PpSizeForm, width);
  gtk_widget_class_bind_template_child (widget_class, PpSizeForm, height);
  gtk_widget_class_bind_template_child (widget_class, PpSizeForm, turn);
  gtk_widget_class_bind_template_callback (widget_class, sized_cb);
  gtk_widget_class_bind_template_callback (widget_class, turn_cb);
}

static void
pp_size_form_init (PpSizeForm *self)
{
  self->wish = pp_new_panel_wish (PP_UNITS_MM);
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < PP_COMMON_SIZES; i++)
    {
      self->choices[i] = g_object_new (PP_TYPE_CHOICE, NULL);
      gtk_check_button_set_group (GTK_CHECK_BUTTON (self->choices[i]),
                                  i > 0 ? GTK_CHECK_BUTTON (self->choices[0]) : NULL);
      gtk_box_append (GTK_BOX (self->size_box), GTK_WIDGET (self->choices[i]));
      g_signal_connect (self->choices[i], "toggled", G_CALLBACK (size_cb), self);
    }
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->width), PP_LEAST_GLASS, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->height), PP_LEAST_GLASS,
                             PP_BACKGROUND_MAX_SIDE);
}

void
pp_size_form_set (PpSizeForm *self,
                  PpUnits     units,
                  double      width,
                  double      height)
{
  g_return_if_fail (PP_IS_SIZE_FORM (self));

  self->wish.units = units;
  self->wish.width = width;
  self->wish.height = height;
  show (self);
}

double
pp_size_form_get_width (PpSizeForm *self)
{
  g_return_val_if_fail (PP_IS_SIZE_FORM (self), 0);
  return self->wish.width;
}

double
pp_size_form_get_height (PpSizeForm *self)
{
  g_return_val_if_fail (PP_IS_SIZE_FORM (self), 0);
  return self->wish.height;
}

static gboolean
is_wrong (PpLengthEntry *entry)
{
  pp_figure_entry_commit (PP_FIGURE_ENTRY (entry));
  return pp_figure_entry_has_fault (PP_FIGURE_ENTRY (entry))
         && gtk_widget_grab_focus (GTK_WIDGET (entry));
}

gboolean
pp_size_form_is_wrong (PpSizeForm *self)
{
  g_return_val_if_fail (PP_IS_SIZE_FORM (self), FALSE);
  return is_wrong (self->width) || is_wrong (self->height);
}
