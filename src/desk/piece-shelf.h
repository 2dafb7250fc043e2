/* piece-shelf.h: pieces to choose from, with pictures, found by a word of their name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals: chosen (gpointer PpPiece), borrowed, as the choice goes from one to another; pointed,
 * after a press on one; activated (gpointer PpPiece), by Return or a double press.
 */
#pragma once

#include "panel/panel.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum
{
  PP_SHELF_AS_GIVEN,
  PP_SHELF_BY_NAME,
  PP_SHELF_BY_SIZE,  /* largest first */
  PP_SHELF_BY_COUNT, /* fewest first */
} PpShelfOrder;

#define PP_TYPE_PIECE_SHELF (pp_piece_shelf_get_type ())
G_DECLARE_FINAL_TYPE (PpPieceShelf, pp_piece_shelf, PP, PIECE_SHELF, GtkWidget)

void           pp_piece_shelf_clear     (PpPieceShelf  *self);
/* `words`: a few, under its name. */
void           pp_piece_shelf_add       (PpPieceShelf  *self,
                                         const PpPiece *piece,
                                         const char    *words);
/* NULL where none is. (transfer none) */
const PpPiece *pp_piece_shelf_get       (PpPieceShelf  *self);
/* The one with this id and none for NULL; "chosen" is not emitted. */
void           pp_piece_shelf_choose    (PpPieceShelf  *self,
                                         const char    *id);
/* Pieces of one kind alone; -1: all. */
void           pp_piece_shelf_set_kind  (PpPieceShelf  *self,
                                         int            kind);
void           pp_piece_shelf_set_order (PpPieceShelf  *self,
                                         PpShelfOrder   order);

G_END_DECLS
