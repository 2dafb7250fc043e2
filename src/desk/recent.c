/* recent.c: the panels the maker had open last.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/recent.h"

#include "desk/file-words.h"

static gboolean
is_panel (GtkRecentInfo *info)
{
  return g_strcmp0 (gtk_recent_info_get_mime_type (info), PP_PANEL_MEDIA_TYPE) == 0
         || g_str_has_suffix (gtk_recent_info_get_uri (info), PP_PANEL_ENDING);
}

static int
compare_times (gconstpointer a,
               gconstpointer b)
{
  GDateTime *one = gtk_recent_info_get_modified ((GtkRecentInfo *) a);
  GDateTime *other = gtk_recent_info_get_modified ((GtkRecentInfo *) b);

  return g_date_time_compare (other, one);
}

GPtrArray *
pp_recent_list (GtkRecentManager *manager,
                guint             most)
{
  GPtrArray *files = g_ptr_array_new_with_free_func (g_object_unref);
  GList *items = g_list_sort (gtk_recent_manager_get_items (manager), compare_times);

  for (GList *l = items; l != NULL && files->len < most; l = l->next)
    if (is_panel (l->data))
      g_ptr_array_add (files, g_file_new_for_uri (gtk_recent_info_get_uri (l->data)));
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
  return files;
}
