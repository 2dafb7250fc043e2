/* clearance.h: the room between one settled piece and another above it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/check.h"

G_BEGIN_DECLS

/* mm: the least of the upper's underside less the lower's top over the cells that both cover, both
 * as settled. Cells of a stem inside the fused part in whose pocket it stands are not common.
 * INFINITY without a common cell. Gives any value below `enough` as soon as one is found.
 * `lower` and `upper` are placements that do not float. */
double pp_clearance_between (const PpCheck *check,
                             guint          lower,
                             guint          upper,
                             double         enough);

G_END_DECLS
