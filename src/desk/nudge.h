/* nudge.h: how far an arrow key moves something.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* mm: 1 mm or 1/16 in, and with Shift 10 mm or 1/2 in. */
static inline double
pp_nudge_step (PpUnits  units,
               gboolean is_large)
{
  if (units == PP_UNITS_INCH)
    return is_large ? PP_MM_PER_INCH / 2 : PP_MM_PER_INCH / 16;
  return is_large ? 10 : 1;
}

G_END_DECLS
