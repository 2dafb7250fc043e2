/* mass-entry.h: a field for what a piece weighs on the kitchen scales.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "32 g", "1 1/2 oz", "0.2 lb": the figure alone is g, or oz where the maker works in inches. A
 * figure entry (figure-entry.h) whose value is g.
 */
#pragma once

#include "desk/figure-entry.h"
#include "panel/panel.h"

G_BEGIN_DECLS

#define PP_TYPE_MASS_ENTRY (pp_mass_entry_get_type ())
G_DECLARE_FINAL_TYPE (PpMassEntry, pp_mass_entry, PP, MASS_ENTRY, PpFigureEntry)

/* Grams until set. */
void pp_mass_entry_set_units (PpMassEntry *self,
                              PpUnits      units);

G_END_DECLS
