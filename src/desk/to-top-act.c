/* to-top-act.c: the chosen pieces above all others.
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

/* From the last down, so that those in place already do not move. */
static PpPanel *
to_top (const PpPanel      *panel,
        const char * const *ids,
        GError            **error)
{
  PpPanel *next = pp_panel_ref (panel);
  guint n = g_strv_length ((char **) ids);

  for (guint i = n; i-- > 0 && next != NULL;)
    {
      g_autoptr (PpPanel) before = next;

      next = pp_edit_restack (before, ids[i], before->placements->len - n + i, error);
    }
  return next;
}

static char *
say (const char *piece,
     guint       n)
{
  if (piece != NULL)
    return g_strdup_printf (_("Lift %s to the top"), piece);
  return g_strdup_printf (ngettext ("Lift %u piece to the top", "Lift %u pieces to the top", n), n);
}

const PpActKind pp_to_top_act = {
  .name = "to-top",
  .label = N_("To the top"),
  .keys = { "<Control><Shift>Up", "<Control><Shift>KP_Up" },
  .section = PP_SECTION_STACK,
  .can = can,
  .edit = to_top,
  .say = say,
};
