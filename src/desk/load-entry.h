/* load-entry.h: a field for a load, as packets of wire print it: what may hang from it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "9 kg", "20 lb", "90 N": the figure alone is kg, or lb where the maker works in inches. A figure
 * entry (figure-entry.h) whose value is N.
 */
#pragma once

#include "desk/figure-entry.h"
#include "panel/panel.h"

G_BEGIN_DECLS

#define PP_TYPE_LOAD_ENTRY (pp_load_entry_get_type ())
G_DECLARE_FINAL_TYPE (PpLoadEntry, pp_load_entry, PP, LOAD_ENTRY, PpFigureEntry)

/* Kilograms until set. */
void pp_load_entry_set_units (PpLoadEntry *self,
                              PpUnits      units);

G_END_DECLS
