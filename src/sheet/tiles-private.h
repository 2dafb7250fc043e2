/* tiles-private.h: what the files of the tiles share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/tiles.h"

G_BEGIN_DECLS

/* mm over `n` tiles of `tile` mm that overlap. */
double pp_tiles_get_span   (guint          n,
                            double         tile);
/* The letter (transfer full) of the edge at a tile's right, or at its foot; "" for none. Counted
 * tile by tile, the edge at the right before the one at the foot. */
char  *pp_tiles_letter_new (const PpTiles *self,
                            int            column,
                            int            row,
                            gboolean       is_right);

G_END_DECLS
