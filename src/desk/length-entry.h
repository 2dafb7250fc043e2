/* length-entry.h: a field for a length as makers write it, in either unit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "8 1/2", "8-1/2", "216 mm", "5/16\"": the figure alone is in the field's unit, which stands
 * behind it. A figure entry (figure-entry.h) whose value is mm. A step is 1 mm (1/16 in), with
 * Shift 10 mm (1/2 in).
 */
#pragma once

#include "desk/figure-entry.h"
#include "panel/panel.h"

G_BEGIN_DECLS

#define PP_TYPE_LENGTH_ENTRY (pp_length_entry_get_type ())
G_DECLARE_FINAL_TYPE (PpLengthEntry, pp_length_entry, PP, LENGTH_ENTRY, PpFigureEntry)

/* Millimetres until set. What stands typed in the field stays. */
void pp_length_entry_set_units (PpLengthEntry *self,
                                PpUnits        units);

G_END_DECLS
