/* choice.c: one of several, to press.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/choice.h"

#include "desk/pointed.h"

struct _PpChoice
{
  GtkCheckButton parent_instance;
  PpSketch      *sketch;
  GtkLabel      *words;
  GtkLabel      *hint;
};

G_DEFINE_FINAL_TYPE (PpChoice, pp_choice, GTK_TYPE_CHECK_BUTTON)

enum
{
  PROP_SKETCH = 1,
  PROP_WORDS,
  PROP_HINT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
set_hint (PpChoice   *self,
          const char *hint)
{
  gboolean is_there = hint != NULL && *hint != '\0';

  gtk_label_set_text (self->hint, is_there ? hint : "");
  gtk_widget_set_visible (GTK_WIDGET (self->hint), is_there);
  if (is_there)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                    hint, -1);
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

static void
pp_choice_set_property (GObject      *object,
                        guint         id,
                        const GValue *value,
                        GParamSpec   *pspec)
{
  PpChoice *self = PP_CHOICE (object);

  switch (id)
    {
    case PROP_SKETCH:
      pp_sketch_set_kind (self->sketch, (PpSketchKind) g_value_get_enum (value));
      break;
    case PROP_WORDS:
      pp_choice_set_words (self, g_value_get_string (value), NULL);
      break;
    case PROP_HINT:
      set_hint (self, g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
pp_choice_class_init (PpChoiceClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->set_property = pp_choice_set_property;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_RADIO);
  props[PROP_SKETCH] = g_param_spec_enum ("sketch", NULL, NULL, PP_TYPE_SKETCH_KIND,
                                          PP_SKETCH_NONE,
                                          G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_WORDS] = g_param_spec_string ("words", NULL, NULL, "",
                                           G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_HINT] = g_param_spec_string ("hint", NULL, NULL, NULL,
                                          G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  pp_pointed_add_signal (object_class);
}

static void
pp_choice_init (PpChoice *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  pp_pointed_watch (GTK_WIDGET (self), GTK_WIDGET (self));
  self->sketch = g_object_new (PP_TYPE_SKETCH, "visible", FALSE, NULL);
  self->words = GTK_LABEL (gtk_label_new (NULL));
  self->hint = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (self->hint, TRUE);
  gtk_label_set_justify (self->hint, GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars (self->hint, 22);
  gtk_widget_set_visible (GTK_WIDGET (self->hint), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->words), "pp-words");
  gtk_widget_add_css_class (GTK_WIDGET (self->hint), "pp-hint");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->sketch));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->words));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->hint));
  gtk_widget_set_hexpand (box, TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), FALSE); /* or it would, as what is in it does */
  /* The mark; the border stands for it. */
  gtk_widget_set_visible (gtk_widget_get_first_child (GTK_WIDGET (self)), FALSE);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (self), box);
  gtk_widget_add_css_class (GTK_WIDGET (self), "pp-choice");
}

void
pp_choice_set_words (PpChoice   *self,
                     const char *words,
                     const char *spoken)
{
  g_return_if_fail (PP_IS_CHOICE (self) && words != NULL);
  gtk_label_set_text (self->words, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken != NULL ? spoken : words, -1);
}

void
pp_choice_set_picture (PpChoice  *self,
                       GtkWidget *picture)
{
  g_return_if_fail (PP_IS_CHOICE (self) && GTK_IS_WIDGET (picture));

  gtk_widget_set_halign (picture, GTK_ALIGN_CENTER);
  gtk_box_prepend (GTK_BOX (gtk_check_button_get_child (GTK_CHECK_BUTTON (self))), picture);
  gtk_widget_set_visible (GTK_WIDGET (self->words), *gtk_label_get_text (self->words) != '\0');
}
