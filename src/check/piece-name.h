/* piece-name.h: what a placed piece is called in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/finding.h"
#include "shape/scene.h"

G_BEGIN_DECLS

/* "Oxeye", or "Oxeye (120 mm from the left and 45 mm from the top)" where other placements have
 * the same name; the id of the tray piece stands for a name that is empty. (transfer full) */
char *pp_piece_name_of (const PpScene *scene,
                        guint          index);

/* The names of a scene's placements, each made once it is asked for; borrows the scene. `previous`
 * (nullable): of an earlier scene, whose names are taken over where they hold. */
PpPieceNames *pp_piece_names_new  (const PpScene      *scene,
                                   const PpPieceNames *previous);
void          pp_piece_names_free (PpPieceNames       *self);
/* How many placements there are of a piece of the tray. */
guint         pp_piece_names_get_copies (const PpPieceNames *self,
                                         const PpPiece      *piece);
/* Whether they are known to be of the same pieces, one by one. */
gboolean      pp_piece_names_have_same_pieces (const PpPieceNames *a,
                                               const PpPieceNames *b);
/* Whether a body that is the same in both, on the same glass and in the same units, has one
 * name. */
gboolean      pp_piece_names_agree (const PpPieceNames *a,
                                    const PpPieceNames *b,
                                    guint               index);
/* The same as pp_piece_name_of(), from the findings' names if they have any. (transfer full) */
char         *pp_findings_name    (const PpFindings   *findings,
                                   const PpScene      *scene,
                                   guint               index);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpPieceNames, pp_piece_names_free)

G_END_DECLS
