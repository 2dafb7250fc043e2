/* shares.h: how much of each dot at a border is glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to parted.
 */
#pragma once

#include "piece/ground.h"

G_BEGIN_DECLS

/* From 0 to 1, 1/2 being the border, which lies about where that of `glass`, 1 or 0 for each dot,
 * does. (transfer full) */
float *pp_shares_find (const PpGround *ground,
                       const guchar   *glass);

G_END_DECLS
