/* canvas-piece.h: the child that stands for one placement on the canvas, or a hole or the hook.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws nothing and takes no pointer; it has the focus and the words. Private to the canvas and the
 * hanging view.
 */
#pragma once

#include "panel/panel.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_CANVAS_PIECE (pp_canvas_piece_get_type ())
G_DECLARE_FINAL_TYPE (PpCanvasPiece, pp_canvas_piece, PP, CANVAS_PIECE, GtkWidget)

GtkWidget  *pp_canvas_piece_new    (const char    *id);
const char *pp_canvas_piece_get_id (PpCanvasPiece *self);
/* Say nothing where the words are the same as before. */
void        pp_canvas_piece_set_name  (PpCanvasPiece *self,
                                       const char    *name);
void        pp_canvas_piece_set_state (PpCanvasPiece *self,
                                       const char    *state);
void        pp_canvas_piece_set_chosen (PpCanvasPiece *self,
                                        gboolean       chosen);

/* What the words were made of: the same again needs no words. */
typedef struct
{
  const PpPlacement *placement; /* referenced */
  guint              index;
  guint              n;
  PpUnits            units;
} PpCanvasPieceKey;

/* FALSE if it is the one it has. */
gboolean    pp_canvas_piece_set_key (PpCanvasPiece    *self,
                                     PpCanvasPieceKey  key);

G_END_DECLS
