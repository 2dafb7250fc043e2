/* card-face.c: what the card shows of one kind of thing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/card-face.h"

#include "desk/figure-entry.h"

typedef struct
{
  PpDocument *document;
} PpCardFacePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (PpCardFace, pp_card_face, GTK_TYPE_WIDGET)

#define PRIVATE(self) ((PpCardFacePrivate *) pp_card_face_get_instance_private (self))

static void
pp_card_face_class_init (PpCardFaceClass *klass)
{
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
pp_card_face_init (PpCardFace *self)
{
}

void
pp_card_face_set_document (PpCardFace *self,
                           PpDocument *document)
{
  g_return_if_fail (PP_IS_CARD_FACE (self));
  PRIVATE (self)->document = document;
}

PpDocument *
pp_card_face_get_document (PpCardFace *self)
{
  g_return_val_if_fail (PP_IS_CARD_FACE (self), NULL);
  return PRIVATE (self)->document;
}

void
pp_card_face_refresh (PpCardFace *self)
{
  g_return_if_fail (PP_IS_CARD_FACE (self));
  g_return_if_fail (PRIVATE (self)->document != NULL);
  PP_CARD_FACE_GET_CLASS (self)->refresh (self, PRIVATE (self)->document);
}

void
pp_card_face_take (PpCardFace *self,
                   PpPanel    *next,
                   GError     *error,
                   const char *label,
                   const char *merge_key)
{
  g_return_if_fail (PP_IS_CARD_FACE (self));

  if (!pp_document_take (PRIVATE (self)->document, next, error, label, merge_key))
    pp_card_face_refresh (self);
}

static void
put_back_under (GtkWidget *widget,
                GtkWidget *but)
{
  if (PP_IS_FIGURE_ENTRY (widget))
    {
      if (but == NULL || !gtk_widget_is_ancestor (but, widget))
        pp_figure_entry_put_back (PP_FIGURE_ENTRY (widget));
      return;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    put_back_under (child, but);
}

void
pp_card_face_put_back (PpCardFace *self)
{
  g_return_if_fail (PP_IS_CARD_FACE (self));
  put_back_under (GTK_WIDGET (self), NULL);
}

void
pp_card_face_put_others_back (PpCardFace *self)
{
  GtkRoot *root;

  g_return_if_fail (PP_IS_CARD_FACE (self));
  root = gtk_widget_get_root (GTK_WIDGET (self));
  put_back_under (GTK_WIDGET (self), root != NULL ? gtk_root_get_focus (root) : NULL);
}

void
pp_card_select_item (GtkDropDown *drop_down,
                     guint        position)
{
  if (gtk_drop_down_get_selected (drop_down) != position)
    gtk_drop_down_set_selected (drop_down, position);
}
