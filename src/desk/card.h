/* card.h: the card beside what is chosen: its figures, to read and to change.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Follows the document. One piece: place, turn, height, how it rests, stack place; several: how
 * many and what is done to all; a hole, the wire, the glass: their measures. Every change is one
 * edit of the document. Nothing chosen: the card hides itself. Escape in it gives the focus back
 * to the canvas (signal leave).
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_CARD (pp_card_get_type ())
G_DECLARE_FINAL_TYPE (PpCard, pp_card, PP, CARD, GtkWidget)

/* `document` is nullable. */
void pp_card_set_document (PpCard     *self,
                           PpDocument *document);

G_END_DECLS
