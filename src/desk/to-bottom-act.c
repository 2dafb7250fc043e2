/* to-bottom-act.c: the chosen pieces below all others.
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

static PpPanel *
to_bottom (const PpPanel      *panel,
           const char * const *ids,
           GError            **error)
{
  PpPanel *next = pp_panel_ref (panel);

  for (guint i = 0; ids[i] != NULL && next != NULL; i++)
    {
      g_autoptr (PpPanel) before = next;

      next = pp_edit_restack (before, ids[i], i, error);
    }
  return next;
}

static char *
say (const char *piece,
     guint       n)
{
  if (piece != NULL)
    return g_strdup_printf (_("Lower %s to the bottom"), piece);
  return g_strdup_printf (ngettext ("Lower %u piece to the bottom",
                                    "Lower %u pieces to the bottom", n), n);
}

const PpActKind pp_to_bottom_act = {
  .name = "to-bottom",
  .label = N_("To the bottom"),
  .keys = { "<Control><Shift>Down", "<Control><Shift>KP_Down" },
  .section = PP_SECTION_STACK,
  .can = can,
  .edit = to_bottom,
  .say = say,
};
