/* same-make.h: whether two pieces are made alike.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/record.h"

G_BEGIN_DECLS

/* In all that a piece is, to the last figure: not the id, not how many there are, and not from
 * which piece of a box it was taken. */
gboolean pp_piece_is_same_make (const PpPiece *a, const PpPiece *b);

G_END_DECLS
