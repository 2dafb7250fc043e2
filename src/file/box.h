/* box.h: the maker's box: the stock of pieces over all panels, in one file for all windows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A piece's count in the box is how many the maker has that are not glued yet. Taking a piece to a
 * tray takes nothing out of the box, since a panel laid out dry may never be glued; what is glued
 * or broken is counted down. A tray piece names its piece in the box by `box`.
 *
 * Every change reads the file anew under a lock, and writes it whole; so two windows never lose
 * what the other did, and a damaged box is refused and stays as it is. It waits for the lock, 5 s
 * at most, and until the disk has answered: call it from a worker thread where that matters.
 *
 * Paths are in the file name encoding. All but where it says otherwise: FALSE or NULL with one calm
 * sentence (PP_FILE_ERROR).
 */
#pragma once

#include "file/box-read.h"
#include "panel/panel.h"

G_BEGIN_DECLS

/* Where the box of whoever runs the program lies: in the user's data folder. (transfer full) */
char      *pp_box_get_path (void);

/* Its pieces (PpPiece); none where there is no box yet. (transfer full) */
GPtrArray *pp_box_load     (const char     *path,
                            GError        **error);
/* In place of the piece that `piece` names by `box`, which keeps its count, else as a new one.
 * `id` (nullable, transfer full): the one it has in the box; never one that a piece has had. */
gboolean   pp_box_put      (const char     *path,
                            const PpPiece  *piece,
                            char          **id,
                            GError        **error);
/* `by` more of it, less where `by` is under 0; never less than none. A piece that is not in the box
 * any more is passed over. */
gboolean   pp_box_count    (const char     *path,
                            const char     *id,
                            int             by,
                            GError        **error);
/* Passed over likewise. */
gboolean   pp_box_remove   (const char     *path,
                            const char     *id,
                            GError        **error);
/* Pieces of another box file: those that are here already but for their count (of the same make,
 * whatever their id) become more by it, the others are added. */
gboolean   pp_box_import   (const char     *path,
                            GPtrArray      *pieces,
                            GError        **error);

/* The panel with `count` of a box's piece on its tray; one that lies there from the box already
 * becomes more. Returns (transfer full). Errors: as pp_edit_add_piece(). */
PpPanel   *pp_box_take     (const PpPanel  *panel,
                            const PpPiece  *piece,
                            guint           count,
                            GError        **error);

G_END_DECLS
