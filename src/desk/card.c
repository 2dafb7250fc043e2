/* card.c: the card beside what is chosen: shows the face for its kind.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/card.h"

#include "desk/card-fused.h"
#include "desk/card-glass.h"
#include "desk/card-hole.h"
#include "desk/card-piece.h"
#include "desk/card-pieces.h"
#include "desk/card-wire.h"
#include "desk/key-tips.h"
#include "desk/template.h"
#include "desk/typing.h"

struct _PpCard
{
  GtkWidget   parent_instance;
  PpDocument *document;
  GtkWidget  *view;  /* scrolls */
  GtkWidget  *sheet;
  PpCardFace *piece;
  PpCardFace *pieces;
  PpCardFace *hole;
  PpCardFace *wire;
  PpCardFace *glass;
  PpCardFace *fused;
  PpCardFace *face;  /* the one shown, or NULL */
};

G_DEFINE_FINAL_TYPE (PpCard, pp_card, GTK_TYPE_WIDGET)

static guint leave;

static PpCardFace *
pick_face (PpCard *self)
{
  switch (pp_document_get_chosen (self->document))
    {
    case PP_CHOSEN_PLACEMENTS:
      return pp_document_get_chosen_ids (self->document)[1] != NULL ? self->pieces : self->piece;
    case PP_CHOSEN_HOLE:
      return self->hole;
    case PP_CHOSEN_WIRE:
      return self->wire;
    case PP_CHOSEN_GLASS:
      return self->glass;
    case PP_CHOSEN_FUSED:
      return self->fused;
    case PP_CHOSEN_NOTHING:
      return NULL;
    }
  g_return_val_if_reached (NULL);
}

/* What the maker has typed is for the thing that the face still shows. */
static void
finish_typing (PpCard *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (self)))
    pp_typing_finish (root);
}

static void
show_face (PpCard *self)
{
  PpCardFace *face = self->document != NULL ? pick_face (self) : NULL;

  if (face != NULL)
    pp_card_face_refresh (face);
  if (face == self->face)
    return;
  if (self->face != NULL)
    gtk_widget_set_visible (GTK_WIDGET (self->face), FALSE);
  self->face = face;
  if (face != NULL)
    gtk_widget_set_visible (GTK_WIDGET (face), TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self), face != NULL);
}

static void
chosen_cb (PpDocument *document,
           PpCard     *self)
{
  finish_typing (self);
  if (self->face != NULL)
    pp_card_face_put_back (self->face);
  show_face (self);
}

/* What could not be taken is gone once something else is done. */
static void
changed_cb (PpDocument *document,
            PpCard     *self)
{
  if (self->face != NULL)
    pp_card_face_put_others_back (self->face);
  show_face (self);
}

static void
checked_cb (PpDocument *document,
            PpCard     *self)
{
  show_face (self);
}

static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state,
        PpCard             *self)
{
  if (key != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  g_signal_emit (self, leave, 0);
  return GDK_EVENT_STOP;
}

static GtkSizeRequestMode
pp_card_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* As the sheet's at its natural width: what scrolls has only its greatest height to tell. */
static void
pp_card_measure (GtkWidget      *widget,
                 GtkOrientation  orientation,
                 int             for_size,
                 int            *minimum,
                 int            *natural,
                 int            *minimum_baseline,
                 int            *natural_baseline)
{
  PpCard *self = PP_CARD (widget);
  int width, least;

  gtk_widget_measure (self->sheet, GTK_ORIENTATION_HORIZONTAL, -1, &least, &width, NULL, NULL);
  *minimum = least;
  *natural = width;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;
  gtk_widget_measure (self->sheet, GTK_ORIENTATION_VERTICAL, MAX (for_size, width), NULL, natural,
                      NULL, NULL);
  *minimum = MIN (*natural, least);
}

static void
pp_card_size_allocate (GtkWidget *widget,
                       int        width,
                       int        height,
                       int        baseline)
{
  gtk_widget_allocate (PP_CARD (widget)->view, width, height, baseline, NULL);
}

static void
hand_out (PpCard     *self,
          PpDocument *document)
{
  PpCardFace *faces[] = { self->piece, self->pieces, self->hole, self->wire, self->glass,
                          self->fused };

  for (guint i = 0; i < G_N_ELEMENTS (faces); i++)
    {
      pp_card_face_set_document (faces[i], document);
      pp_card_face_put_back (faces[i]);
    }
}

static void
pp_card_dispose (GObject *object)
{
  PpCard *self = PP_CARD (object);

  if (self->document != NULL)
    pp_card_set_document (self, NULL);
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_CARD);
  G_OBJECT_CLASS (pp_card_parent_class)->dispose (object);
}

static void
pp_card_class_init (PpCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_card_dispose;
  widget_class->get_request_mode = pp_card_get_request_mode;
  widget_class->measure = pp_card_measure;
  widget_class->size_allocate = pp_card_size_allocate;
  leave = g_signal_new ("leave", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                        G_TYPE_NONE, 0);
  g_type_ensure (PP_TYPE_CARD_PIECE);
  g_type_ensure (PP_TYPE_CARD_PIECES);
  g_type_ensure (PP_TYPE_CARD_HOLE);
  g_type_ensure (PP_TYPE_CARD_WIRE);
  g_type_ensure (PP_TYPE_CARD_GLASS);
  g_type_ensure (PP_TYPE_CARD_FUSED);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/petalpane/Petalpane/card.ui");
  gtk_widget_class_bind_template_child (widget_class, PpCard, view);
  gtk_widget_class_bind_template_child (widget_class, PpCard, sheet);
  gtk_widget_class_bind_template_child (widget_class, PpCard, piece);
  gtk_widget_class_bind_template_child (widget_class, PpCard, pieces);
  gtk_widget_class_bind_template_child (widget_class, PpCard, hole);
  gtk_widget_class_bind_template_child (widget_class, PpCard, wire);
  gtk_widget_class_bind_template_child (widget_class, PpCard, glass);
  gtk_widget_class_bind_template_child (widget_class, PpCard, fused);
  gtk_widget_class_bind_template_callback (widget_class, key_cb);
}

static void
pp_card_init (PpCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_key_tips_add (GTK_WIDGET (self));
}

void
pp_card_set_document (PpCard     *self,
                      PpDocument *document)
{
  g_return_if_fail (PP_IS_CARD (self));
  g_return_if_fail (document == NULL || PP_IS_DOCUMENT (document));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  hand_out (self, document);
  if (document != NULL)
    {
      g_signal_connect (document, "chosen", G_CALLBACK (chosen_cb), self);
      g_signal_connect (document, "changed", G_CALLBACK (changed_cb), self);
      g_signal_connect (document, "checked", G_CALLBACK (checked_cb), self);
    }
  show_face (self);
}
