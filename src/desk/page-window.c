/* page-window.c: a window to read in: one page that scrolls.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/page-window.h"

static void
add_escape (GtkWidget *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();
  GtkShortcut *escape = gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                          gtk_named_action_new ("window.close"));

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
pp_page_window_new (GtkWindow  *parent,
                    const char *title,
                    GtkWidget  *page,
                    int         width,
                    int         height)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_window_set_title (GTK_WINDOW (window), title);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), width, height);
  gtk_widget_add_css_class (window, "petalpane");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), page);
  gtk_accessible_update_property (GTK_ACCESSIBLE (scrolled), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  -1);
  gtk_window_set_child (GTK_WINDOW (window), scrolled);
  gtk_window_set_focus (GTK_WINDOW (window), scrolled);
  add_reading_keys (scrolled);
  add_escape (window);
  return window;
}
