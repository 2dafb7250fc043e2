/* last-folder.c: a dialog for a file begins where the last one ended.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/last-folder.h"

#include "desk/settings.h"

/* Where files of the kind most often lie. (transfer full) */
static GFile *
guess_folder (const char *key)
{
  gboolean pictures = g_str_equal (key, PP_SETTINGS_PIECE_FOLDER);
  const char *path = g_get_user_special_dir (pictures ? G_USER_DIRECTORY_PICTURES
                                                      : G_USER_DIRECTORY_DOCUMENTS);

  if (path == NULL || !g_file_test (path, G_FILE_TEST_IS_DIR))
    path = g_get_home_dir ();
  return g_file_new_for_path (path);
}

void
pp_last_folder_offer (GtkFileChooser *chooser,
                      const char     *key,
                      GFile          *otherwise)
{
  g_autofree char *uri = pp_settings_dup_text (key);
  g_autoptr (GFile) folder = *uri != '\0' ? g_file_new_for_uri (uri) : NULL;

  /* a stick that is pulled would make the dialog complain */
  if (folder == NULL
      || g_file_query_file_type (folder, G_FILE_QUERY_INFO_NONE, NULL) != G_FILE_TYPE_DIRECTORY)
    g_set_object (&folder, otherwise);
  if (folder == NULL)
    folder = guess_folder (key);
  gtk_file_chooser_set_current_folder (chooser, folder, NULL);
}

void
pp_last_folder_keep (const char *key,
                     GFile      *file)
{
  GFileType type = g_file_query_file_type (file, G_FILE_QUERY_INFO_NONE, NULL);
  g_autoptr (GFile) folder = type == G_FILE_TYPE_DIRECTORY ? g_object_ref (file)
                                                           : g_file_get_parent (file);
  g_autofree char *uri = folder != NULL ? g_file_get_uri (folder) : NULL;

  if (uri != NULL)
    pp_settings_keep_text (key, uri);
}
