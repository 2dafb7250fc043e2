/* help-window.c: how the work goes, on one calm page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/help-window.h"

#include "desk/guide.h"
#include "panel/i18n.h"

#define WIDTH 800 /* px, until the maker makes it another */
#define HEIGHT 800

static GtkWidget *
make_bar (void)
{
  GtkWidget *bar = gtk_header_bar_new ();
  GtkWidget *keys = gtk_button_new_with_mnemonic (_("_Keys"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (keys), "help.keys");
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), keys);
  return bar;
}

/* The keys are those of the window that the help was asked for in. */
static void
keys_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  GtkWindow *parent = gtk_window_get_transient_for (data);

  gtk_window_destroy (data);
  g_action_group_activate_action (G_ACTION_GROUP (parent), "show-help-overlay", NULL);
}

static void
add_actions (GtkWidget *window)
{
  static const GActionEntry entries[] = { { "keys", keys_cb } };
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();
  GtkEventController *keys = gtk_shortcut_controller_new ();
  GtkShortcut *escape = gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                          gtk_named_action_new ("window.close"));

  g_action_map_add_action_entries (G_ACTION_MAP (group), entries, G_N_ELEMENTS (entries), window);
  gtk_widget_insert_action_group (window, "help", G_ACTION_GROUP (group));
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys), escape);
  gtk_widget_add_controller (window, keys);
}

/* Read on as in any page, besides the keys that GTK has for it. */
static void
add_reading_keys (GtkWidget *scrolled)
{
  static const struct
  {
    guint           key;
    GdkModifierType state;
    GtkScrollType   scroll;
  } rows[] = {
    { GDK_KEY_Down, 0, GTK_SCROLL_STEP_FORWARD },
    { GDK_KEY_Up, 0, GTK_SCROLL_STEP_BACKWARD },
    { GDK_KEY_space, 0, GTK_SCROLL_PAGE_FORWARD },
    { GDK_KEY_space, GDK_SHIFT_MASK, GTK_SCROLL_PAGE_BACKWARD },
  };
  GtkEventController *keys = gtk_shortcut_controller_new ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      GtkShortcut *shortcut = gtk_shortcut_new (gtk_keyval_trigger_new (rows[i].key, rows[i].state),
                                                gtk_signal_action_new ("scroll-child"));

      gtk_shortcut_set_arguments (shortcut, g_variant_new ("(ib)", rows[i].scroll, FALSE));
      gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys), shortcut);
    }
  gtk_widget_add_controller (scrolled, keys);
}

GtkWidget *
pp_help_window_new (GtkWindow *parent)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *viewport;

  gtk_window_set_title (GTK_WINDOW (window), _("Help"));
  gtk_window_set_titlebar (GTK_WINDOW (window), make_bar ());
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_widget_add_css_class (window, "petalpane");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_accessible_update_property (GTK_ACCESSIBLE (scrolled), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Help"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), pp_guide_new ());
  viewport = gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (scrolled));
  /* or pictures would be given no height */
  gtk_scrollable_set_vscroll_policy (GTK_SCROLLABLE (viewport), GTK_SCROLL_NATURAL);
  gtk_window_set_child (GTK_WINDOW (window), scrolled);
  gtk_window_set_focus (GTK_WINDOW (window), scrolled);
  add_reading_keys (scrolled);
  add_actions (window);
  return window;
}
