/* weight.h: what a search minds, and by how much, in the unit of the costs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Panels are compared in the order of goal.h, which says better or worse and not by how much. A
 * search that only took what is better at once would stand still before every wire that needs two
 * pieces to hide it, so between panels it goes by a sum: a fault weighs more than any sensible
 * move, and what is half cured weighs less.
 */
#pragma once

#include "panel/panel.h"
#include "panel/tolerance.h"

G_BEGIN_DECLS

#define PP_WEIGHT_FAULT 200.0
#define PP_WEIGHT_CAUTION 40.0
#define PP_WEIGHT_MM 4.0      /* a mm of wire in view */
#define PP_WEIGHT_VIEW 400.0  /* the whole wire in view from aslant */
#define PP_WEIGHT_COST 0.5    /* of what the change costs */
#define PP_WEIGHT_ADDED 60.0  /* a piece more from the tray: a maker would rather move some */

/* mm exposed, mm barely hidden, share exposed in the worst view. */
static inline double
pp_weigh_wire (const PpPanel *panel,
               double         exposed,
               double         barely,
               double         worst)
{
  double sum = PP_WEIGHT_MM * exposed + PP_WEIGHT_VIEW * worst;

  if (exposed > pp_panel_get_limit (panel, PP_LIMIT_EXPOSED_FAULT) + PP_TIE)
    return sum + PP_WEIGHT_FAULT;
  if (exposed > pp_panel_get_limit (panel, PP_LIMIT_EXPOSED_CAUTION) + PP_TIE
      || barely > pp_panel_get_limit (panel, PP_LIMIT_EXPOSED_CAUTION) + PP_TIE)
    sum += PP_WEIGHT_CAUTION + fmin (barely, PP_WEIGHT_CAUTION);
  return sum;
}

/* A knot, or the index-th hole, by its shares hidden. */
static inline double
pp_weigh_disc (const PpPanel *panel,
               guint          index,
               double         share,
               double         barely)
{
  double limit = pp_panel_get_limit (panel, PP_LIMIT_KNOT_SHARE);

  if (!pp_wire_ends_in (panel->wire, pp_panel_hole (panel, index)->id))
    return share < limit - PP_TIE ? PP_WEIGHT_CAUTION * (1 + limit - share) : 0;
  if (share < limit - PP_TIE)
    return PP_WEIGHT_FAULT * (1 + limit - share);
  return barely < limit - PP_TIE ? PP_WEIGHT_CAUTION * (1 + limit - barely) : 0;
}

G_END_DECLS
