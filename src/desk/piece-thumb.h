/* piece-thumb.h: a piece as a small picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * As large as the text asks; for those who hear the window its words stand beside it.
 */
#pragma once

#include "panel/record.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_PIECE_THUMB (pp_piece_thumb_get_type ())
G_DECLARE_FINAL_TYPE (PpPieceThumb, pp_piece_thumb, PP, PIECE_THUMB, GtkWidget)

GtkWidget *pp_piece_thumb_new       (void);
/* `piece` is nullable. Its art is judged when it is first drawn. */
void       pp_piece_thumb_set_piece (PpPieceThumb  *self,
                                     const PpPiece *piece);

G_END_DECLS
