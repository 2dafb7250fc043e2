/* changes.h: where what lies on the glass differs between two checks.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/settle.h"

G_BEGIN_DECLS

typedef struct
{
  const PpScene *scene;
  PpRest       **rests; /* of its bodies */
} PpSettled;

/* Whether all is the same but placements, tray, plan, words and what is kept quiet: glass, fused
 * parts, holes, wire, glue, where the panel hangs, limits. */
gboolean pp_panel_has_same_ground (const PpPanel   *a,
                                   const PpPanel   *b);

/* Boxes in the panel frame; outside them every outline lies in the same place, lets the same light
 * through and floats or not as before. Both panels must have the same ground. (transfer full) */
GArray  *pp_changes_find          (const PpSettled *before,
                                   const PpSettled *now);
gboolean pp_changes_meet          (GArray          *changes,
                                   PpBox            box);

G_END_DECLS
