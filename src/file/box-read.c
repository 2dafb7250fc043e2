/* box-read.c: the pieces of a box file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/box-read.h"

#include "file/head-read.h"
#include "file/records-read.h"
#include "panel/i18n.h"
#include "panel/panel.h"

static void
refuse_same_id (PpReader  *reader,
                GPtrArray *pieces)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < pieces->len; i++)
    {
      const PpPiece *piece = g_ptr_array_index (pieces, i);
      g_autofree char *path = g_strdup_printf ("pieces[%u].id", i);

      if (!g_hash_table_add (ids, (gpointer) piece->id))
        pp_reader_complain (reader, PP_FILE_ERROR_VALUE, path,
                            _("the id “%s” stands twice in this box."), piece->id);
    }
}

GPtrArray *
pp_box_read (GBytes  *bytes,
             GError **error)
{
  g_autoptr (JsonNode) root = pp_json_read (bytes, error);
  g_autoptr (GPtrArray) pieces = NULL;
  PpReader reader = { NULL };
  PpMembers members;

  if (root == NULL)
    return NULL;
  pp_members_init (&members, &reader, root, "");
  pp_read_head (&members, "petalpane-box");
  (void) pp_members_get (&members, "pieces", PP_MUST_HAVE);
  pieces = pp_read_list (&members, "pieces", PP_PANEL_MAX_TRAY, (PpReadFunc) pp_read_piece,
                         (GDestroyNotify) pp_piece_unref);
  refuse_same_id (&reader, pieces);
  pp_members_clear (&members);
  if (reader.error == NULL)
    return g_steal_pointer (&pieces);
  g_propagate_error (error, reader.error);
  return NULL;
}
