/* view-actions.c: zoom and how the panel is looked at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/view-actions.h"

#define STEP 1.25

static void
zoom_in_cb (GSimpleAction *action,
            GVariant      *parameter,
            gpointer       window)
{
  pp_canvas_zoom_by (pp_window_get_canvas (window), STEP);
}

static void
zoom_out_cb (GSimpleAction *action,
             GVariant      *parameter,
             gpointer       window)
{
  pp_canvas_zoom_by (pp_window_get_canvas (window), 1 / STEP);
}

static void
zoom_fit_cb (GSimpleAction *action,
             GVariant      *parameter,
             gpointer       window)
{
  pp_canvas_zoom_fit (pp_window_get_canvas (window));
}

/* px a mm of the screen the window is on; 96 dots an inch where that is not known. */
static double
get_true_scale (GtkWidget *window)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (window));
  GdkMonitor *monitor = gdk_display_get_monitor_at_surface (gtk_widget_get_display (window), surface);
  GdkRectangle geometry;

  if (monitor == NULL || gdk_monitor_get_width_mm (monitor) <= 0)
    return 96 / PP_MM_PER_INCH;
  gdk_monitor_get_geometry (monitor, &geometry);
  return (double) geometry.width / gdk_monitor_get_width_mm (monitor);
}

static void
zoom_true_cb (GSimpleAction *action,
              GVariant      *parameter,
              gpointer       window)
{
  pp_canvas_zoom_to (pp_window_get_canvas (window), get_true_scale (window));
}

static void
heights_cb (GSimpleAction *action,
            GVariant      *state,
            gpointer       window)
{
  PpLook look = pp_canvas_get_look (pp_window_get_canvas (window));

  look.heights = g_variant_get_boolean (state);
  pp_canvas_set_look (pp_window_get_canvas (window), look);
  g_simple_action_set_state (action, state);
}

static void
glue_cb (GSimpleAction *action,
         GVariant      *state,
         gpointer       window)
{
  PpLook look = pp_canvas_get_look (pp_window_get_canvas (window));

  look.glue = g_variant_get_boolean (state);
  pp_canvas_set_look (pp_window_get_canvas (window), look);
  g_simple_action_set_state (action, state);
}

static void
from_behind_cb (GSimpleAction *action,
                GVariant      *state,
                gpointer       window)
{
  PpLook look = pp_canvas_get_look (pp_window_get_canvas (window));

  look.from_behind = g_variant_get_boolean (state);
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
  { "zoom-in", zoom_in_cb },
  { "zoom-out", zoom_out_cb },
  { "zoom-fit", zoom_fit_cb },
  { "zoom-true", zoom_true_cb },
  { "heights", NULL, NULL, "false", heights_cb },
  { "glue", NULL, NULL, "false", glue_cb },
  { "from-behind", NULL, NULL, "false", from_behind_cb },
  { "measure", NULL, NULL, "false", measure_cb },
};

/* A new document is looked at straight on; without one there is nothing to look at. */
static void
document_cb (PpWindow   *window,
             GParamSpec *pspec,
             gpointer    data)
{
  gboolean has_document = pp_window_get_document (window) != NULL;

  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), entries[i].name);

      g_simple_action_set_enabled (G_SIMPLE_ACTION (action), has_document);
      if (g_action_get_state_type (action) != NULL)
        g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_boolean (FALSE));
    }
}

void
pp_view_actions_add (PpWindow *window)
{
  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  g_signal_connect (window, "notify::document", G_CALLBACK (document_cb), NULL);
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
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    gtk_application_set_accels_for_action (application, rows[i].action, rows[i].keys);
}
