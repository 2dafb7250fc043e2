/* figure-entry.c: a field for one figure.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * `shown` is the text the field itself wrote last: whatever differs from it was typed, and nothing
 * else is ever committed. So neither an undo nor a refresh can make an edit, and a value that
 * shows rounded is not rounded by walking through the field.
 */
#include "config.h"

#include "desk/figure-entry.h"

#include "desk/focus-within.h"
#include "desk/template.h"
#include "desk/typing.h"
#include "panel/i18n.h"
#include "panel/measure.h"

#include <math.h>

typedef struct
{
  GtkEntry *entry;
  GtkLabel *unit;
  GtkLabel *fault;
  GtkLabel *titled_by; /* borrowed, stands in the same template */
  char     *shown;
  char     *spoken; /* the unit, to assistive technology; or NULL */
  double    value;
  double    least;
  double    most;
  gboolean  may_be_empty;
} PpFigureEntryPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (PpFigureEntry, pp_figure_entry, GTK_TYPE_WIDGET)

#define PRIVATE(self) \
  ((PpFigureEntryPrivate *) pp_figure_entry_get_instance_private (self))

enum
{
  PROP_TITLED_BY = 1,
  PROP_MAY_BE_EMPTY,
  PROP_PLACEHOLDER,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  COMMITTED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gboolean
is_same (double a,
         double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static const char *
get_text (PpFigureEntry *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (PRIVATE (self)->entry));
}

static gboolean
is_typed (PpFigureEntry *self)
{
  return g_strcmp0 (get_text (self), PRIVATE (self)->shown) != 0;
}

/* By its unit, or by what is wrong (nullable). */
static void
describe (PpFigureEntry *self,
          const char    *fault)
{
  PpFigureEntryPrivate *priv = PRIVATE (self);
  const char *words = fault != NULL ? fault : priv->spoken;

  if (words != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (priv->entry),
                                    GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (priv->entry),
                                   GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

/* `sentence` NULL: nothing is wrong. */
static void
tell_fault (PpFigureEntry *self,
            const char    *sentence)
{
  PpFigureEntryPrivate *priv = PRIVATE (self);
  gboolean is_wrong = sentence != NULL;

  if (is_wrong)
    {
      gtk_label_set_text (priv->fault, sentence);
      describe (self, sentence);
    }
  if (is_wrong == gtk_widget_get_visible (GTK_WIDGET (priv->fault)))
    return;
  gtk_widget_set_visible (GTK_WIDGET (priv->fault), is_wrong);
  if (is_wrong)
    gtk_widget_add_css_class (GTK_WIDGET (priv->entry), "error");
  else
    {
      gtk_widget_remove_css_class (GTK_WIDGET (priv->entry), "error");
      describe (self, NULL);
    }
  gtk_accessible_update_state (GTK_ACCESSIBLE (priv->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE
                                        : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

/* Writes the value into the field, over whatever stands there. */
static void
show_value (PpFigureEntry *self)
{
  PpFigureEntryPrivate *priv = PRIVATE (self);
  char *text = isnan (priv->value)
                 ? g_strdup ("")
                 : PP_FIGURE_ENTRY_GET_CLASS (self)->format (self, priv->value);

  g_free (priv->shown);
  priv->shown = text;
  if (is_typed (self))
    gtk_editable_set_text (GTK_EDITABLE (priv->entry), text);
  tell_fault (self, NULL);
}

static char *
describe_range (PpFigureEntry *self)
{
  PpFigureEntryPrivate *priv = PRIVATE (self);
  PpFigureEntryClass *klass = PP_FIGURE_ENTRY_GET_CLASS (self);
  g_autofree char *least = isfinite (priv->least) ? klass->spell (self, priv->least) : NULL;
  g_autofree char *most = isfinite (priv->most) ? klass->spell (self, priv->most) : NULL;

  if (least != NULL && most != NULL)
    /* Translators: the least and the greatest length, with their unit. */
    return g_strdup_printf (_("It can be from %s to %s."), least, most);
  if (least != NULL)
    return g_strdup_printf (_("It can be %s at least."), least);
  return g_strdup_printf (_("It can be %s at most."), most);
}

static gboolean
is_in_range (PpFigureEntry *self,
             double         value)
{
  PpFigureEntryPrivate *priv = PRIVATE (self);

  return isnan (value) || (value >= priv->least && value <= priv->most);
}

static gboolean
is_blank (const char *text)
{
  while (g_ascii_isspace (*text))
    text++;
  return *text == '\0';
}

/* Reads what stands in the field; where it cannot be taken, `why` (transfer full) says so. */
static gboolean
read_text (PpFigureEntry *self,
           double        *value,
           char         **why)
{
  PpFigureEntryClass *klass = PP_FIGURE_ENTRY_GET_CLASS (self);

  *value = NAN;
  if (PRIVATE (self)->may_be_empty && is_blank (get_text (self)))
    return TRUE;
  if (!klass->parse (self, get_text (self), value))
    *why = g_strdup (klass->get_hint (self));
  else if (!is_in_range (self, *value))
    *why = describe_range (self);
  return *why == NULL;
}

static void
take (PpFigureEntry *self,
      double         value,
      gboolean       stepped)
{
  gboolean is_new = !is_same (value, PRIVATE (self)->value);

  PRIVATE (self)->value = value;
  show_value (self);
  if (is_new)
    g_signal_emit (self, signals[COMMITTED], 0, value, stepped);
}

static void
step_by (PpFigureEntry *self,
         double         by)
{
  g_autofree char *why = NULL;
  double value = PRIVATE (self)->value;

  if (is_typed (self) && !read_text (self, &value, &why))
    tell_fault (self, why);
  else if (!isnan (value) && is_in_range (self, value + by))
    take (self, value + by, TRUE);
}

static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state,
        PpFigureEntry      *self)
{
  gboolean large = (state & GDK_SHIFT_MASK) != 0;
  double step = PP_FIGURE_ENTRY_GET_CLASS (self)->get_step (self, large);
  const char *action = pp_typing_get_step (key, state);

  if (action != NULL)
    {
      if (!pp_figure_entry_put_back (self))
        gtk_widget_activate_action (GTK_WIDGET (self), action, NULL);
      return GDK_EVENT_STOP;
    }
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  switch (key)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      step_by (self, step);
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      step_by (self, -step);
      return GDK_EVENT_STOP;
    case GDK_KEY_Escape:
      return pp_figure_entry_put_back (self);
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
activate_cb (GtkEntry      *entry,
             PpFigureEntry *self)
{
  pp_figure_entry_commit (self);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
}

/* A fault goes as soon as it is mended; a new one is told only when the maker is done. */
static void
changed_cb (GtkEntry      *entry,
            PpFigureEntry *self)
{
  g_autofree char *why = NULL;
  double value;

  if (!gtk_widget_get_visible (GTK_WIDGET (PRIVATE (self)->fault)))
    return;
  if (read_text (self, &value, &why))
    tell_fault (self, NULL);
}

static gboolean
choose_all_cb (gpointer data)
{
  PpFigureEntry *self = data;
  GtkEntry *entry = PRIVATE (self)->entry;

  if (entry != NULL && !is_typed (self)
      && (gtk_widget_get_state_flags (GTK_WIDGET (entry)) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0)
    gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  return G_SOURCE_REMOVE;
}

/* What is typed takes the place of what stands there, after a press as after Tab. Later, as the
 * press has yet to put the cursor where it was. */
static void
enter_cb (GtkEventController *controller,
          PpFigureEntry      *self)
{
  g_idle_add_full (G_PRIORITY_HIGH_IDLE, choose_all_cb, g_object_ref (self), g_object_unref);
}

static void
leave_cb (GtkEventController *controller,
          PpFigureEntry      *self)
{
  pp_figure_entry_commit (self);
}

static void
set_titled_by (PpFigureEntry *self,
               GtkLabel      *label)
{
  PpFigureEntryPrivate *priv = PRIVATE (self);

  priv->titled_by = label;
  if (label == NULL)
    return;
  gtk_label_set_mnemonic_widget (label, GTK_WIDGET (priv->entry));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (priv->entry),
                                  GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
}

static void
pp_figure_entry_get_property (GObject    *object,
                              guint       prop_id,
                              GValue     *value,
                              GParamSpec *pspec)
{
  PpFigureEntryPrivate *priv = PRIVATE (PP_FIGURE_ENTRY (object));

  switch (prop_id)
    {
    case PROP_TITLED_BY:
      g_value_set_object (value, priv->titled_by);
      break;
    case PROP_MAY_BE_EMPTY:
      g_value_set_boolean (value, priv->may_be_empty);
      break;
    case PROP_PLACEHOLDER:
      g_value_set_string (value, gtk_entry_get_placeholder_text (priv->entry));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
pp_figure_entry_set_property (GObject      *object,
                              guint         prop_id,
                              const GValue *value,
                              GParamSpec   *pspec)
{
  PpFigureEntry *self = PP_FIGURE_ENTRY (object);

  switch (prop_id)
    {
    case PROP_TITLED_BY:
      set_titled_by (self, g_value_get_object (value));
      break;
    case PROP_MAY_BE_EMPTY:
      PRIVATE (self)->may_be_empty = g_value_get_boolean (value);
      break;
    case PROP_PLACEHOLDER:
      gtk_entry_set_placeholder_text (PRIVATE (self)->entry, g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static gboolean
pp_figure_entry_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (PRIVATE (PP_FIGURE_ENTRY (widget))->entry));
}

static void
pp_figure_entry_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_FIGURE_ENTRY);
  G_OBJECT_CLASS (pp_figure_entry_parent_class)->dispose (object);
}

static void
pp_figure_entry_finalize (GObject *object)
{
  PpFigureEntryPrivate *priv = PRIVATE (PP_FIGURE_ENTRY (object));

  g_free (priv->shown);
  g_free (priv->spoken);
  G_OBJECT_CLASS (pp_figure_entry_parent_class)->finalize (object);
}

static void
install_properties (GObjectClass *object_class)
{
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  props[PROP_TITLED_BY] = g_param_spec_object ("titled-by", NULL, NULL, GTK_TYPE_LABEL, flags);
  props[PROP_MAY_BE_EMPTY] = g_param_spec_boolean ("may-be-empty", NULL, NULL, FALSE, flags);
  props[PROP_PLACEHOLDER] = g_param_spec_string ("placeholder", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
pp_figure_entry_class_init (PpFigureEntryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = pp_figure_entry_get_property;
  object_class->set_property = pp_figure_entry_set_property;
  object_class->dispose = pp_figure_entry_dispose;
  object_class->finalize = pp_figure_entry_finalize;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_figure_entry_grab_focus;
  install_properties (object_class);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[COMMITTED] = g_signal_new ("committed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                     NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE,
                                     G_TYPE_BOOLEAN);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/figure-entry.ui");
  gtk_widget_class_bind_template_child_private (widget_class, PpFigureEntry, entry);
  gtk_widget_class_bind_template_child_private (widget_class, PpFigureEntry, unit);
  gtk_widget_class_bind_template_child_private (widget_class, PpFigureEntry, fault);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, enter_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
}

static void
pp_figure_entry_init (PpFigureEntry *self)
{
  PpFigureEntryPrivate *priv = PRIVATE (self);

  priv->value = NAN;
  priv->least = -INFINITY;
  priv->most = INFINITY;
  priv->shown = g_strdup ("");
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_typing_ask_first (GTK_EDITABLE (priv->entry), G_CALLBACK (key_cb), self);
}

double
pp_figure_entry_get_value (PpFigureEntry *self)
{
  g_return_val_if_fail (PP_IS_FIGURE_ENTRY (self), NAN);
  return PRIVATE (self)->value;
}

void
pp_figure_entry_set_value (PpFigureEntry *self,
                           double         value)
{
  g_return_if_fail (PP_IS_FIGURE_ENTRY (self));

  if (is_same (value, PRIVATE (self)->value))
    return;
  PRIVATE (self)->value = value;
  show_value (self);
}

void
pp_figure_entry_set_range (PpFigureEntry *self,
                           double         least,
                           double         most)
{
  g_return_if_fail (PP_IS_FIGURE_ENTRY (self));
  g_return_if_fail (least <= most);

  PRIVATE (self)->least = least;
  PRIVATE (self)->most = most;
}

void
pp_figure_entry_set_estimate (PpFigureEntry *self,
                              const char    *figure)
{
  g_autofree char *words = NULL;

  g_return_if_fail (PP_IS_FIGURE_ENTRY (self));

  words = g_strdup_printf (_("about %s"), figure);
  gtk_entry_set_placeholder_text (PRIVATE (self)->entry, words);
}

void
pp_figure_entry_commit (PpFigureEntry *self)
{
  g_autofree char *why = NULL;
  double value;

  g_return_if_fail (PP_IS_FIGURE_ENTRY (self));

  if (!is_typed (self))
    return;
  if (read_text (self, &value, &why))
    take (self, value, FALSE);
  else
    tell_fault (self, why);
}

gboolean
pp_figure_entry_put_back (PpFigureEntry *self)
{
  gboolean was_typed;

  g_return_val_if_fail (PP_IS_FIGURE_ENTRY (self), FALSE);

  was_typed = is_typed (self);
  if (was_typed)
    show_value (self);
  return was_typed;
}

gboolean
pp_figure_entry_has_fault (PpFigureEntry *self)
{
  g_return_val_if_fail (PP_IS_FIGURE_ENTRY (self), FALSE);
  return gtk_widget_get_visible (GTK_WIDGET (PRIVATE (self)->fault));
}

void
pp_figure_entry_set_unit (PpFigureEntry *self,
                          const char    *unit,
                          const char    *spoken)
{
  PpFigureEntryPrivate *priv;

  g_return_if_fail (PP_IS_FIGURE_ENTRY (self));

  priv = PRIVATE (self);
  if (g_str_equal (unit, gtk_label_get_text (priv->unit)))
    return;
  gtk_label_set_text (priv->unit, unit);
  gtk_widget_set_visible (GTK_WIDGET (priv->unit), *unit != '\0');
  g_free (priv->spoken);
  priv->spoken = g_strdup (spoken);
  if (!gtk_widget_get_visible (GTK_WIDGET (priv->fault)))
    describe (self, NULL);
  if (!is_typed (self))
    show_value (self);
}

gboolean
pp_figure_parse (const char *text,
                 double     *value)
{
  for (const char *at = text; *at != '\0'; at++)
    if (g_ascii_isalpha (*at) || *at == '"' || *at == '\'')
      return FALSE;
  return pp_length_parse (text, PP_UNITS_MM, value);
}

char *
pp_figure_format (double value)
{
  double tenths = round (value * 10);

  /* Adding nothing makes -0 plain 0. */
  return g_strdup_printf (fmod (tenths, 10) == 0 ? "%.0f" : "%.1f", tenths / 10 + 0.0);
}
