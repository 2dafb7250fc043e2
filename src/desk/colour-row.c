/* colour-row.c: colours of glass side by side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/colour-row.h"

#include "desk/choice.h"
#include "desk/chosen-colour.h"
#include "desk/colour-button.h"
#include "desk/em.h"
#include "desk/palette.h"
#include "desk/wrap-layout.h"
#include "panel/i18n.h"

#define SPOT_EMS 1.3

static const struct
{
  const char *name;
  const char *colour; /* NULL: as pictured */
} colours[] = {
  { N_("As pictured"), NULL },
  { N_("White"), "#f4f1e8" },
  { N_("Yellow"), "#e5bd3a" },
  { N_("Amber"), "#c8842c" },
  { N_("Red"), "#b8322f" },
  { N_("Pink"), "#d77a98" },
  { N_("Violet"), "#7f56ad" },
  { N_("Blue"), "#3d62b8" },
  { N_("Turquoise"), "#3f9aa5" },
  { N_("Dark green"), "#3b6a45" },
  { N_("Spring green"), "#7fae4f" },
  { N_("Clear"), "#d8e6e2" },
};

struct _PpColourRow
{
  GtkWidget       parent_instance;
  gboolean        is_showing;
  GtkWidget      *row;
  GtkCheckButton *choices[G_N_ELEMENTS (colours)];
  GtkColorButton *other;
};

G_DEFINE_FINAL_TYPE (PpColourRow, pp_colour_row, GTK_TYPE_WIDGET)

static guint chosen_signal;

static void
draw_spot (GtkDrawingArea *area,
           cairo_t        *cr,
           int             width,
           int             height,
           gpointer        colour)
{
  PpPalette palette = pp_palette_of (GTK_WIDGET (area));
  double radius = MIN (width, height) / 2.0 - 1;
  GdkRGBA rgba;

  cairo_arc (cr, width / 2.0, height / 2.0, radius, 0, 2 * G_PI);
  if (colour != NULL && gdk_rgba_parse (&rgba, colour))
    pp_palette_set (cr, &rgba, 1);
  else
    pp_palette_set (cr, &palette.paper, 1);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, &palette.ink, 0.55);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
  if (colour != NULL)
    return;
  cairo_move_to (cr, width / 2.0 - radius * 0.7, height / 2.0 + radius * 0.7);
  cairo_line_to (cr, width / 2.0 + radius * 0.7, height / 2.0 - radius * 0.7);
  cairo_stroke (cr);
}

static void
toggled_cb (GtkCheckButton *choice,
            PpColourRow    *self)
{
  if (self->is_showing || !gtk_check_button_get_active (choice))
    return;
  for (guint i = 0; i < G_N_ELEMENTS (colours); i++)
    if (self->choices[i] == choice)
      g_signal_emit (self, chosen_signal, 0, colours[i].colour);
}

static void
other_cb (GtkColorButton *button,
          PpColourRow    *self)
{
  g_autofree char *colour = pp_chosen_colour_dup (GTK_COLOR_CHOOSER (button));

  g_signal_emit (self, chosen_signal, 0, colour);
}

static void
pp_colour_row_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (pp_colour_row_parent_class)->dispose (object);
}

static void
pp_colour_row_class_init (PpColourRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = pp_colour_row_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_RADIO_GROUP);
  chosen_signal = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static GtkWidget *
new_choice (PpColourRow *self,
            guint        i)
{
  GtkWidget *choice = g_object_new (PP_TYPE_CHOICE, "tooltip-text", _(colours[i].name), NULL);
  GtkWidget *spot = gtk_drawing_area_new ();
  int size = (int) (SPOT_EMS * pp_em_of (GTK_WIDGET (self)));

  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (spot), size);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (spot), size);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (spot), draw_spot, (gpointer) colours[i].colour,
                                  NULL);
  pp_choice_set_words (PP_CHOICE (choice), "", _(colours[i].name));
  pp_choice_set_picture (PP_CHOICE (choice), spot);
  gtk_widget_add_css_class (choice, "pp-spot");
  gtk_check_button_set_group (GTK_CHECK_BUTTON (choice), i > 0 ? self->choices[0] : NULL);
  g_signal_connect (choice, "toggled", G_CALLBACK (toggled_cb), self);
  return choice;
}

/* Its words and its button stay together where the row is broken. */
static GtkWidget *
new_other (PpColourRow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *title = gtk_label_new (_("Another colour"));

  self->other = GTK_COLOR_BUTTON (gtk_color_button_new ());
  gtk_color_button_set_title (self->other, _("Colour of the glass"));
  gtk_widget_set_valign (GTK_WIDGET (self->other), GTK_ALIGN_CENTER);
  pp_colour_button_tell (self->other, title);
  g_signal_connect (self->other, "color-set", G_CALLBACK (other_cb), self);
  gtk_widget_add_css_class (title, "pp-field-title");
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->other));
  return box;
}

static void
pp_colour_row_init (PpColourRow *self)
{
  self->row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_set_layout_manager (self->row, g_object_new (PP_TYPE_WRAP_LAYOUT, "spacing", 3, NULL));
  gtk_widget_set_parent (self->row, GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Colour of the glass"), -1);
  for (guint i = 0; i < G_N_ELEMENTS (colours); i++)
    {
      self->choices[i] = GTK_CHECK_BUTTON (new_choice (self, i));
      gtk_box_append (GTK_BOX (self->row), GTK_WIDGET (self->choices[i]));
    }
  gtk_box_append (GTK_BOX (self->row), new_other (self));
}

GtkWidget *
pp_colour_row_new (void)
{
  return g_object_new (PP_TYPE_COLOUR_ROW, NULL);
}

void
pp_colour_row_set (PpColourRow *self,
                   const char  *colour)
{
  g_return_if_fail (PP_IS_COLOUR_ROW (self));

  self->is_showing = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (colours); i++)
    gtk_check_button_set_active (self->choices[i], g_strcmp0 (colour, colours[i].colour) == 0);
  if (colour != NULL)
    pp_chosen_colour_show (GTK_COLOR_CHOOSER (self->other), colour);
  self->is_showing = FALSE;
}
