/* new-panel-form.c: the sheet on which a new panel is chosen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One wish holds all that is chosen; every act changes it and then shows it whole. While it is
 * shown, what the choices tell is not taken for an act.
 */
#include "config.h"

#include "desk/new-panel-form.h"

#include "desk/choice.h"
#include "desk/common-glass.h"
#include "desk/focus-within.h"
#include "desk/glass-preview.h"
#include "desk/settings.h"
#include "desk/size-form.h"
#include "desk/template.h"
#include "desk/wrap-layout.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/background.h"

#include <langinfo.h>

struct _PpNewPanelForm
{
  GtkWidget       parent_instance;
  PpNewPanel      wish;
  gboolean        is_showing;
  PpChoice       *thickness_choices[PP_COMMON_THICKNESSES];

  PpChoice       *wall;
  PpChoice       *window;
  PpChoice       *rectangle;
  PpChoice       *oval;
  PpChoice       *arch;
  PpChoice       *mm;
  PpChoice       *inches;
  PpSizeForm     *size;
  GtkWidget      *thickness_box;
  PpGlassPreview *preview;
  GtkLabel       *summary;
  GtkWidget      *begin;
};

G_DEFINE_FINAL_TYPE (PpNewPanelForm, pp_new_panel_form, GTK_TYPE_WIDGET)

enum
{
  BEGIN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* The one chosen last, or that of the maker's country. */
static PpUnits
find_units (void)
{
  g_autofree char *kept = pp_settings_dup_text (PP_SETTINGS_UNITS);

  if (*kept != '\0')
    return g_str_equal (kept, "inch") ? PP_UNITS_INCH : PP_UNITS_MM;
#ifdef __GLIBC__
  /* One byte: 1 metric, 2 as in the United States. */
  return *nl_langinfo (_NL_MEASUREMENT_MEASUREMENT) == 2 ? PP_UNITS_INCH : PP_UNITS_MM;
#else
  return PP_UNITS_MM;
#endif
}

static void
activate (PpChoice *choice,
          gboolean  active)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (choice), active);
}

static void
show_choices (PpNewPanelForm *self)
{
  const PpNewPanel *wish = &self->wish;

  activate (wish->place == PP_PLACE_WALL ? self->wall : self->window, TRUE);
  activate (wish->units == PP_UNITS_MM ? self->mm : self->inches, TRUE);
  activate (wish->shape == PP_SHAPE_ELLIPSE ? self->oval
            : wish->shape == PP_SHAPE_ARCH  ? self->arch
                                            : self->rectangle, TRUE);
  pp_size_form_set (self->size, wish->units, wish->width, wish->height);
  for (guint i = 0; i < PP_COMMON_THICKNESSES; i++)
    {
      pp_choice_set_words (self->thickness_choices[i],
                           pp_common_thickness_get_words (wish->units, i), NULL);
      activate (self->thickness_choices[i],
                pp_common_is_close (wish->thickness, pp_common_thickness_get (wish->units, i)));
    }
}

/* Of a panel that is empty but for glass and holes. (transfer full) */
static char *
describe (const PpPanel *panel)
{
  const PpBackground *glass = panel->background;
  double grams = pp_background_get_area (glass) * glass->thickness * glass->glass.density / 1e6;
  g_autofree char *mass = pp_mass_format (grams, panel->units);
  g_autofree char *wide = NULL, *side = NULL, *top = NULL, *wire = NULL;
  const PpHole *hole;

  if (panel->wire == NULL)
    /* Translators: a weight. */
    return g_strdup_printf (_("The bare glass weighs %s. It is too small for two holes, so it "
                              "begins without them."), mass);
  hole = pp_panel_hole (panel, 0);
  wide = pp_length_format (hole->diameter, panel->units);
  side = pp_length_format (hole->x, panel->units);
  top = pp_length_format (hole->y, panel->units);
  wire = pp_length_format (panel->wire->length, panel->units);
  /* Translators: a weight, then lengths. */
  return g_strdup_printf (_("The bare glass weighs %s. Two holes of %s, %s from either side and %s "
                            "from the top, carry a wire of %s. You can move them on the glass."),
                          mass, wide, side, top, wire);
}

static void
show_glass (PpNewPanelForm *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_new_panel (&self->wish, NULL, &error);
  g_autofree char *words = NULL;

  g_assert_no_error (error); /* the fields take no size that a panel cannot have */
  words = describe (panel);
  pp_glass_preview_set_panel (self->preview, panel);
  gtk_label_set_text (self->summary, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->preview), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("The glass, drawn to scale"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

static void
show (PpNewPanelForm *self)
{
  self->is_showing = TRUE;
  show_choices (self);
  show_glass (self);
  self->is_showing = FALSE;
}

/* TRUE if the maker chose this one; the one given up tells of it too. */
static gboolean
is_chosen (PpNewPanelForm *self,
           gpointer        choice)
{
  return !self->is_showing && gtk_check_button_get_active (choice);
}

static void
place_cb (PpChoice       *choice,
          PpNewPanelForm *self)
{
  if (!is_chosen (self, choice))
    return;
  self->wish.place = choice == self->window ? PP_PLACE_WINDOW : PP_PLACE_WALL;
  show (self);
}

static void
shape_cb (PpChoice       *choice,
          PpNewPanelForm *self)
{
  if (!is_chosen (self, choice))
    return;
  self->wish.shape = choice == self->oval   ? PP_SHAPE_ELLIPSE
                     : choice == self->arch ? PP_SHAPE_ARCH
                                            : PP_SHAPE_RECTANGLE;
  show (self);
}

/* A size of the maker's own stays what it is; a common one becomes its neighbour. */
static void
units_cb (PpChoice       *choice,
          PpNewPanelForm *self)
{
  PpUnits units = choice == self->inches ? PP_UNITS_INCH : PP_UNITS_MM;
  PpNewPanel next = self->wish;

  if (!is_chosen (self, choice))
    return;
  next.units = units;
  next.corner_radius = pp_new_panel_wish (units).corner_radius;
  for (guint i = 0; i < PP_COMMON_SIZES; i++)
    if (pp_common_size_is (&self->wish, i))
      pp_common_size_take (&next, i);
  for (guint i = 0; i < PP_COMMON_THICKNESSES; i++)
    if (pp_common_is_close (self->wish.thickness, pp_common_thickness_get (self->wish.units, i)))
      next.thickness = pp_common_thickness_get (units, i);
  self->wish = next;
  pp_settings_keep_text (PP_SETTINGS_UNITS, units == PP_UNITS_INCH ? "inch" : "mm");
  show (self);
}

static void
size_cb (PpSizeForm     *size,
         PpNewPanelForm *self)
{
  self->wish.width = pp_size_form_get_width (size);
  self->wish.height = pp_size_form_get_height (size);
  show (self);
}

static void
thickness_cb (PpChoice       *choice,
              PpNewPanelForm *self)
{
  if (!is_chosen (self, choice))
    return;
  for (guint i = 0; i < PP_COMMON_THICKNESSES; i++)
    if (choice == self->thickness_choices[i])
      self->wish.thickness = pp_common_thickness_get (self->wish.units, i);
  show (self);
}

static void
begin (PpNewPanelForm *self)
{
  if (!pp_size_form_is_wrong (self->size))
    g_signal_emit (self, signals[BEGIN], 0, &self->wish);
}

static void
begin_cb (GtkButton      *button,
          PpNewPanelForm *self)
{
  begin (self);
}

/* Return begins, also on a choice, which the arrows and Space choose, and in a field. */
static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state,
        PpNewPanelForm     *self)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));

  if (key != GDK_KEY_Return && key != GDK_KEY_KP_Enter && key != GDK_KEY_ISO_Enter)
    return GDK_EVENT_PROPAGATE;
  if (GTK_IS_BUTTON (focus))
    return GDK_EVENT_PROPAGATE;
  begin (self);
  return GDK_EVENT_STOP;
}

static gboolean
pp_new_panel_form_grab_focus (GtkWidget *widget)
{
  PpNewPanelForm *self = PP_NEW_PANEL_FORM (widget);

  return gtk_widget_grab_focus (GTK_WIDGET (self->wish.place == PP_PLACE_WALL ? self->wall
                                                                              : self->window));
}

/* Return is the begin button's wherever else the focus is, as long as the page is in sight. The
 * focus begins at the first question: GTK would begin at the default button. */
static void
pp_new_panel_form_map (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);

  GTK_WIDGET_CLASS (pp_new_panel_form_parent_class)->map (widget);
  if (!GTK_IS_WINDOW (root))
    return;
  gtk_window_set_default_widget (GTK_WINDOW (root), PP_NEW_PANEL_FORM (widget)->begin);
  if (gtk_root_get_focus (root) == NULL)
    gtk_widget_grab_focus (widget);
}

static void
pp_new_panel_form_unmap (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);

  if (GTK_IS_WINDOW (root))
    gtk_window_set_default_widget (GTK_WINDOW (root), NULL);
  GTK_WIDGET_CLASS (pp_new_panel_form_parent_class)->unmap (widget);
}

static void
pp_new_panel_form_dispose (GObject *object)
{
  GtkWidget *body = gtk_widget_get_first_child (GTK_WIDGET (object));

  g_clear_pointer (&body, gtk_widget_unparent);
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_NEW_PANEL_FORM);
  G_OBJECT_CLASS (pp_new_panel_form_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, wall);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, window);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, rectangle);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, oval);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, arch);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, mm);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, inches);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, size);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, thickness_box);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, preview);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, summary);
  gtk_widget_class_bind_template_child (klass, PpNewPanelForm, begin);
  gtk_widget_class_bind_template_callback (klass, size_cb);
  gtk_widget_class_bind_template_callback (klass, begin_cb);
  gtk_widget_class_bind_template_callback (klass, key_cb);
}

static void
pp_new_panel_form_class_init (PpNewPanelFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_new_panel_form_dispose;
  widget_class->map = pp_new_panel_form_map;
  widget_class->unmap = pp_new_panel_form_unmap;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_new_panel_form_grab_focus;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[BEGIN] = g_signal_new ("begin", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  g_type_ensure (PP_TYPE_CHOICE);
  g_type_ensure (PP_TYPE_GLASS_PREVIEW);
  g_type_ensure (PP_TYPE_SIZE_FORM);
  g_type_ensure (PP_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/new-panel-form.ui");
  bind_children (widget_class);
}

/* The words are still to come. */
static void
add_thicknesses (PpNewPanelForm *self)
{
  PpChoice **choices = self->thickness_choices;

  for (guint i = 0; i < PP_COMMON_THICKNESSES; i++)
    {
      choices[i] = g_object_new (PP_TYPE_CHOICE, NULL);
      gtk_check_button_set_group (GTK_CHECK_BUTTON (choices[i]),
                                  i > 0 ? GTK_CHECK_BUTTON (choices[0]) : NULL);
      gtk_box_append (GTK_BOX (self->thickness_box), GTK_WIDGET (choices[i]));
      g_signal_connect (choices[i], "toggled", G_CALLBACK (thickness_cb), self);
    }
}

static void
connect (PpNewPanelForm *self,
         PpChoice       *choice,
         GCallback       callback)
{
  g_signal_connect (choice, "toggled", callback, self);
}

static void
pp_new_panel_form_init (PpNewPanelForm *self)
{
  self->wish = pp_new_panel_wish (find_units ());
  gtk_widget_init_template (GTK_WIDGET (self));
  add_thicknesses (self);
  show (self);
  connect (self, self->wall, G_CALLBACK (place_cb));
  connect (self, self->window, G_CALLBACK (place_cb));
  connect (self, self->rectangle, G_CALLBACK (shape_cb));
  connect (self, self->oval, G_CALLBACK (shape_cb));
  connect (self, self->arch, G_CALLBACK (shape_cb));
  connect (self, self->mm, G_CALLBACK (units_cb));
  connect (self, self->inches, G_CALLBACK (units_cb));
}
