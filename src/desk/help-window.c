/* help-window.c: how the work goes, on one calm page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/help-window.h"

#include "desk/guide.h"
#include "desk/page-window.h"
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

  g_action_map_add_action_entries (G_ACTION_MAP (group), entries, G_N_ELEMENTS (entries), window);
  gtk_widget_insert_action_group (window, "help", G_ACTION_GROUP (group));
}

GtkWidget *
pp_help_window_new (GtkWindow *parent)
{
  GtkWidget *window = pp_page_window_new (parent, _("Help"), pp_guide_new (), WIDTH, HEIGHT);
  GtkWidget *scrolled = gtk_window_get_child (GTK_WINDOW (window));
  GtkWidget *viewport = gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (scrolled));

  gtk_window_set_titlebar (GTK_WINDOW (window), make_bar ());
  /* or pictures would be given no height */
  gtk_scrollable_set_vscroll_policy (GTK_SCROLLABLE (viewport), GTK_SCROLL_NATURAL);
  add_actions (window);
  return window;
}
