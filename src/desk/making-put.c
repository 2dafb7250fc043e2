/* making-put.c: what was made at the piece bench, put in the tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/making-put.h"

#include "desk/making-ways.h"
#include "desk/tray-words.h"
#include "panel/edit.h"
#include "panel/i18n.h"

static char *
name_act (const GPtrArray *pieces,
          const char      *id)
{
  const PpPiece *first = pieces->pdata[0];

  if (pieces->len > 1)
    return g_strdup_printf (ngettext ("Put %u piece in the tray", "Put %u pieces in the tray",
                                      pieces->len), pieces->len);
  /* Translators: an act in the list of undo; the name of a piece. */
  return g_strdup_printf (id != NULL ? _("Change %s") : _("Put %s in the tray"),
                          pp_tray_words_name (first));
}

/* Under the id that it has or is to have. */
static PpPanel *
put_one (const PpPiece *piece,
         const char    *id,
         const PpPanel *panel,
         GError       **error)
{
  PpPiece draft = *piece;
  g_autoptr (PpPiece) named = NULL;

  if (id != NULL)
    {
      draft.id = id;
      draft.box = pp_panel_find_piece (panel, id, NULL)->box;
    }
  named = pp_piece_new (&draft, error);
  if (named == NULL)
    return NULL;
  return id != NULL ? pp_edit_set_piece (panel, named, error)
                    : pp_edit_add_piece (panel, named, NULL, error);
}

PpPanel *
pp_making_put (const PpMaking  *making,
               const PpPiece   *piece,
               const char      *id,
               const PpPanel   *panel,
               char           **label,
               GError         **error)
{
  const PpMakingWay *way = pp_making_way_get (making->way);
  g_autoptr (GPtrArray) pieces = NULL;
  g_autoptr (PpPanel) next = NULL;

  if (way->finish != NULL)
    pieces = way->finish (making, panel->units, id == NULL, error);
  else
    {
      pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
      g_ptr_array_add (pieces, pp_piece_ref ((PpPiece *) piece));
    }
  for (guint i = 0; pieces != NULL && i < pieces->len; i++)
    {
      g_autoptr (PpPanel) before = g_steal_pointer (&next);

      next = put_one (pieces->pdata[i], id, before != NULL ? before : panel, error);
      if (next == NULL)
        return NULL;
    }
  if (next != NULL)
    *label = name_act (pieces, id);
  return g_steal_pointer (&next);
}
