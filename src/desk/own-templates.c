/* own-templates.c: the maker's own templates.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/own-templates.h"

#include "advise/again.h"
#include "desk/file-words.h"
#include "desk/panel-files.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "panel/i18n.h"

#include <glib/gstdio.h>

/* In the file name encoding. (transfer full) */
static char *
get_folder (void)
{
  return g_build_filename (g_get_user_data_dir (), "petalpane", "templates", NULL);
}

GPtrArray *
pp_own_templates_list (void)
{
  g_autofree char *folder = get_folder ();

  return pp_panel_files_list (folder);
}

char *
pp_own_templates_get_state (void)
{
  g_autoptr (GPtrArray) files = pp_own_templates_list ();
  GString *state = g_string_new (NULL);

  for (guint i = 0; i < files->len; i++)
    {
      const char *path = g_file_peek_path (g_ptr_array_index (files, i));
      GStatBuf about = { 0 };

      g_stat (path, &about);
      g_string_append_printf (state, "%s %" G_GINT64_FORMAT ".%09" G_GINT64_FORMAT " %"
                              G_GINT64_FORMAT "\n", path, (gint64) about.st_mtim.tv_sec,
                              (gint64) about.st_mtim.tv_nsec, (gint64) about.st_size);
    }
  return g_string_free (state, FALSE);
}

/* Where a template of this name lies. (transfer full) */
static char *
find_path (const char *name)
{
  g_autofree char *folder = get_folder ();
  g_autofree char *shown = pp_file_name_suggest (name, PP_PANEL_ENDING);
  g_autofree char *base = g_filename_from_utf8 (shown, -1, NULL, NULL, NULL);

  return g_build_filename (folder, base != NULL ? base : shown, NULL);
}

static gboolean
save (const PpPanel *panel,
      const char    *path,
      GError       **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (g_file_test (path, G_FILE_TEST_EXISTS))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_EXISTS,
                           _("There is a template of that name already."));
      return FALSE;
    }
  g_mkdir_with_parents (folder, 0700); /* a failure shows in the next line */
  return pp_panel_save (panel, path, error);
}

static PpPanel *
name_panel (const PpPanel *panel,
            const char    *name)
{
  PpPanel draft = *panel;

  draft.title = name;
  draft.created = "";
  return pp_panel_new (&draft, NULL);
}

gboolean
pp_own_templates_keep (const PpPanel *panel,
                       const char    *name,
                       GError       **error)
{
  g_autoptr (PpPanel) again = NULL;
  g_autoptr (PpPanel) template = NULL;
  g_autofree char *path = NULL;

  g_return_val_if_fail (panel != NULL && name != NULL, FALSE);

  again = pp_again_new (panel);
  template = name_panel (again, name);
  path = find_path (name);
  return save (template, path, error);
}

/* First the new file, then the old one goes: whatever happens in between, nothing is lost. */
gboolean
pp_own_templates_rename (GFile       *file,
                         const char  *name,
                         GError     **error)
{
  g_autofree char *old = NULL;
  g_autofree char *path = NULL;
  g_autoptr (PpPanel) panel = NULL;
  g_autoptr (PpPanel) template = NULL;

  g_return_val_if_fail (G_IS_FILE (file) && name != NULL, FALSE);

  old = g_file_get_path (file);
  path = find_path (name);
  panel = pp_panel_load (old, NULL);
  if (panel == NULL)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_DATA,
                           _("This template cannot be read, so its name cannot be changed."));
      return FALSE;
    }
  template = name_panel (panel, name);
  if (g_str_equal (old, path))
    return pp_panel_save (template, path, error);
  return save (template, path, error) && g_file_delete (file, NULL, error);
}

gboolean
pp_own_templates_put_away (GFile *file)
{
  g_return_val_if_fail (G_IS_FILE (file), FALSE);
  return g_file_trash (file, NULL, NULL);
}

gboolean
pp_own_templates_delete (GFile   *file,
                         GError **error)
{
  g_return_val_if_fail (G_IS_FILE (file), FALSE);
  return g_file_delete (file, NULL, error);
}
