/* bell.c: the bell at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK plays sounds by modules that may not be there, and finds out late that no loudspeaker is: a
 * sound that failed says so by its "error", and the display beeps in its place.
 */
#include "config.h"

#include "desk/bell.h"

#include "desk/settings.h"

#define SOUND "/org/petalpane/Petalpane/bell.wav"

static void
beep (GtkMediaStream *sound)
{
  GdkDisplay *display = g_object_get_data (G_OBJECT (sound), "pp-display");

  gdk_display_beep (display);
}

static void
failed_cb (GtkMediaStream *sound,
           GParamSpec     *pspec,
           gpointer        data)
{
  if (gtk_media_stream_get_error (sound) == NULL)
    return;
  beep (sound);
  g_object_unref (sound);
}

static void
ended_cb (GtkMediaStream *sound,
          GParamSpec     *pspec,
          gpointer        data)
{
  if (gtk_media_stream_get_ended (sound))
    g_object_unref (sound);
}

gboolean
pp_bell_is_on (void)
{
  return !pp_settings_get_flag (PP_SETTINGS_BELL_OFF);
}

void
pp_bell_set_on (gboolean is_on)
{
  pp_settings_keep_flag (PP_SETTINGS_BELL_OFF, !is_on);
}

void
pp_bell_ring (GtkWidget *widget)
{
  GtkMediaStream *sound;

  g_return_if_fail (GTK_IS_WIDGET (widget));

  if (!pp_bell_is_on ())
    return;
  sound = gtk_media_file_new_for_resource (SOUND);
  g_object_set_data_full (G_OBJECT (sound), "pp-display",
                          g_object_ref (gtk_widget_get_display (widget)), g_object_unref);
  if (gtk_media_stream_get_error (sound) != NULL)
    {
      beep (sound);
      g_object_unref (sound);
      return;
    }
  g_signal_connect (sound, "notify::error", G_CALLBACK (failed_cb), NULL);
  g_signal_connect (sound, "notify::ended", G_CALLBACK (ended_cb), NULL);
  gtk_media_stream_play (sound);
}
