/* panel-write.c: a panel as its file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/panel-write.h"

#include "file/file-error.h"
#include "file/json-scan.h"
#include "file/json-values.h"
#include "file/records-write.h"
#include "file/save.h"
#include "panel/i18n.h"

static void
write_titles (PpJsonWriter  *w,
              const PpPanel *panel)
{
  pp_json_write_string (w, "title", panel->title);
  pp_json_write_string (w, "maker", panel->maker);
  pp_json_write_string (w, "note", panel->note);
  pp_json_write_string (w, "created", panel->created);
  pp_json_write_string (w, "units", pp_units_get_name (panel->units));
}

typedef void (*WriteFunc) (PpJsonWriter *w,
                           const char   *name,
                           gconstpointer record);

static void
write_list (PpJsonWriter *w,
            const char   *name,
            GPtrArray    *list,
            WriteFunc     write)
{
  pp_json_write_begin_array (w, name);
  for (guint i = 0; i < list->len; i++)
    write (w, NULL, g_ptr_array_index (list, i));
  pp_json_write_end_array (w);
}

static void
write_plan (PpJsonWriter  *w,
            const PpPanel *panel)
{
  if (panel->plan == NULL)
    {
      pp_json_write_null (w, "plan");
      return;
    }
  pp_json_write_begin_object (w, "plan");
  pp_json_write_strings (w, "jobs", panel->plan);
  pp_json_write_members (w, panel->plan_extra);
  pp_json_write_end_object (w);
}

static void
write_limits (PpJsonWriter  *w,
              const PpPanel *panel)
{
  pp_json_write_begin_object (w, "limits");
  for (PpLimit limit = 0; limit < PP_N_LIMITS; limit++)
    pp_json_write_number_if_set (w, pp_limit_get_key (limit), panel->limits.value[limit]);
  pp_json_write_members (w, panel->limits_extra);
  pp_json_write_end_object (w);
}

/* What the file alone would give needs no words: an id given and gone again does. */
static void
write_next_id (PpJsonWriter  *w,
               const PpPanel *panel)
{
  PpPanel draft = *panel;
  g_autoptr (PpPanel) alone = NULL;

  draft.next_id = 0;
  alone = pp_panel_new (&draft, NULL);
  if (alone == NULL || panel->next_id > alone->next_id)
    pp_json_write_integer (w, "next_id", panel->next_id);
}

GString *
pp_panel_write (const PpPanel *panel)
{
  g_autoptr (PpJsonWriter) w = pp_json_writer_new ();

  pp_json_write_begin_object (w, NULL);
  pp_json_write_string (w, "format", "petalpane-panel");
  pp_json_write_integer (w, "version", 1);
  write_titles (w, panel);
  pp_write_background (w, "background", panel->background);
  write_list (w, "fused", panel->fused, (WriteFunc) pp_write_fused);
  write_list (w, "holes", panel->holes, (WriteFunc) pp_write_hole);
  pp_write_wire (w, "wire", panel->wire);
  pp_write_display (w, "display", panel->display);
  pp_write_adhesive (w, "adhesive", panel->adhesive);
  write_list (w, "tray", panel->tray, (WriteFunc) pp_write_piece);
  write_list (w, "placements", panel->placements, (WriteFunc) pp_write_placement);
  write_plan (w, panel);
  write_list (w, "log", panel->log, (WriteFunc) pp_write_log_entry);
  write_limits (w, panel);
  write_list (w, "quiet", panel->quiet, (WriteFunc) pp_write_quiet);
  write_next_id (w, panel);
  pp_json_write_members (w, panel->extra);
  pp_json_write_end_object (w);
  return pp_json_writer_finish (w);
}

GString *
pp_panel_write_readable (const PpPanel *panel,
                         GError       **error)
{
  g_autoptr (GString) text = pp_panel_write (panel);

  if (!pp_json_was_written (text, error))
    return NULL;
  if (text->len > PP_JSON_MAX_BYTES)
    {
      g_set_error (error, PP_FILE_ERROR, PP_FILE_ERROR_LIMIT,
                   _("This panel takes more than %d MiB and could not be opened again; take "
                     "pieces with large drawings off the tray first."),
                   PP_JSON_MAX_BYTES / (1024 * 1024));
      return NULL;
    }
  return g_steal_pointer (&text);
}

gboolean
pp_panel_save (const PpPanel *panel,
               const char    *path,
               GError       **error)
{
  g_autoptr (GString) text = pp_panel_write_readable (panel, error);

  return text != NULL && pp_file_save (path, text->str, text->len, error);
}
