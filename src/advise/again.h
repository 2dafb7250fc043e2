/* again.h: another panel like this one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* So many of a tray piece. */
typedef struct
{
  guint piece; /* index in the tray */
  guint count; /* more than 0 */
} PpToMake;

/* The same panel with nothing glued, knotted or drilled and nothing in the log, under a title of
 * its own. (transfer full) */
PpPanel *pp_again_new          (const PpPanel *panel);
/* PpToMake, in the order of the tray: what such a panel needs and the tray does not hold besides
 * what lies on this one, which keeps its pieces. (transfer full) */
GArray  *pp_again_list_to_make (const PpPanel *panel);

G_END_DECLS
