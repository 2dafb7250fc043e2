/* nudge.h: which way and how far an arrow key moves something.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

#include <gtk/gtk.h>

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

/* One unit, y downward; FALSE for a key that is no arrow. */
static inline gboolean
pp_nudge_find_way (guint    key,
                   PpPoint *way)
{
  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      *way = (PpPoint) { -1, 0 };
      return TRUE;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      *way = (PpPoint) { 1, 0 };
      return TRUE;
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      *way = (PpPoint) { 0, -1 };
      return TRUE;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      *way = (PpPoint) { 0, 1 };
      return TRUE;
    default:
      return FALSE;
    }
}

G_END_DECLS
