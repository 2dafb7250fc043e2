/* edit-tray.c: edits of the tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/edit-private.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"

GPtrArray *
pp_edit_copy_tray (const PpPanel *panel)
{
  return pp_records_copy (panel->tray, (PpRecordRef) pp_piece_ref,
                          (GDestroyNotify) pp_piece_unref);
}

static PpPanel *
with_tray (const PpPanel *panel,
           GPtrArray     *tray,
           GError       **error)
{
  PpPanel draft = *panel;

  draft.tray = tray;
  return pp_panel_new (&draft, error);
}

PpPanel *
pp_edit_add_piece (const PpPanel *panel,
                   const PpPiece *piece,
                   char         **id,
                   GError       **error)
{
  g_autoptr (GPtrArray) tray = pp_edit_copy_tray (panel);
  g_autofree char *new_id = pp_edit_is_taken (panel, piece->id)
                              ? pp_edit_new_id (panel, "piece-") : g_strdup (piece->id);
  PpPiece draft = *piece;
  PpPiece *added;
  PpPanel *next;

  draft.id = new_id;
  added = pp_piece_new (&draft, error);
  if (added == NULL)
    return NULL;
  g_ptr_array_add (tray, added);
  next = with_tray (panel, tray, error);
  if (next != NULL && id != NULL)
    *id = g_steal_pointer (&new_id);
  return next;
}

PpPanel *
pp_edit_set_piece (const PpPanel *panel,
                   const PpPiece *piece,
                   GError       **error)
{
  g_autoptr (GPtrArray) tray = NULL;
  guint index;

  if (pp_panel_find_piece (panel, piece->id, &index) == NULL)
    return pp_edit_refuse_unknown (piece->id, error);
  tray = pp_edit_copy_tray (panel);
  pp_piece_unref (g_ptr_array_index (tray, index));
  tray->pdata[index] = pp_piece_ref (piece);
  return with_tray (panel, tray, error);
}

PpPanel *
pp_edit_remove_piece (const PpPanel *panel,
                      const char    *piece,
                      GError       **error)
{
  g_autoptr (GPtrArray) tray = NULL;
  guint index;

  if (pp_panel_find_piece (panel, piece, &index) == NULL)
    return pp_edit_refuse_unknown (piece, error);
  if (pp_panel_count_placed (panel, piece) > 0)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_REFERENCE,
                   _("“%s” lies on the glass; take it off first."), piece);
      return NULL;
    }
  tray = pp_edit_copy_tray (panel);
  g_ptr_array_remove_index (tray, index);
  return with_tray (panel, tray, error);
}
