/* card-pieces.c: the card of several pieces.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/card-pieces.h"

#include "desk/edit-acts.h"
#include "desk/length-entry.h"
#include "desk/say.h"
#include "desk/template.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/place.h"
#include "shape/stand.h"

struct _PpCardPieces
{
  PpCardFace     parent_instance;
  GtkLabel      *name;
  GtkLabel      *state;
  PpLengthEntry *left;
  PpLengthEntry *top;
  char         **ids; /* what is shown, as PpCardPiece keeps its id */
};

G_DEFINE_FINAL_TYPE (PpCardPieces, pp_card_pieces, PP_TYPE_CARD_FACE)

static void
move_to (PpCardPieces *self,
         double        left,
         double        top,
         const char   *figure,
         gboolean      stepped)
{
  PpDocument *document = pp_card_face_get_document (PP_CARD_FACE (self));
  g_auto (GStrv) movable = NULL;
  g_autofree char *label = NULL, *joined = NULL, *key = NULL;
  GError *error = NULL;
  PpPanel *next;
  PpBox glass, box;
  guint n;

  if (document == NULL)
    return;
  glass = pp_background_get_box (pp_document_get_panel (document)->background);
  box = pp_place_box (pp_document_get_panel (document), (const char * const *) self->ids);
  if (pp_box_is_empty (box))
    return;
  movable = pp_edit_acts_filter_movable (document, (const char * const *) self->ids);
  if (movable == NULL)
    return;
  n = g_strv_length (movable);
  label = g_strdup_printf (ngettext ("Move %u piece", "Move %u pieces", n), n);
  next = pp_edit_move (pp_document_get_panel (document), (const char * const *) movable,
                       isnan (left) ? 0 : glass.x0 + left - box.x0,
                       isnan (top) ? 0 : glass.y0 + top - box.y0, &error);
  next = pp_stand_follow (next, (const char * const *) movable, &error);
  joined = g_strjoinv (" ", movable);
  key = g_strconcat ("card-", figure, ":", joined, NULL);
  pp_card_face_take (PP_CARD_FACE (self), next, error, label, stepped ? key : NULL);
}

static void
left_cb (PpFigureEntry *entry,
         double         value,
         gboolean       stepped,
         PpCardPieces  *self)
{
  move_to (self, value, NAN, "left", stepped);
}

static void
top_cb (PpFigureEntry *entry,
        double         value,
        gboolean       stepped,
        PpCardPieces  *self)
{
  move_to (self, NAN, value, "top", stepped);
}

static void
show_others (PpCardPieces       *self,
             const char * const *ids)
{
  if (g_strv_equal ((const char * const *) self->ids, ids))
    return;
  pp_card_face_put_back (PP_CARD_FACE (self));
  g_strfreev (self->ids);
  self->ids = g_strdupv ((char **) ids);
}

static void
pp_card_pieces_refresh (PpCardFace *face,
                        PpDocument *document)
{
  PpCardPieces *self = PP_CARD_PIECES (face);
  const PpPanel *panel = pp_document_get_panel (document);
  PpBox glass = pp_background_get_box (panel->background);
  g_autofree char *name = NULL, *size = NULL, *state = NULL;
  PpBox box;
  guint n;

  show_others (self, pp_document_get_chosen_ids (document));
  box = pp_place_box (panel, (const char * const *) self->ids);
  if (pp_box_is_empty (box))
    return;
  n = g_strv_length (self->ids);
  name = g_strdup_printf (ngettext ("%u piece", "%u pieces", n), n);
  size = pp_size_format (pp_box_width (box), pp_box_height (box), panel->units);
  state = g_strdup_printf (_("%s together"), size);
  pp_say_or_hide (self->name, name);
  pp_say_or_hide (self->state, state);
  pp_length_entry_set_units (self->left, panel->units);
  pp_length_entry_set_units (self->top, panel->units);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->left), box.x0 - glass.x0);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->top), box.y0 - glass.y0);
}

static void
pp_card_pieces_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_CARD_PIECES);
  G_OBJECT_CLASS (pp_card_pieces_parent_class)->dispose (object);
}

static void
pp_card_pieces_finalize (GObject *object)
{
  g_strfreev (PP_CARD_PIECES (object)->ids);
  G_OBJECT_CLASS (pp_card_pieces_parent_class)->finalize (object);
}

static void
pp_card_pieces_class_init (PpCardPiecesClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = pp_card_pieces_dispose;
  object_class->finalize = pp_card_pieces_finalize;
  PP_CARD_FACE_CLASS (klass)->refresh = pp_card_pieces_refresh;
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/card-pieces.ui");
  gtk_widget_class_bind_template_child (widget_class, PpCardPieces, name);
  gtk_widget_class_bind_template_child (widget_class, PpCardPieces, state);
  gtk_widget_class_bind_template_child (widget_class, PpCardPieces, left);
  gtk_widget_class_bind_template_child (widget_class, PpCardPieces, top);
  gtk_widget_class_bind_template_callback (widget_class, left_cb);
  gtk_widget_class_bind_template_callback (widget_class, top_cb);
}

static void
pp_card_pieces_init (PpCardPieces *self)
{
  self->ids = g_new0 (char *, 1);
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->left), -PP_FARTHEST, PP_FARTHEST);
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->top), -PP_FARTHEST, PP_FARTHEST);
}
