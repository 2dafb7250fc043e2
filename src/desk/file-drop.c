/* file-drop.c: panels let go over the window, as from a file manager.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/file-drop.h"

#include "desk/file-actions.h"

static gboolean
drop_cb (GtkDropTarget *target,
         const GValue  *value,
         double         x,
         double         y,
         PpWindow      *window)
{
  g_autoptr (GSList) files = gdk_file_list_get_files (g_value_get_boxed (value));

  for (GSList *l = files; l != NULL; l = l->next)
    pp_file_actions_open (window, l->data, FALSE);
  return files != NULL;
}

void
pp_file_drop_add (PpWindow *window)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), window);
  gtk_widget_add_controller (GTK_WIDGET (window), GTK_EVENT_CONTROLLER (target));
}
