/* card-face.h: what the card shows of one kind of thing; the base of card-piece.h and its like.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A face writes what the document holds into its labels and fields, and makes one edit of each
 * change. Sixty edits a second must cost it next to nothing: pp_say_or_hide() and the figure
 * entries touch nothing that reads the same.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_CARD_FACE (pp_card_face_get_type ())
G_DECLARE_DERIVABLE_TYPE (PpCardFace, pp_card_face, PP, CARD_FACE, GtkWidget)

struct _PpCardFaceClass
{
  GtkWidgetClass parent_class;

  /* Shows what the document has chosen, which is of this face's kind, or is gone. */
  void (*refresh) (PpCardFace *self,
                   PpDocument *document);
};

/* (nullable), borrowed: the card lets go of it in time. */
void        pp_card_face_set_document (PpCardFace  *self,
                                       PpDocument  *document);
PpDocument *pp_card_face_get_document (PpCardFace  *self);
void        pp_card_face_refresh      (PpCardFace  *self);
/* As pp_document_take(); refused, the fields show again what is. Of a stepped figure merge_key
 * names thing and figure, so that many steps are one of undo; what was typed has none. */
void        pp_card_face_take         (PpCardFace  *self,
                                       PpPanel     *next,
                                       GError      *error,
                                       const char  *label,
                                       const char  *merge_key);
/* Every figure shows again what it had, for another thing is about to be shown. Names and notes
 * need no such care: they are taken when they are left. */
void        pp_card_face_put_back     (PpCardFace  *self);
/* The same, but for the field that has the focus. */
void        pp_card_face_put_others_back
                                      (PpCardFace  *self);

/* Sets it only where another item is shown: even that costs a little. */
void        pp_card_select_item       (GtkDropDown *drop_down,
                                       guint        position);

G_END_DECLS
