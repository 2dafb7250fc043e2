/* hanging-facts.h: what is known of how the panel hangs, in figures.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/check.h"
#include "sheet/facts.h"

G_BEGIN_DECLS

/* Weight, wire, hook, lean, as far as they are known. */
void     pp_hanging_facts_add (PpFacts         *facts,
                               const PpCheck   *check,
                               PpUnits          units);
/* Whether a finding is about holes, wire or hook and not about what hides them. */
gboolean pp_hanging_is_about  (const PpFinding *finding);

G_END_DECLS
