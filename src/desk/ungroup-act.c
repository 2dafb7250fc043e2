/* ungroup-act.c: the chosen pieces out of their groups.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/acts.h"

#include "panel/edit.h"
#include "panel/i18n.h"

static gboolean
can (const PpChosenFacts *chosen)
{
  return chosen->has_grouped;
}

static PpPanel *
ungroup (const PpPanel      *panel,
         const char * const *ids,
         GError            **error)
{
  return pp_edit_group (panel, ids, NULL, error);
}

static char *
say (const char *piece,
     guint       n)
{
  if (piece != NULL)
    return g_strdup_printf (_("Ungroup %s"), piece);
  return g_strdup_printf (ngettext ("Ungroup %u piece", "Ungroup %u pieces", n), n);
}

const PpActKind pp_ungroup_act = {
  .name = "ungroup",
  .label = N_("Ungroup"),
  .keys = { "<Control><Shift>g" },
  .section = PP_SECTION_GROUP,
  .can = can,
  .edit = ungroup,
  .say = say,
};
