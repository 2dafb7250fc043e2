/* piece-command.h: what the ways of making a piece share: `petalpane-cli piece WAY`.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "cli/piece-words.h"

G_BEGIN_DECLS

/* Where made pieces go. */
typedef struct
{
  char    *into;    /* a panel file that gets them on its tray, or NULL */
  gboolean is_json; /* as petalpane-pieces on standard output */
} PpPieceWish;

void pp_piece_wish_clear (PpPieceWish *self);

/* Reads --into, --json and `more` (nullable) options of its own, and gives what else was written,
 * argv[0] not among it (transfer full); NULL after a complaint on standard error. */
char **pp_piece_command_parse   (int                 argc,
                                 char              **argv,
                                 const char         *usage,
                                 const char         *summary,
                                 const GOptionEntry *more,
                                 PpPieceWish        *wish);
/* Puts the pieces where they are wished; `at` (nullable): where their origins lay, mm, else at
 * (0, 0); `is_gap_guessed`: what stands under their high parts was not measured; `note` (nullable):
 * a sentence that follows in words. Returns the exit status. */
int    pp_piece_command_deliver (const PpPieceWish *wish,
                                 PpPiece *const    *pieces,
                                 const PpPoint     *at,
                                 guint              n_pieces,
                                 gboolean           is_gap_guessed,
                                 const char        *note);
/* The file's name without folder and ending. (transfer full) */
char    *pp_piece_command_title        (const char *file);
/* Reads KEY=VALUE after KEY=VALUE, up to a NULL. FALSE after a complaint. */
gboolean pp_piece_command_read_answers (char      **words,
                                        PpAnswers  *answers);

int    pp_piece_command_drawing  (int argc, char **argv);
int    pp_piece_command_ladder   (int argc, char **argv);
int    pp_piece_command_measures (int argc, char **argv);
int    pp_piece_command_picture  (int argc, char **argv);
int    pp_piece_command_ring     (int argc, char **argv);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PpPieceWish, pp_piece_wish_clear)

G_END_DECLS
