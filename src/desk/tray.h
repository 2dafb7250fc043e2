/* tray.h: the wooden tray: a compartment for each kind of piece, its picture, how many are left.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A piece is dragged from its compartment to the glass (a GdkContentProvider of PP_TYPE_PIECE_DRAG)
 * or placed by Enter or a double press. Follows its document.
 * Signal: place (char *piece id), the piece is wanted in the middle of the glass.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What is dragged: a piece of the tray. */
typedef struct
{
  const PpPiece *piece;
  PpPoint        grip;  /* mm in the piece's frame: where it was taken hold of */
} PpPieceDrag;

#define PP_TYPE_PIECE_DRAG (pp_piece_drag_get_type ())
GType        pp_piece_drag_get_type (void);
PpPieceDrag *pp_piece_drag_copy     (const PpPieceDrag *self);
void         pp_piece_drag_free     (PpPieceDrag *self);

#define PP_TYPE_TRAY (pp_tray_get_type ())
G_DECLARE_FINAL_TYPE (PpTray, pp_tray, PP, TRAY, GtkWidget)

/* `document` is nullable. */
void pp_tray_set_document (PpTray     *self,
                           PpDocument *document);
/* px a mm of the canvas, so that what is dragged is as large as it will lie. */
void pp_tray_set_scale    (PpTray     *self,
                           double      scale);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpPieceDrag, pp_piece_drag_free)

G_END_DECLS
