/* stand.h: stems and the pockets they stand in.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A stem stands in a pocket if its foot, the lowest place of its outline, is in it: inside the
 * insert and the fused part. Only pieces of kind stem stand. `placements` are ids, ended by NULL.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* The fused part in whose pocket the foot of a placement is, the last of several; NULL if it is in
 * none or is no stem. (transfer none) */
const PpFused *pp_stand_find   (const PpPanel      *panel,
                                const char         *placement);
/* Each stem among `placements` stands in the pocket that its foot is in, or in none: what a move of
 * it means. `panel` (transfer full) (nullable) is what the edit that moved them gave; NULL gives
 * NULL, and the same panel comes back where nothing changes. (transfer full)
 * Errors: PP_PANEL_ERROR_REFERENCE for an unknown id. */
PpPanel       *pp_stand_follow (PpPanel            *panel,
                                const char * const *placements,
                                GError            **error);
/* The stems among `placements` stand in the pocket of `fused`, which has one: side by side as they
 * came from the left, evenly over its width, their feet at its bottom; none is turned. Unknown ids
 * are passed over. (transfer full) */
PpPanel       *pp_stand_into   (const PpPanel      *panel,
                                const char * const *placements,
                                const char         *fused,
                                GError            **error);

G_END_DECLS
