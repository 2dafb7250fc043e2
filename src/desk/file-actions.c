/* file-actions.c: the actions of the window that have to do with files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/file-actions.h"

#include "desk/closing.h"
#include "desk/earlier-dialog.h"
#include "desk/exporting.h"
#include "desk/opening.h"
#include "desk/outside-change.h"
#include "desk/pages.h"
#include "desk/saving.h"
#include "desk/typing.h"

static void
open_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       window)
{
  pp_opening_choose (window);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  pp_saving_run_finish (result);
}

static void
save_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       window)
{
  pp_typing_finish (window);
  pp_saving_run_async (window, FALSE, saved_cb, NULL);
}

static void
save_as_cb (GSimpleAction *action,
            GVariant      *parameter,
            gpointer       window)
{
  pp_typing_finish (window);
  pp_saving_run_async (window, TRUE, saved_cb, NULL);
}

static void
earlier_saves_cb (GSimpleAction *action,
                  GVariant      *parameter,
                  gpointer       window)
{
  pp_earlier_dialog_show (window);
}

/* Elsewhere the sheets are shown first, so that is seen what will be printed, and how it is
 * chosen. */
static void
do_on_sheets (PpWindow   *window,
              const char *action)
{
  if (g_strcmp0 (pp_window_get_page_name (window), PP_PAGE_SHEETS) == 0)
    gtk_widget_activate_action (pp_window_get_page (window), action, NULL);
  else
    g_action_group_activate_action (G_ACTION_GROUP (window), "page",
                                    g_variant_new_string (PP_PAGE_SHEETS));
}

static void
export_sheets_cb (GSimpleAction *action,
                  GVariant      *parameter,
                  gpointer       window)
{
  do_on_sheets (window, "page.export");
}

static void
export_picture_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       window)
{
  pp_typing_finish (window);
  pp_exporting_picture (window);
}

static void
print_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       window)
{
  do_on_sheets (window, "page.print");
}

static void
close_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       window)
{
  gtk_window_close (window);
}

static const GActionEntry actions[] = {
  { "open", open_cb },
  { "save", save_cb },
  { "save-as", save_as_cb },
  { "earlier-saves", earlier_saves_cb },
  { "export-sheets", export_sheets_cb },
  { "export-picture", export_picture_cb },
  { "print", print_cb },
  { "close", close_cb },
};

static const struct
{
  const char *action;
  const char *key;
  gboolean    needs_document;
} table[] = {
  { "open", "<Control>o", FALSE },
  { "save", "<Control>s", TRUE },
  { "save-as", "<Control><Shift>s", TRUE },
  { "earlier-saves", NULL, TRUE },
  { "export-sheets", "<Control>e", TRUE },
  { "export-picture", "<Control><Shift>p", TRUE },
  { "print", "<Control>p", TRUE },
  { "close", "<Control>w", FALSE },
};

void
pp_file_actions_add (PpWindow *window)
{
  g_return_if_fail (PP_IS_WINDOW (window));

  g_action_map_add_action_entries (G_ACTION_MAP (window), actions, G_N_ELEMENTS (actions),
                                   window);
  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if (table[i].needs_document)
      pp_window_tie_to_document (window, table[i].action);
  pp_closing_guard (window);
  pp_outside_change_follow (window);
}

void
pp_file_actions_set_keys (GtkApplication *application)
{
  g_return_if_fail (GTK_IS_APPLICATION (application));

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autofree char *name = g_strconcat ("win.", table[i].action, NULL);

      gtk_application_set_accels_for_action (application, name,
                                             (const char *[]) { table[i].key, NULL });
    }
}

void
pp_file_actions_open (PpWindow *window,
                      GFile    *file,
                      gboolean  as_copy)
{
  g_return_if_fail (PP_IS_WINDOW (window) && G_IS_FILE (file));
  pp_opening_open (window, file, as_copy);
}

void
pp_file_actions_quit (GtkApplication *application)
{
  g_return_if_fail (GTK_IS_APPLICATION (application));
  pp_closing_quit (application);
}
