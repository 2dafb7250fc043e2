/* heights.h: how high each placement of a checked panel lies.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/check.h"

G_BEGIN_DECLS

/* mm over the front face, of each placement; NAN for one that floats. Free with g_free().
 * (transfer full) both. */
void pp_heights_of (const PpCheck  *check,
                    double        **bases,
                    double        **tops);

G_END_DECLS
