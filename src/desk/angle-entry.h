/* angle-entry.h: a field for a turn in degrees, to a tenth.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A figure entry (figure-entry.h). A step is 1 degree, with Shift 15 degrees.
 */
#pragma once

#include "desk/figure-entry.h"

G_BEGIN_DECLS

#define PP_TYPE_ANGLE_ENTRY (pp_angle_entry_get_type ())
G_DECLARE_FINAL_TYPE (PpAngleEntry, pp_angle_entry, PP, ANGLE_ENTRY, PpFigureEntry)

G_END_DECLS
