/* application.c: the program.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/application.h"

#include "desk/edit-actions.h"
#include "desk/file-actions.h"
#include "desk/pages.h"
#include "desk/palette.h"
#include "desk/piece-actions.h"
#include "desk/put-right.h"
#include "desk/recovery.h"
#include "desk/renderer.h"
#include "desk/settings.h"
#include "desk/variants.h"
#include "desk/view-actions.h"
#include "desk/window.h"
#include "panel/i18n.h"

struct _PpApplication
{
  GtkApplication parent_instance;
  gboolean       has_offered; /* what was left behind unsaved */
};

G_DEFINE_FINAL_TYPE (PpApplication, pp_application, GTK_TYPE_APPLICATION)

static void
new_window_cb (GSimpleAction *action,
               GVariant      *parameter,
               gpointer       data)
{
  gtk_window_present (GTK_WINDOW (pp_window_new (GTK_APPLICATION (data))));
}

static void
quit_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  pp_file_actions_quit (GTK_APPLICATION (data));
}

static void
about_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  GtkWidget *about = g_object_new (GTK_TYPE_ABOUT_DIALOG,
                                   "transient-for", gtk_application_get_active_window (data),
                                   "modal", TRUE,
                                   "program-name", "Petalpane",
                                   "version", PP_VERSION,
                                   "logo-icon-name", "org.petalpane.Petalpane",
                                   "license-type", GTK_LICENSE_GPL_3_0,
                                   "comments", _("The dry run for panels of kiln-formed glass: "
                                                 "laid out, checked and planned before the glue is "
                                                 "mixed."),
                                   NULL);

  gtk_widget_add_css_class (about, "petalpane");
  gtk_window_present (GTK_WINDOW (about));
}

static const GActionEntry actions[] = {
  { "new", new_window_cb },
  { "quit", quit_cb },
  { "about", about_cb },
};

static void
set_keys (GtkApplication *application)
{
  gtk_application_set_accels_for_action (application, "app.new",
                                         (const char *[]) { "<Control>n", NULL });
  gtk_application_set_accels_for_action (application, "app.quit",
                                         (const char *[]) { "<Control>q", NULL });
  pp_edit_actions_set_keys (application);
  pp_file_actions_set_keys (application);
  pp_pages_set_keys (application);
  pp_view_actions_set_keys (application);
  pp_put_right_set_keys (application);
  pp_piece_actions_set_keys (application);
  pp_variants_set_keys (application);
}

static void
pp_application_startup (GApplication *application)
{
  GdkDisplay *display;

  G_APPLICATION_CLASS (pp_application_parent_class)->startup (application);
  display = gdk_display_get_default ();
  pp_renderer_choose (display);
  pp_style_start (display);
  /* Words that can be copied are not chosen merely because Tab came by. */
  g_object_set (gtk_settings_get_for_display (display), "gtk-label-select-on-focus", FALSE, NULL);
  gtk_window_set_default_icon_name ("org.petalpane.Petalpane");
  g_action_map_add_action_entries (G_ACTION_MAP (application), actions, G_N_ELEMENTS (actions),
                                   application);
  set_keys (GTK_APPLICATION (application));
}

static void
pp_application_shutdown (GApplication *application)
{
  pp_settings_finish ();
  G_APPLICATION_CLASS (pp_application_parent_class)->shutdown (application);
}

static void
offer_once (GApplication *application)
{
  PpApplication *self = PP_APPLICATION (application);

  if (!self->has_offered)
    pp_recovery_offer (GTK_APPLICATION (application));
  self->has_offered = TRUE;
}

static void
pp_application_activate (GApplication *application)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (application));

  if (active == NULL)
    active = GTK_WINDOW (pp_window_new (GTK_APPLICATION (application)));
  gtk_window_present (active);
  offer_once (application);
}

static void
pp_application_open (GApplication *application,
                     GFile       **files,
                     int           n_files,
                     const char   *hint)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));

  if (window == NULL)
    window = GTK_WINDOW (pp_window_new (GTK_APPLICATION (application)));
  gtk_window_present (window);
  for (int i = 0; i < n_files; i++)
    pp_file_actions_open (PP_WINDOW (window), files[i], FALSE);
  offer_once (application);
}

static int
pp_application_handle_local_options (GApplication *application,
                                     GVariantDict *options)
{
  if (!g_variant_dict_contains (options, "version"))
    return -1; /* go on */
  g_print ("petalpane %s\n", PP_VERSION);
  return 0;
}

static void
pp_application_class_init (PpApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  application_class->handle_local_options = pp_application_handle_local_options;
  application_class->startup = pp_application_startup;
  application_class->shutdown = pp_application_shutdown;
  application_class->activate = pp_application_activate;
  application_class->open = pp_application_open;
}

static void
pp_application_init (PpApplication *self)
{
  GApplication *application = G_APPLICATION (self);

  g_application_set_option_context_parameter_string (application, _("[FILE…]"));
  g_application_add_main_option (application, "version", 0, G_OPTION_FLAG_NONE,
                                 G_OPTION_ARG_NONE, _("Say the version"), NULL);
}

PpApplication *
pp_application_new (void)
{
  return g_object_new (PP_TYPE_APPLICATION, "application-id", "org.petalpane.Petalpane",
                       "flags", G_APPLICATION_HANDLES_OPEN, NULL);
}
