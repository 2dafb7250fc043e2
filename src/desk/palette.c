/* palette.c: the colours of the window, light and dark.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK 4.8 style sheets cannot ask for dark, so one of two sheets of named colours is installed,
 * by what the system's settings say. High contrast goes its own way: plain black and white.
 */
#include "config.h"

#include "desk/palette.h"

#include <string.h>

#define RESOURCES "/org/petalpane/Petalpane/"

static const struct
{
  const char *name;
  gsize       offset;
} colours[] = {
  { "pp_bench", G_STRUCT_OFFSET (PpPalette, bench) },
  { "pp_paper", G_STRUCT_OFFSET (PpPalette, paper) },
  { "pp_ink", G_STRUCT_OFFSET (PpPalette, ink) },
  { "pp_faint", G_STRUCT_OFFSET (PpPalette, faint) },
  { "pp_line", G_STRUCT_OFFSET (PpPalette, line) },
  { "pp_accent", G_STRUCT_OFFSET (PpPalette, accent) },
  { "pp_fault", G_STRUCT_OFFSET (PpPalette, fault) },
  { "pp_caution", G_STRUCT_OFFSET (PpPalette, caution) },
  { "pp_note", G_STRUCT_OFFSET (PpPalette, note) },
  { "pp_done", G_STRUCT_OFFSET (PpPalette, done) },
  { "pp_on_mark", G_STRUCT_OFFSET (PpPalette, on_mark) },
};

PpPalette
pp_palette_of (GtkWidget *widget)
{
  GtkStyleContext *context = gtk_widget_get_style_context (widget);
  PpPalette palette = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (colours); i++)
    {
      GdkRGBA *colour = G_STRUCT_MEMBER_P (&palette, colours[i].offset);

      if (!gtk_style_context_lookup_color (context, colours[i].name, colour))
        g_warning ("The style sheet has no colour %s.", colours[i].name);
    }
  return palette;
}

/* As GTK does it, the environment goes before the settings. (transfer full) (nullable) */
static char *
get_theme (GtkSettings *settings)
{
  char *theme = g_strdup (g_getenv ("GTK_THEME"));

  if (theme == NULL)
    g_object_get (settings, "gtk-theme-name", &theme, NULL);
  return theme;
}

static gboolean
is_dark (GtkSettings *settings,
         const char  *theme)
{
  gboolean prefers_dark;

  g_object_get (settings, "gtk-application-prefer-dark-theme", &prefers_dark, NULL);
  return prefers_dark || (theme != NULL && g_str_has_suffix (theme, "dark"));
}

static void
load_colours (GtkSettings    *settings,
              GParamSpec     *pspec,
              GtkCssProvider *provider)
{
  g_autofree char *theme = get_theme (settings);
  gboolean dark = is_dark (settings, theme);

  if (theme != NULL && strstr (theme, "-hc") != NULL)
    gtk_css_provider_load_from_resource (provider, dark ? RESOURCES "dark-contrast.css"
                                                        : RESOURCES "light-contrast.css");
  else
    gtk_css_provider_load_from_resource (provider, dark ? RESOURCES "dark.css"
                                                        : RESOURCES "light.css");
}

void
pp_style_start (GdkDisplay *display)
{
  GtkSettings *settings = gtk_settings_get_for_display (display);
  g_autoptr (GtkCssProvider) named = gtk_css_provider_new ();
  g_autoptr (GtkCssProvider) sheet = gtk_css_provider_new ();

  load_colours (settings, NULL, named);
  g_signal_connect_object (settings, "notify::gtk-theme-name", G_CALLBACK (load_colours), named, 0);
  g_signal_connect_object (settings, "notify::gtk-application-prefer-dark-theme",
                           G_CALLBACK (load_colours), named, 0);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (named),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_css_provider_load_from_resource (sheet, RESOURCES "style.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (sheet),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}
