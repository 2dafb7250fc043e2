/* file-state.c: what a window knows of its panel's file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/file-state.h"

#define STATE_KEY "pp-file-state"

static void
free_state (gpointer data)
{
  PpFileState *state = data;

  g_object_unref (state->watch);
  g_ptr_array_unref (state->waiting);
  g_free (state);
}

PpFileState *
pp_file_state_of (PpWindow *window)
{
  PpFileState *state = g_object_get_data (G_OBJECT (window), STATE_KEY);

  if (state != NULL)
    return state;
  state = g_new0 (PpFileState, 1);
  state->watch = pp_watch_new ();
  state->waiting = g_ptr_array_new_with_free_func (g_object_unref);
  g_object_set_data_full (G_OBJECT (window), STATE_KEY, state, free_state);
  return state;
}

void
pp_file_state_set (PpWindow   *window,
                   const char *content)
{
  PpDocument *document = pp_window_get_document (window);
  GFile *file = document != NULL ? pp_document_get_file (document) : NULL;

  pp_watch_set (pp_file_state_of (window)->watch, file, content);
}

gboolean
pp_file_state_is_alive (PpWindow *window)
{
  return gtk_window_get_application (GTK_WINDOW (window)) != NULL;
}

PpWindow *
pp_file_state_find (GtkApplication *application,
                    GFile          *file)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    {
      PpDocument *document = PP_IS_WINDOW (l->data) ? pp_window_get_document (l->data) : NULL;
      GFile *other = document != NULL ? pp_document_get_file (document) : NULL;

      if (other != NULL && g_file_equal (file, other))
        return l->data;
    }
  return NULL;
}
