/* nagging.h: what is better left unsaid while the first few pieces go down.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Values in, value out; knows no widget. Sheets and the command line say everything always.
 */
#pragma once

#include "check/finding.h"

G_BEGIN_DECLS

/* From this many pieces on the glass on, everything is said. */
#define PP_NAGGING_FEW 5

/* TRUE while the panel is only just begun and the finding is one that the next pieces may well
 * put right by themselves, so that saying it would nag. */
gboolean pp_finding_waits (const PpFinding *finding,
                           const PpPanel   *panel);

G_END_DECLS
