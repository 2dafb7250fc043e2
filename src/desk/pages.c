/* pages.c: the pages of the work, and the switcher between them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/pages.h"

#include "desk/dry-run-page.h"
#include "desk/fit-layout.h"
#include "desk/glue-page.h"
#include "desk/hanging-page.h"
#include "desk/sheets-page.h"
#include "desk/shown-page.h"
#include "desk/typing.h"
#include "panel/i18n.h"

/* In the order of the work. */
static const struct
{
  const char  *name;
  const char  *title;
  GType      (*get_type) (void);
} pages[] = {
  { PP_PAGE_DRY_RUN, N_("Dry run"), pp_dry_run_page_get_type },
  { PP_PAGE_HANGING, N_("Hanging"), pp_hanging_page_get_type },
  { PP_PAGE_GLUE_UP, N_("Glue-up"), pp_glue_page_get_type },
  { PP_PAGE_SHEETS, N_("Sheets"), pp_sheets_page_get_type },
};

static void
page_cb (GSimpleAction *action,
         GVariant      *state,
         gpointer       window)
{
  pp_typing_finish (window);
  pp_window_show_page (window, g_variant_get_string (state, NULL));
}

#define SPACING 6 /* px, between two buttons */

static void
title_cb (PpWindow   *window,
          GParamSpec *pspec,
          GtkWidget  *menu)
{
  const char *name = pp_window_get_page_name (window);

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    if (g_strcmp0 (pages[i].name, name) == 0)
      gtk_menu_button_set_label (GTK_MENU_BUTTON (menu), _(pages[i].title));
}

/* What is shown says which button is pressed, also where it was not the action that showed it. */
static void
shown_cb (PpWindow *window)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), "page");
  const char *name = pp_window_get_page_name (window);

  g_simple_action_set_state (G_SIMPLE_ACTION (action),
                             g_variant_new_string (name != NULL ? name : ""));
  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), name != NULL);
}

static GtkWidget *
make_button (guint i)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (_(pages[i].title));

  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", pages[i].name);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.page");
  gtk_widget_add_css_class (button, "pp-page");
  return button;
}

static GtkWidget *
make_buttons (void)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, SPACING);

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    gtk_box_append (GTK_BOX (buttons), make_button (i));
  return buttons;
}

/* The same in a menu under the name of the page that is shown. */
static GtkWidget *
make_menu (void)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      g_autofree char *action = g_strdup_printf ("win.page::%s", pages[i].name);

      g_menu_append (menu, _(pages[i].title), action);
    }
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_widget_set_halign (button, GTK_ALIGN_CENTER);
  return button;
}

void
pp_pages_add (PpWindow *window,
              GtkStack *stack,
              GtkBox   *switcher)
{
  static const GActionEntry entries[] = { { "page", NULL, "s", "''", page_cb } };
  GtkWidget *menu = make_menu ();

  g_return_if_fail (PP_IS_WINDOW (window) && GTK_IS_STACK (stack) && GTK_IS_BOX (switcher));

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    gtk_stack_add_named (stack, g_object_new (pages[i].get_type (), NULL), pages[i].name);
  gtk_widget_set_layout_manager (GTK_WIDGET (switcher), g_object_new (PP_TYPE_FIT_LAYOUT, NULL));
  gtk_box_append (switcher, make_buttons ());
  gtk_box_append (switcher, menu);
  g_signal_connect (window, "notify::page-name", G_CALLBACK (shown_cb), NULL);
  g_signal_connect (window, "notify::page-name", G_CALLBACK (title_cb), menu);
  pp_shown_page_tell (stack);
}

void
pp_pages_set_document (GtkStack   *stack,
                       PpDocument *document)
{
  g_return_if_fail (GTK_IS_STACK (stack) && (document == NULL || PP_IS_DOCUMENT (document)));

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    g_object_set (gtk_stack_get_child_by_name (stack, pages[i].name), "document", document, NULL);
}

void
pp_pages_set_keys (GtkApplication *application)
{
  g_return_if_fail (GTK_IS_APPLICATION (application));

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      g_autofree char *action = g_strdup_printf ("win.page::%s", pages[i].name);
      g_autofree char *key = g_strdup_printf ("<Alt>%u", i + 1);
      g_autofree char *pad = g_strdup_printf ("<Alt>KP_%u", i + 1);

      gtk_application_set_accels_for_action (application, action,
                                             (const char *[]) { key, pad, NULL });
    }
}
