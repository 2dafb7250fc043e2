/* findings-list.h: findings with their marks, one under another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/finding.h"
#include "sheet/book.h"

G_BEGIN_DECLS

/* Which of the findings of check, plan and art are shown. */
typedef gboolean (*PpFindingFilter) (const PpFinding *finding);

/* Under a heading; nothing at all if there is none. Returns the y below. */
double pp_findings_list_draw (PpBook          *book,
                              const char      *heading,
                              PpFindingFilter  filter,
                              double           size,
                              double           y);

G_END_DECLS
