/* count-entry.h: a field for a whole number.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A figure entry (figure-entry.h). A step is 1, with Shift 10.
 */
#pragma once

#include "desk/figure-entry.h"

G_BEGIN_DECLS

#define PP_TYPE_COUNT_ENTRY (pp_count_entry_get_type ())
G_DECLARE_FINAL_TYPE (PpCountEntry, pp_count_entry, PP, COUNT_ENTRY, PpFigureEntry)

G_END_DECLS
