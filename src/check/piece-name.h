/* piece-name.h: what a placed piece is called in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

/* "Oxeye", or "Oxeye (120 mm from the left and 45 mm from the top)" where other placements have
 * the same name; the id of the tray piece stands for a name that is empty. (transfer full) */
char *pp_piece_name_of (const PpScene *scene,
                        guint          index);

G_END_DECLS
