/* last-folder.c: a dialog for a file begins where the last one ended.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/last-folder.h"

#include "desk/settings.h"

gboolean
pp_last_folder_offer (GtkFileChooser *chooser,
                      const char     *key)
{
  g_autofree char *uri = pp_settings_dup_text (key);
  g_autoptr (GFile) folder = *uri != '\0' ? g_file_new_for_uri (uri) : NULL;

  /* a stick that is pulled would make the dialog complain */
  return folder != NULL
         && g_file_query_file_type (folder, G_FILE_QUERY_INFO_NONE, NULL) == G_FILE_TYPE_DIRECTORY
         && gtk_file_chooser_set_current_folder (chooser, folder, NULL);
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
