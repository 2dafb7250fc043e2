/* card-glass.c: the card of the glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/card-glass.h"

#include "desk/chosen-colour.h"
#include "desk/colour-button.h"
#include "desk/drop-down.h"
#include "desk/edit-acts.h"
#include "desk/fold.h"
#include "desk/length-entry.h"
#include "desk/note-view.h"
#include "desk/template.h"
#include "desk/text-entry.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/resize.h"
#include "panel/rig.h"

#include <math.h>

#define LEAST_SIDE 5.0       /* mm */
#define THINNEST 0.5         /* mm */

struct _PpCardGlass
{
  PpCardFace      parent_instance;
  GtkToggleButton *wall;
  GtkToggleButton *window;
  GtkWidget      *shape_title;
  GtkDropDown    *shape;
  PpFigureEntry  *width;
  PpFigureEntry  *height;
  GtkWidget      *corner_title;
  PpFigureEntry  *corner;
  PpFigureEntry  *thick;
  GtkWidget      *put_wire_on;
  PpTextEntry    *title;
  PpTextEntry    *maker;
  PpNoteView     *note;
  GtkWidget      *units_title;
  GtkDropDown    *units;
  GtkWidget      *colour_title;
  GtkColorChooser *colour;
  gboolean        showing; /* controls are being set, not used */
};

G_DEFINE_FINAL_TYPE (PpCardGlass, pp_card_glass, PP_TYPE_CARD_FACE)

/* NULL while controls are only being set, or there is no panel to change. */
static const PpPanel *
get_panel (PpCardGlass *self)
{
  PpDocument *document = pp_card_face_get_document (PP_CARD_FACE (self));

  return self->showing || document == NULL ? NULL : pp_document_get_panel (document);
}

static void
take (PpCardGlass *self,
      PpPanel     *next,
      GError      *error,
      const char  *label,
      const char  *merge_key)
{
  pp_card_face_take (PP_CARD_FACE (self), next, error, label, merge_key);
}

static void
take_background (PpCardGlass        *self,
                 const PpPanel      *panel,
                 const PpBackground *draft,
                 const char         *label,
                 const char         *merge_key)
{
  GError *error = NULL;
  g_autoptr (PpBackground) background = pp_background_new (draft, &error);
  PpPanel *next = background != NULL ? pp_edit_set_background (panel, background, &error) : NULL;

  take (self, next, error, label, merge_key);
}

static void
place_cb (GtkToggleButton *window,
          PpCardGlass     *self)
{
  const PpPanel *panel = get_panel (self);
  g_autoptr (PpDisplay) display = NULL;
  GError *error = NULL;
  PpPanel *next = NULL;
  PpDisplay draft;

  if (panel == NULL)
    return;
  draft = *panel->display;
  draft.place = gtk_toggle_button_get_active (window) ? PP_PLACE_WINDOW : PP_PLACE_WALL;
  display = pp_display_new (&draft, &error);
  if (display != NULL)
    next = pp_edit_set_display (panel, display, &error);
  take (self, next, error,
        draft.place == PP_PLACE_WINDOW ? _("Hang in a window") : _("Hang on a wall"), NULL);
}

/* The drop-down lists the shapes in the order of PpBackgroundShape. */
static void
shape_cb (GtkDropDown *shape,
          GParamSpec  *pspec,
          PpCardGlass *self)
{
  const PpPanel *panel = get_panel (self);
  PpBackground draft;

  if (panel == NULL)
    return;
  draft = *panel->background;
  draft.shape = (PpBackgroundShape) gtk_drop_down_get_selected (shape);
  take_background (self, panel, &draft, _("Shape of the glass"), NULL);
}

static void
resize (PpCardGlass   *self,
        const PpPanel *panel,
        double         width,
        double         height,
        const char    *merge_key)
{
  GError *error = NULL;
  PpPanel *next = pp_edit_resize (panel, width, height, &error);

  take (self, next, error, _("Size of the glass"), merge_key);
}

static void
width_cb (PpFigureEntry *entry,
          double         value,
          gboolean       stepped,
          PpCardGlass   *self)
{
  const PpPanel *panel = get_panel (self);

  if (panel != NULL)
    resize (self, panel, value, panel->background->height, stepped ? "card-width" : NULL);
}

static void
height_cb (PpFigureEntry *entry,
           double         value,
           gboolean       stepped,
           PpCardGlass   *self)
{
  const PpPanel *panel = get_panel (self);

  if (panel != NULL)
    resize (self, panel, panel->background->width, value, stepped ? "card-height" : NULL);
}

static void
corner_cb (PpFigureEntry *entry,
           double         value,
           gboolean       stepped,
           PpCardGlass   *self)
{
  const PpPanel *panel = get_panel (self);
  PpBackground draft;

  if (panel == NULL)
    return;
  draft = *panel->background;
  draft.corner_radius = value;
  take_background (self, panel, &draft, _("Corners of the glass"), stepped ? "card-corner" : NULL);
}

static void
thick_cb (PpFigureEntry *entry,
          double         value,
          gboolean       stepped,
          PpCardGlass   *self)
{
  const PpPanel *panel = get_panel (self);
  PpBackground draft;

  if (panel == NULL)
    return;
  draft = *panel->background;
  draft.thickness = value;
  take_background (self, panel, &draft, _("Thickness of the glass"),
                   stepped ? "card-thick" : NULL);
}

static void
colour_cb (GtkColorButton *button,
           PpCardGlass    *self)
{
  const PpPanel *panel = get_panel (self);
  g_autofree char *colour = NULL;
  PpBackground draft;

  if (panel == NULL)
    return;
  colour = pp_chosen_colour_dup (self->colour);
  draft = *panel->background;
  draft.glass.colour = colour;
  take_background (self, panel, &draft, _("Colour of the glass"), NULL);
}

static void
add_hole_cb (GtkButton   *button,
             PpCardGlass *self)
{
  PpDocument *document = pp_card_face_get_document (PP_CARD_FACE (self));
  g_autofree char *id = NULL;
  GError *error = NULL;
  PpPanel *next = pp_rig_add_hole (pp_document_get_panel (document), &id, &error);

  take (self, next, error, _("Add a hole"), NULL);
  if (id != NULL)
    pp_document_choose (document, PP_CHOSEN_HOLE, (const char * const[]) { id, NULL });
}

static void
put_wire_on_cb (GtkButton   *button,
                PpCardGlass *self)
{
  pp_edit_acts_put_wire_on (pp_card_face_get_document (PP_CARD_FACE (self)));
}

static void
title_cb (PpTextEntry *entry,
          const char  *text,
          PpCardGlass *self)
{
  const PpPanel *panel = get_panel (self);

  if (panel != NULL)
    take (self, pp_edit_set_titles (panel, text, NULL, NULL), NULL, _("Title of the panel"), NULL);
}

static void
maker_cb (PpTextEntry *entry,
          const char  *text,
          PpCardGlass *self)
{
  const PpPanel *panel = get_panel (self);

  if (panel != NULL)
    take (self, pp_edit_set_titles (panel, NULL, text, NULL), NULL, _("Maker of the panel"), NULL);
}

static void
note_cb (PpNoteView  *view,
         const char  *text,
         PpCardGlass *self)
{
  const PpPanel *panel = get_panel (self);

  if (panel != NULL)
    take (self, pp_edit_set_titles (panel, NULL, NULL, text), NULL, C_("of a panel", "Note"), NULL);
}

/* The drop-down lists the units in the order of PpUnits. */
static void
units_cb (GtkDropDown *units,
          GParamSpec  *pspec,
          PpCardGlass *self)
{
  const PpPanel *panel = get_panel (self);
  gboolean is_inch = gtk_drop_down_get_selected (units) == PP_UNITS_INCH;

  if (panel != NULL)
    take (self, pp_edit_set_units (panel, is_inch ? PP_UNITS_INCH : PP_UNITS_MM), NULL,
          is_inch ? _("Measure in inches") : _("Measure in millimetres"), NULL);
}

static void
show_size (PpCardGlass        *self,
           const PpBackground *background,
           PpUnits             units)
{
  PpFigureEntry *lengths[] = { self->width, self->height, self->corner, self->thick };
  gboolean is_rectangle = background->shape == PP_SHAPE_RECTANGLE;
  gboolean is_free = background->shape == PP_SHAPE_FREE;

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    pp_length_entry_set_units (PP_LENGTH_ENTRY (lengths[i]), units);
  pp_figure_entry_set_range (self->corner, 0, fmin (background->width, background->height) / 2);
  pp_figure_entry_set_value (self->width, background->width);
  pp_figure_entry_set_value (self->height, background->height);
  pp_figure_entry_set_value (self->corner, background->corner_radius);
  pp_figure_entry_set_value (self->thick, background->thickness);
  gtk_widget_set_sensitive (GTK_WIDGET (self->width), !is_free);
  gtk_widget_set_sensitive (GTK_WIDGET (self->height), !is_free);
  gtk_widget_set_visible (self->corner_title, is_rectangle);
  gtk_widget_set_visible (GTK_WIDGET (self->corner), is_rectangle);
}

static void
pp_card_glass_refresh (PpCardFace *face,
                       PpDocument *document)
{
  PpCardGlass *self = PP_CARD_GLASS (face);
  const PpPanel *panel = pp_document_get_panel (document);
  gboolean in_window = panel->display->place == PP_PLACE_WINDOW;

  self->showing = TRUE;
  gtk_toggle_button_set_active (in_window ? self->window : self->wall, TRUE);
  pp_card_select_item (self->shape, panel->background->shape);
  pp_card_select_item (self->units, panel->units);
  show_size (self, panel->background, panel->units);
  pp_chosen_colour_show (self->colour, panel->background->glass.colour);
  pp_text_entry_set_words (self->title, panel->title);
  pp_text_entry_set_words (self->maker, panel->maker);
  pp_note_view_set_words (self->note, panel->note);
  gtk_widget_set_visible (self->put_wire_on, panel->wire == NULL);
  self->showing = FALSE;
}

static void
pp_card_glass_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_CARD_GLASS);
  G_OBJECT_CLASS (pp_card_glass_parent_class)->dispose (object);
}

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, place_cb);
  gtk_widget_class_bind_template_callback (widget_class, shape_cb);
  gtk_widget_class_bind_template_callback (widget_class, width_cb);
  gtk_widget_class_bind_template_callback (widget_class, height_cb);
  gtk_widget_class_bind_template_callback (widget_class, corner_cb);
  gtk_widget_class_bind_template_callback (widget_class, thick_cb);
  gtk_widget_class_bind_template_callback (widget_class, colour_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_hole_cb);
  gtk_widget_class_bind_template_callback (widget_class, put_wire_on_cb);
  gtk_widget_class_bind_template_callback (widget_class, title_cb);
  gtk_widget_class_bind_template_callback (widget_class, maker_cb);
  gtk_widget_class_bind_template_callback (widget_class, note_cb);
  gtk_widget_class_bind_template_callback (widget_class, units_cb);
}

static void
pp_card_glass_class_init (PpCardGlassClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_card_glass_dispose;
  PP_CARD_FACE_CLASS (klass)->refresh = pp_card_glass_refresh;
  g_type_ensure (PP_TYPE_FOLD);
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  g_type_ensure (PP_TYPE_NOTE_VIEW);
  g_type_ensure (PP_TYPE_TEXT_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/card-glass.ui");
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, wall);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, window);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, shape_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, shape);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, width);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, height);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, corner_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, corner);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, thick);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, put_wire_on);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, title);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, maker);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, note);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, units_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, units);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, colour_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardGlass, colour);
  bind_callbacks (widget_class);
}

static void
pp_card_glass_init (PpCardGlass *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_figure_entry_set_range (self->width, LEAST_SIDE, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->height, LEAST_SIDE, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->thick, THINNEST, PP_BACKGROUND_MAX_SIDE);
  pp_drop_down_tell (self->shape, self->shape_title);
  pp_drop_down_tell (self->units, self->units_title);
  pp_colour_button_tell (GTK_COLOR_BUTTON (self->colour), self->colour_title);
}
