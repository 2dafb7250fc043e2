/* edit-words.c: what was done to pieces, in words, for undo and for the maker.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/edit-words.h"

#include "desk/placement-words.h"
#include "panel/i18n.h"

static char *
name_piece (const PpPanel *panel,
            const char    *id)
{
  guint index = 0;

  g_assert (pp_panel_find_placement (panel, id, &index) != NULL);
  return pp_placement_words_piece (panel, index);
}

static char *
describe_one (PpEditAct   act,
              const char *piece)
{
  switch (act)
    {
    case PP_ACT_TURN:
      return g_strdup_printf (_("Turn %s"), piece);
    case PP_ACT_MIRROR:
      return g_strdup_printf (_("Mirror %s"), piece);
    case PP_ACT_PIN:
      return g_strdup_printf (_("Let %s stay put"), piece);
    case PP_ACT_LET_GO:
      return g_strdup_printf (_("Let %s go"), piece);
    case PP_ACT_DUPLICATE:
      return g_strdup_printf (_("Duplicate %s"), piece);
    case PP_ACT_REMOVE:
      return g_strdup_printf (_("Take %s off"), piece);
    case PP_ACT_CUT:
      return g_strdup_printf (_("Cut %s"), piece);
    case PP_ACT_PASTE:
      return g_strdup_printf (_("Paste %s"), piece);
    }
  g_return_val_if_reached (NULL);
}

static char *
describe_many (PpEditAct act,
               guint     n)
{
  switch (act)
    {
    case PP_ACT_TURN:
      return g_strdup_printf (ngettext ("Turn %u piece", "Turn %u pieces", n), n);
    case PP_ACT_MIRROR:
      return g_strdup_printf (ngettext ("Mirror %u piece", "Mirror %u pieces", n), n);
    case PP_ACT_PIN:
      return g_strdup_printf (ngettext ("Let %u piece stay put", "Let %u pieces stay put", n), n);
    case PP_ACT_LET_GO:
      return g_strdup_printf (ngettext ("Let %u piece go", "Let %u pieces go", n), n);
    case PP_ACT_DUPLICATE:
      return g_strdup_printf (ngettext ("Duplicate %u piece", "Duplicate %u pieces", n), n);
    case PP_ACT_REMOVE:
      return g_strdup_printf (ngettext ("Take %u piece off", "Take %u pieces off", n), n);
    case PP_ACT_CUT:
      return g_strdup_printf (ngettext ("Cut %u piece", "Cut %u pieces", n), n);
    case PP_ACT_PASTE:
      return g_strdup_printf (ngettext ("Paste %u piece", "Paste %u pieces", n), n);
    }
  g_return_val_if_reached (NULL);
}

char *
pp_edit_words_act_kind (const PpActKind    *act,
                        const PpPanel      *panel,
                        const char * const *ids)
{
  guint n = g_strv_length ((char **) ids);
  g_autofree char *piece = NULL;

  g_return_val_if_fail (n > 0, NULL);

  if (n == 1)
    piece = name_piece (panel, ids[0]);
  return act->say (piece, n);
}

char *
pp_edit_words_act (PpEditAct           act,
                   const PpPanel      *panel,
                   const char * const *ids)
{
  guint n = g_strv_length ((char **) ids);
  g_autofree char *piece = NULL;

  g_return_val_if_fail (n > 0, NULL);

  if (n > 1)
    return describe_many (act, n);
  piece = name_piece (panel, ids[0]);
  return describe_one (act, piece);
}

char *
pp_edit_words_stay_put (const PpPanel      *panel,
                        const char * const *pinned,
                        gboolean            others)
{
  guint n = g_strv_length ((char **) pinned);
  g_autofree char *piece = NULL;

  g_return_val_if_fail (n > 0, NULL);

  if (n > 1 && others)
    return g_strdup_printf (ngettext ("%u piece stays put and was left as it is.",
                                      "%u pieces stay put and were left as they are.", n), n);
  if (n > 1)
    return g_strdup_printf (ngettext ("%u piece stays put. Let it go on its card first.",
                                      "%u pieces stay put. Let them go on their card first.", n),
                            n);
  piece = name_piece (panel, pinned[0]);
  if (others)
    return g_strdup_printf (_("%s stays put and was left as it is."), piece);
  return g_strdup_printf (_("%s stays put. Let it go on its card first."), piece);
}
