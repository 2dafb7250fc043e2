/* card-hole.c: the card of a hole.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A hole is measured from the side edge it is nearer to, as a maker holds the ruler, and from the
 * top. Which side that is changes only where the hole is changed, not while one types.
 */
#include "config.h"

#include "desk/card-hole.h"

#include "desk/edit-acts.h"
#include "desk/length-entry.h"
#include "desk/say.h"
#include "desk/template.h"
#include "panel/edit.h"
#include "panel/i18n.h"

/* mm: no drill is thinner. */
#define THINNEST 0.5

struct _PpCardHole
{
  PpCardFace     parent_instance;
  GtkLabel      *across_title;
  PpLengthEntry *across;
  PpLengthEntry *down;
  PpLengthEntry *diameter;
  GtkSwitch     *drilled;
  GtkLabel      *state;
  GtkWidget     *remove;
  char          *id;
  gboolean       from_right;
  gboolean       showing; /* the switch is being set, not thrown */
};

G_DEFINE_FINAL_TYPE (PpCardHole, pp_card_hole, PP_TYPE_CARD_FACE)

static const PpPanel *
get_panel (PpCardHole *self)
{
  return pp_document_get_panel (pp_card_face_get_document (PP_CARD_FACE (self)));
}

static PpBox
get_glass (PpCardHole *self)
{
  return pp_background_get_box (get_panel (self)->background);
}

/* What is shown, or NULL if it is gone. */
static const PpHole *
get_hole (PpCardHole *self)
{
  if (self->id == NULL || pp_card_face_get_document (PP_CARD_FACE (self)) == NULL)
    return NULL;
  return pp_panel_find_hole (get_panel (self), self->id, NULL);
}

static void
take (PpCardHole   *self,
      const PpHole *draft,
      const char   *label,
      const char   *figure,
      gboolean      stepped)
{
  g_autofree char *key = g_strconcat ("card-", figure, ":", self->id, NULL);
  GError *error = NULL;
  g_autoptr (PpHole) hole = pp_hole_new (draft, &error);
  PpPanel *next = hole != NULL ? pp_edit_move_hole (get_panel (self), hole, &error) : NULL;

  pp_card_face_take (PP_CARD_FACE (self), next, error, label, stepped ? key : NULL);
}

static void
across_cb (PpFigureEntry *entry,
           double         value,
           gboolean       stepped,
           PpCardHole    *self)
{
  const PpHole *hole = get_hole (self);
  PpHole draft;

  if (hole == NULL)
    return;
  draft = *hole;
  draft.x = self->from_right ? get_glass (self).x1 - value : get_glass (self).x0 + value;
  take (self, &draft, _("Move the hole"), "across", stepped);
}

static void
down_cb (PpFigureEntry *entry,
         double         value,
         gboolean       stepped,
         PpCardHole    *self)
{
  const PpHole *hole = get_hole (self);
  PpHole draft;

  if (hole == NULL)
    return;
  draft = *hole;
  draft.y = get_glass (self).y0 + value;
  take (self, &draft, _("Move the hole"), "down", stepped);
}

static void
diameter_cb (PpFigureEntry *entry,
             double         value,
             gboolean       stepped,
             PpCardHole    *self)
{
  const PpHole *hole = get_hole (self);
  PpHole draft;

  if (hole == NULL)
    return;
  draft = *hole;
  draft.diameter = value;
  take (self, &draft, _("Size of the hole"), "diameter", stepped);
}

static void
drilled_cb (GtkSwitch  *drilled,
            GParamSpec *pspec,
            PpCardHole *self)
{
  const PpHole *hole = get_hole (self);
  PpHole draft;

  if (hole == NULL || self->showing)
    return;
  draft = *hole;
  draft.drilled = gtk_switch_get_active (drilled);
  take (self, &draft, draft.drilled ? _("The hole is drilled") : _("The hole is not drilled yet"),
        "drilled", FALSE);
}

static void
remove_cb (GtkButton  *button,
           PpCardHole *self)
{
  if (get_hole (self) != NULL)
    pp_edit_acts_remove_hole (pp_card_face_get_document (PP_CARD_FACE (self)), self->id);
}

static void
show_across (PpCardHole   *self,
             const PpHole *hole)
{
  PpBox glass = get_glass (self);

  self->from_right = hole->x > pp_box_middle (glass).x;
  pp_say_or_hide (self->across_title,
                  self->from_right ? _("From the right") : _("From the left"));
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->across),
                             self->from_right ? glass.x1 - hole->x : hole->x - glass.x0);
}

static void
show_figures (PpCardHole    *self,
              const PpPanel *panel,
              const PpHole  *hole)
{
  pp_length_entry_set_units (self->across, panel->units);
  pp_length_entry_set_units (self->down, panel->units);
  pp_length_entry_set_units (self->diameter, panel->units);
  show_across (self, hole);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->down), hole->y - get_glass (self).y0);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->diameter), hole->diameter);
}

static void
show_wire (PpCardHole    *self,
           const PpPanel *panel)
{
  const PpWire *wire = panel->wire;
  gboolean has_wire = wire != NULL && (g_str_equal (wire->from, self->id)
                                       || g_str_equal (wire->to, self->id));

  pp_say_or_hide (self->state, has_wire ? _("The wire ends here. To remove the hole, take the "
                                            "wire off first.") : "");
  gtk_widget_set_visible (self->remove, !has_wire);
}

static void
show_another (PpCardHole *self,
              const char *id)
{
  if (g_strcmp0 (self->id, id) == 0)
    return;
  pp_card_face_put_back (PP_CARD_FACE (self));
  g_free (self->id);
  self->id = g_strdup (id);
}

static void
pp_card_hole_refresh (PpCardFace *face,
                      PpDocument *document)
{
  PpCardHole *self = PP_CARD_HOLE (face);
  const PpPanel *panel = pp_document_get_panel (document);
  const PpHole *hole;

  show_another (self, pp_document_get_chosen_ids (document)[0]);
  hole = get_hole (self);
  if (hole == NULL)
    return;
  show_figures (self, panel, hole);
  show_wire (self, panel);
  self->showing = TRUE;
  gtk_switch_set_active (self->drilled, hole->drilled);
  self->showing = FALSE;
}

static void
pp_card_hole_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_CARD_HOLE);
  G_OBJECT_CLASS (pp_card_hole_parent_class)->dispose (object);
}

static void
pp_card_hole_finalize (GObject *object)
{
  g_free (PP_CARD_HOLE (object)->id);
  G_OBJECT_CLASS (pp_card_hole_parent_class)->finalize (object);
}

static void
pp_card_hole_class_init (PpCardHoleClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = pp_card_hole_dispose;
  object_class->finalize = pp_card_hole_finalize;
  PP_CARD_FACE_CLASS (klass)->refresh = pp_card_hole_refresh;
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/card-hole.ui");
  gtk_widget_class_bind_template_child (widget_class, PpCardHole, across_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardHole, across);
  gtk_widget_class_bind_template_child (widget_class, PpCardHole, down);
  gtk_widget_class_bind_template_child (widget_class, PpCardHole, diameter);
  gtk_widget_class_bind_template_child (widget_class, PpCardHole, drilled);
  gtk_widget_class_bind_template_child (widget_class, PpCardHole, state);
  gtk_widget_class_bind_template_child (widget_class, PpCardHole, remove);
  gtk_widget_class_bind_template_callback (widget_class, across_cb);
  gtk_widget_class_bind_template_callback (widget_class, down_cb);
  gtk_widget_class_bind_template_callback (widget_class, diameter_cb);
  gtk_widget_class_bind_template_callback (widget_class, drilled_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
pp_card_hole_init (PpCardHole *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->across), -PP_FARTHEST + PP_BACKGROUND_MAX_SIDE,
                             PP_FARTHEST);
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->down), -PP_FARTHEST, PP_FARTHEST);
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->diameter), THINNEST, PP_BACKGROUND_MAX_SIDE);
}
