/* group-act.c: the chosen pieces into a group of their own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/acts.h"

#include "panel/edit.h"
#include "panel/i18n.h"

static gboolean
can (const PpChosenFacts *chosen)
{
  return chosen->n > 1 && !chosen->is_group;
}

static PpPanel *
group (const PpPanel      *panel,
       const char * const *ids,
       GError            **error)
{
  g_autofree char *name = pp_edit_new_group_name (panel);

  return pp_edit_group (panel, ids, name, error);
}

static char *
say (const char *piece,
     guint       n)
{
  if (piece != NULL)
    return g_strdup_printf (_("Group %s"), piece);
  return g_strdup_printf (ngettext ("Group %u piece", "Group %u pieces", n), n);
}

const PpActKind pp_group_act = {
  .name = "group",
  .label = N_("Group"),
  .keys = { "<Control>g" },
  .section = PP_SECTION_GROUP,
  .can = can,
  .edit = group,
  .say = say,
};
