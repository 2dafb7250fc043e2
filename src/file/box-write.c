/* box-write.c: pieces as a box file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "file/box-write.h"

#include "file/json-scan.h"
#include "file/records-write.h"
#include "file/save.h"
#include "panel/i18n.h"
#include "panel/panel.h"

GString *
pp_box_write (GPtrArray *pieces)
{
  g_autoptr (PpJsonWriter) w = pp_json_writer_new ();

  pp_json_write_begin_object (w, NULL);
  pp_json_write_string (w, "format", "petalpane-box");
  pp_json_write_integer (w, "version", 1);
  pp_json_write_begin_array (w, "pieces");
  for (guint i = 0; i < pieces->len; i++)
    pp_write_piece (w, NULL, g_ptr_array_index (pieces, i));
  pp_json_write_end_array (w);
  pp_json_write_end_object (w);
  return pp_json_writer_finish (w);
}

gboolean
pp_box_save (GPtrArray   *pieces,
             const char  *path,
             GError     **error)
{
  g_autoptr (GString) text = pp_box_write (pieces);

  if (!pp_json_was_written (text, error))
    return FALSE;
  if (pieces->len > PP_PANEL_MAX_TRAY || text->len > PP_JSON_MAX_BYTES)
    {
      g_set_error (error, PP_FILE_ERROR, PP_FILE_ERROR_LIMIT,
                   _("A box holds %d pieces and %d MiB at the most; put some into a box file of "
                     "their own first."),
                   PP_PANEL_MAX_TRAY, PP_JSON_MAX_BYTES / (1024 * 1024));
      return FALSE;
    }
  return pp_file_save (path, text->str, text->len, error);
}
