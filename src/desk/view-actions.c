/* view-actions.c: zoom and how the panel is looked at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/view-actions.h"

#include "desk/pages.h"

/* Each page knows for itself what is larger on it; one without such an action has nothing to
 * zoom. */
static void
zoom_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       window)
{
  g_autofree char *name = g_strconcat ("page.", g_action_get_name (G_ACTION (action)), NULL);

  gtk_widget_activate_action (pp_window_get_page (window), name, NULL);
}

/* What one of these actions shows or hides. */
static gboolean *
find_part (PpLook     *look,
           const char *action)
{
  if (g_str_equal (action, "heights"))
    return &look->heights;
  if (g_str_equal (action, "glue"))
    return &look->glue;
  return g_str_equal (action, "groups") ? &look->groups : &look->from_behind;
}

static void
look_cb (GSimpleAction *action,
         GVariant      *state,
         gpointer       window)
{
  PpLook look = pp_canvas_get_look (pp_window_get_canvas (window));

  *find_part (&look, g_action_get_name (G_ACTION (action))) = g_variant_get_boolean (state);
  pp_canvas_set_look (pp_window_get_canvas (window), look);
  g_simple_action_set_state (action, state);
}

static void
measure_cb (GSimpleAction *action,
            GVariant      *state,
            gpointer       window)
{
  pp_canvas_set_measuring (pp_window_get_canvas (window), g_variant_get_boolean (state));
  g_simple_action_set_state (action, state);
}

static const GActionEntry entries[] = {
  { "zoom-in", zoom_cb },
  { "zoom-out", zoom_cb },
  { "zoom-fit", zoom_cb },
  { "zoom-true", zoom_cb },
  { "heights", NULL, NULL, "false", look_cb },
  { "glue", NULL, NULL, "false", look_cb },
  { "groups", NULL, NULL, "false", look_cb },
  { "from-behind", NULL, NULL, "false", look_cb },
  { "measure", NULL, NULL, "false", measure_cb },
};

/* How the panel is looked at is a matter of the dry run. */
static void
page_cb (PpWindow   *window,
         GParamSpec *pspec,
         gpointer    data)
{
  const char *page = pp_window_get_page_name (window);

  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), entries[i].name);
      gboolean is_zoom = g_action_get_state_type (action) == NULL;

      g_simple_action_set_enabled (G_SIMPLE_ACTION (action),
                                   is_zoom ? page != NULL
                                           : g_strcmp0 (page, PP_PAGE_DRY_RUN) == 0);
    }
}

/* A new document is looked at straight on. */
static void
document_cb (PpWindow   *window,
             GParamSpec *pspec,
             gpointer    data)
{
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), entries[i].name);

      if (g_action_get_state_type (action) != NULL)
        g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_boolean (FALSE));
    }
}

void
pp_view_actions_add (PpWindow *window)
{
  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  g_signal_connect (window, "notify::document", G_CALLBACK (document_cb), NULL);
  g_signal_connect (window, "notify::page-name", G_CALLBACK (page_cb), NULL);
}

void
pp_view_actions_set_keys (GtkApplication *application)
{
  static const struct
  {
    const char *action;
    const char *keys[4];
  } rows[] = {
    { "win.zoom-in", { "<Control>plus", "<Control>equal", "<Control>KP_Add", NULL } },
    { "win.zoom-out", { "<Control>minus", "<Control>KP_Subtract", NULL } },
    { "win.zoom-fit", { "<Control>0", "<Control>KP_0", NULL } },
    { "win.zoom-true", { "<Control>1", "<Control>KP_1", NULL } },
    { "win.from-behind", { "F7", NULL } },
    { "win.heights", { "F8", NULL } },
    { "win.glue", { "F9", NULL } },
    { "win.measure", { "F6", NULL } },
    { "win.groups", { "F5", NULL } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    gtk_application_set_accels_for_action (application, rows[i].action, rows[i].keys);
}
