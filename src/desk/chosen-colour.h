/* chosen-colour.h: colours of glass, as records have them, in what chooses a colour.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include <math.h>

G_BEGIN_DECLS

/* `colour`: "#rrggbb". */
static inline void
pp_chosen_colour_show (GtkColorChooser *chooser,
                       const char      *colour)
{
  GdkRGBA shown, rgba;

  gtk_color_chooser_get_rgba (chooser, &shown);
  if (gdk_rgba_parse (&rgba, colour) && !gdk_rgba_equal (&rgba, &shown))
    gtk_color_chooser_set_rgba (chooser, &rgba);
}

/* "#rrggbb". (transfer full) */
static inline char *
pp_chosen_colour_dup (GtkColorChooser *chooser)
{
  GdkRGBA rgba;

  gtk_color_chooser_get_rgba (chooser, &rgba);
  return g_strdup_printf ("#%02x%02x%02x", (guint) lroundf (rgba.red * 255),
                          (guint) lroundf (rgba.green * 255), (guint) lroundf (rgba.blue * 255));
}

G_END_DECLS
