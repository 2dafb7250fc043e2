/* card-wire.c: the card of the wire.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each field holds one number of the wire's record; a table says which.
 */
#include "config.h"

#include "desk/card-wire.h"

#include "desk/edit-acts.h"
#include "desk/fold.h"
#include "desk/length-entry.h"
#include "desk/load-entry.h"
#include "desk/say.h"
#include "desk/template.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"

#include <math.h>

#define THINNEST 0.1     /* mm of a wire or a knot */
#define LEAST_LOAD 0.1   /* N */
#define LONGEST (4 * PP_BACKGROUND_MAX_SIDE)

struct _PpCardWire
{
  PpCardFace     parent_instance;
  GtkLabel      *state;
  PpFigureEntry *length;
  PpFigureEntry *thick;
  PpFigureEntry *load;
  PpFigureEntry *tail;
  PpFigureEntry *knot_wide;
  PpFigureEntry *knot_high;
};

G_DEFINE_FINAL_TYPE (PpCardWire, pp_card_wire, PP_TYPE_CARD_FACE)

/* The wire, or NULL if there is none any more. */
static const PpWire *
get_wire (PpCardWire *self)
{
  PpDocument *document = pp_card_face_get_document (PP_CARD_FACE (self));

  return document != NULL ? pp_document_get_panel (document)->wire : NULL;
}

static void
take (PpCardWire   *self,
      const PpWire *draft,
      const char   *label,
      const char   *merge_key)
{
  PpDocument *document = pp_card_face_get_document (PP_CARD_FACE (self));
  GError *error = NULL;
  g_autoptr (PpWire) wire = pp_wire_new (draft, &error);
  PpPanel *next = wire != NULL
                    ? pp_edit_set_wire (pp_document_get_panel (document), wire, &error)
                    : NULL;

  pp_card_face_take (PP_CARD_FACE (self), next, error, label, merge_key);
}

static void
figure_cb (PpFigureEntry *entry,
           double         value,
           gboolean       stepped,
           PpCardWire    *self)
{
  const PpWire *wire = get_wire (self);
  PpWire draft;
  const struct
  {
    PpFigureEntry *entry;
    double        *field;
    const char    *label;
    const char    *key;
  } figures[] = {
    { self->length, &draft.length, _("Length of the wire"), "card-wire-length" },
    { self->thick, &draft.diameter, _("Thickness of the wire"), "card-wire-thick" },
    { self->load, &draft.safe_load, _("Safe load of the wire"), "card-wire-load" },
    { self->tail, &draft.tail, _("Tails of the wire"), "card-wire-tail" },
    { self->knot_wide, &draft.knot_diameter, _("Size of the knots"), "card-wire-knot-wide" },
    { self->knot_high, &draft.knot_height, _("Size of the knots"), "card-wire-knot-high" },
  };

  if (wire == NULL)
    return;
  draft = *wire;
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    if (figures[i].entry == entry)
      {
        *figures[i].field = value;
        take (self, &draft, figures[i].label, stepped ? figures[i].key : NULL);
        return;
      }
}

static void
take_off_cb (GtkButton  *button,
             PpCardWire *self)
{
  pp_edit_acts_remove_wire (pp_card_face_get_document (PP_CARD_FACE (self)));
}

/* Without the holes' distance: beside a slack rounded on its own it would not add up. */
static char *
describe_slack (const PpPanel *panel)
{
  const PpWire *wire = panel->wire;
  const PpHole *from = pp_panel_find_hole (panel, wire->from, NULL);
  const PpHole *to = pp_panel_find_hole (panel, wire->to, NULL);
  double apart = hypot (to->x - from->x, to->y - from->y);
  g_autofree char *slack = NULL;

  if (isnan (wire->length) || fabs (wire->length - apart) < PP_TIE)
    return g_strdup (_("straight and taut"));
  slack = pp_length_format (fabs (wire->length - apart), panel->units);
  if (wire->length < apart)
    return g_strdup_printf (_("%s too short for its holes"), slack);
  return g_strdup_printf (_("%s of slack"), slack);
}

static void
show_units (PpCardWire *self,
            PpUnits     units)
{
  PpFigureEntry *lengths[]
    = { self->length, self->thick, self->tail, self->knot_wide, self->knot_high };

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    pp_length_entry_set_units (PP_LENGTH_ENTRY (lengths[i]), units);
  pp_load_entry_set_units (PP_LOAD_ENTRY (self->load), units);
}

static void
pp_card_wire_refresh (PpCardFace *face,
                      PpDocument *document)
{
  PpCardWire *self = PP_CARD_WIRE (face);
  const PpPanel *panel = pp_document_get_panel (document);
  const PpWire *wire = panel->wire;
  g_autofree char *slack = NULL;

  if (wire == NULL)
    return;
  slack = describe_slack (panel);
  pp_say_or_hide (self->state, slack);
  show_units (self, panel->units);
  pp_figure_entry_set_value (self->length, wire->length);
  pp_figure_entry_set_value (self->thick, wire->diameter);
  pp_figure_entry_set_value (self->load, wire->safe_load);
  pp_figure_entry_set_value (self->tail, wire->tail);
  pp_figure_entry_set_value (self->knot_wide, wire->knot_diameter);
  pp_figure_entry_set_value (self->knot_high, wire->knot_height);
}

static void
pp_card_wire_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_CARD_WIRE);
  G_OBJECT_CLASS (pp_card_wire_parent_class)->dispose (object);
}

static void
pp_card_wire_class_init (PpCardWireClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_card_wire_dispose;
  PP_CARD_FACE_CLASS (klass)->refresh = pp_card_wire_refresh;
  g_type_ensure (PP_TYPE_FOLD);
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  g_type_ensure (PP_TYPE_LOAD_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/card-wire.ui");
  gtk_widget_class_bind_template_child (widget_class, PpCardWire, state);
  gtk_widget_class_bind_template_child (widget_class, PpCardWire, length);
  gtk_widget_class_bind_template_child (widget_class, PpCardWire, thick);
  gtk_widget_class_bind_template_child (widget_class, PpCardWire, load);
  gtk_widget_class_bind_template_child (widget_class, PpCardWire, tail);
  gtk_widget_class_bind_template_child (widget_class, PpCardWire, knot_wide);
  gtk_widget_class_bind_template_child (widget_class, PpCardWire, knot_high);
  gtk_widget_class_bind_template_callback (widget_class, figure_cb);
  gtk_widget_class_bind_template_callback (widget_class, take_off_cb);
}

static void
pp_card_wire_init (PpCardWire *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_figure_entry_set_range (self->length, 0, LONGEST);
  pp_figure_entry_set_range (self->thick, THINNEST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->load, LEAST_LOAD, INFINITY);
  pp_figure_entry_set_range (self->tail, 0, LONGEST);
  pp_figure_entry_set_range (self->knot_wide, THINNEST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->knot_high, 0, PP_BACKGROUND_MAX_SIDE);
}
