/* lower-act.c: the chosen pieces past the neighbour below.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/acts.h"

#include "panel/edit.h"
#include "panel/i18n.h"

static gboolean
can (const PpChosenFacts *chosen)
{
  return chosen->can_sink;
}

static char *
say (const char *piece,
     guint       n)
{
  if (piece != NULL)
    return g_strdup_printf (_("Lower %s"), piece);
  return g_strdup_printf (ngettext ("Lower %u piece", "Lower %u pieces", n), n);
}

const PpActKind pp_lower_act = {
  .name = "lower",
  .label = N_("Lower"),
  .keys = { "<Control>Down", "<Control>KP_Down" },
  .section = PP_SECTION_STACK,
  .can = can,
  .edit = pp_edit_lower,
  .say = say,
};
