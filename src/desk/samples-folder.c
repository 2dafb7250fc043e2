/* samples-folder.c: the panels to open and learn from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * They are found from where the program lies, so that it can be moved with them, and that a program
 * that is not installed finds those of its own build.
 */
#include "config.h"

#include "desk/samples-folder.h"

#include "desk/panel-files.h"

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
  g_autofree char *folder = find_folder ();

  return pp_panel_files_list (folder);
}
