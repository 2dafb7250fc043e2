/* samples-folder.c: the panels to open and learn from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
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

GPtrArray *
pp_samples_folder_list (void)
{
  static const char * const folders[] = { PP_DATA_DIR "/samples", PP_SOURCE_SAMPLES_DIR };
  GPtrArray *files = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < G_N_ELEMENTS (folders) && files->len == 0; i++)
    {
      g_autoptr (GDir) dir = g_dir_open (folders[i], 0, NULL);
      g_autoptr (GPtrArray) names = dir != NULL ? list_names (dir) : g_ptr_array_new ();

      for (guint k = 0; k < names->len; k++)
        g_ptr_array_add (files, g_file_new_build_filename (folders[i],
                                                           g_ptr_array_index (names, k), NULL));
    }
  return files;
}
