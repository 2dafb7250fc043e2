/* tray-words.h: what the tray says about a piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Strings are translated; (transfer full) where they are not const.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* Its id for a piece without a name. */
const char *pp_tray_words_name    (const PpPiece *piece);
/* "Flowers" */
const char *pp_tray_words_kinds   (PpKind         kind);
/* "2 of 3 left", "none left", "1 too many" */
char       *pp_tray_words_left    (guint          count,
                                   guint          placed);
/* "50 mm across"; of a long piece "160 mm long" */
char       *pp_tray_words_size    (const PpPiece *piece,
                                   PpUnits        units);
/* "Cornflower, flower, 4 of 6 left, 50 mm across" */
char       *pp_tray_words_all     (const PpPiece *piece,
                                   guint          placed,
                                   PpUnits        units);
/* "Cornflower, 50 mm across" and what to do with it. */
char       *pp_tray_words_tooltip (const PpPiece *piece,
                                   PpUnits        units);
G_END_DECLS
