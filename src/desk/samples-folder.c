/* samples-folder.c: the panels to open and learn from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * They are found from where the program lies, so that it can be moved with them, and that a program
 * that is not installed finds those of its own build.
 */
#include "config.h"

#include "desk/samples-folder.h"

#include "desk/file-words.h"

#include <string.h>

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  const char * const *one = a;
  const char * const *other = b;

  return strcmp (*one, *other);
}

static GPtrArray *
list_names (GDir *dir)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, PP_PANEL_ENDING))
      g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, compare_names);
  return names;
}

static char *
find_folder (void)
{
  g_autofree char *program = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *place = program != NULL ? g_path_get_dirname (program) : g_strdup ("");
  g_autofree char *beside = g_build_filename (place, "..", "share", "petalpane", "samples", NULL);

  if (g_str_has_suffix (place, G_DIR_SEPARATOR_S "src" G_DIR_SEPARATOR_S "desk"))
    return g_build_filename (place, "..", "..", "samples", NULL);
  if (g_file_test (beside, G_FILE_TEST_IS_DIR))
    return g_steal_pointer (&beside);
  return g_strdup (PP_DATA_DIR "/samples");
}

GPtrArray *
pp_samples_folder_list (void)
{
  GPtrArray *files = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree char *folder = find_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) names = dir != NULL ? list_names (dir) : g_ptr_array_new ();

  for (guint i = 0; i < names->len; i++)
    g_ptr_array_add (files, g_file_new_build_filename (folder, g_ptr_array_index (names, i), NULL));
  return files;
}
