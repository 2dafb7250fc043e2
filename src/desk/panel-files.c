/* panel-files.c: the panel files of a folder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/panel-files.h"

#include "desk/file-words.h"

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  const char * const *one = a;
  const char * const *other = b;

  return g_utf8_collate (*one, *other);
}

static GPtrArray *
list_names (const char *folder)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (*name != '.' && g_str_has_suffix (name, PP_PANEL_ENDING))
      g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, compare_names);
  return names;
}

GPtrArray *
pp_panel_files_list (const char *folder)
{
  g_autoptr (GPtrArray) names = NULL;
  GPtrArray *files;

  g_return_val_if_fail (folder != NULL, NULL);

  names = list_names (folder);
  files = g_ptr_array_new_full (names->len, g_object_unref);
  for (guint i = 0; i < names->len; i++)
    g_ptr_array_add (files, g_file_new_build_filename (folder, g_ptr_array_index (names, i), NULL));
  return files;
}
