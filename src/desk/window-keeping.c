/* window-keeping.c: a window is as large as the last one was.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept when the window goes: in the middle of being made larger it has a hundred sizes a second.
 * GTK tells the size that a window has when it neither fills the screen nor is at the bench; that
 * it fills the screen it forgets with the unmapping.
 */
#include "config.h"

#include "desk/window-keeping.h"

#include "desk/settings.h"

void
pp_window_keeping_restore (GtkWindow *window)
{
  int width = pp_settings_get_count (PP_SETTINGS_WINDOW_WIDTH);
  int height = pp_settings_get_count (PP_SETTINGS_WINDOW_HEIGHT);

  g_return_if_fail (GTK_IS_WINDOW (window));

  if (width > 0 && height > 0)
    gtk_window_set_default_size (window, width, height);
  if (pp_settings_get_flag (PP_SETTINGS_WINDOW_MAXIMIZED))
    gtk_window_maximize (window);
}

void
pp_window_keeping_keep (GtkWindow *window)
{
  int width, height;

  g_return_if_fail (GTK_IS_WINDOW (window));

  gtk_window_get_default_size (window, &width, &height);
  pp_settings_keep_count (PP_SETTINGS_WINDOW_WIDTH, width);
  pp_settings_keep_count (PP_SETTINGS_WINDOW_HEIGHT, height);
  pp_settings_keep_flag (PP_SETTINGS_WINDOW_MAXIMIZED, gtk_window_is_maximized (window));
}
