/* lift-act.c: the chosen pieces past the neighbour above.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/acts.h"

#include "panel/edit.h"
#include "panel/i18n.h"

static gboolean
can (const PpChosenFacts *chosen)
{
  return chosen->can_rise;
}

static char *
say (const char *piece,
     guint       n)
{
  if (piece != NULL)
    return g_strdup_printf (_("Lift %s"), piece);
  return g_strdup_printf (ngettext ("Lift %u piece", "Lift %u pieces", n), n);
}

const PpActKind pp_lift_act = {
  .name = "lift",
  .label = N_("Lift"),
  .keys = { "<Control>Up", "<Control>KP_Up" },
  .section = PP_SECTION_STACK,
  .can = can,
  .edit = pp_edit_lift,
  .say = say,
};
