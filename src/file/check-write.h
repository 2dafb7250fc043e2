/* check-write.h: the check of a panel as JSON.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/plan.h"

G_BEGIN_DECLS

/* Every answer, numbers unrounded. `plan` (nullable) is of this check; without it `order` is left
 * out. `more` (nullable): findings beside those of check and plan. (transfer full) */
GString *pp_check_write (const PpCheck *check,
                         const PpPlan  *plan,
                         GPtrArray     *more);

G_END_DECLS
