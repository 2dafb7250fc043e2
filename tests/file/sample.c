/* sample.c: a whole panel as text, and the same with a place changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sample.h"

#include "file/panel-read.h"

#include <string.h>

char *
sample_new (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "file", "towpath.petalpane", NULL);
  g_autoptr (GError) error = NULL;
  char *text;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return text;
}

char *
sample_change (const char *text,
               const char *find,
               const char *put)
{
  const char *at = strstr (text, find);

  if (at == NULL || strstr (at + 1, find) != NULL)
    g_error ("not once in the sample: %s", find);
  return g_strdup_printf ("%.*s%s%s", (int) (at - text), text, put, at + strlen (find));
}

GBytes *
sample_to_bytes (const char *text)
{
  return g_bytes_new (text, strlen (text));
}

PpPanel *
sample_read (const char *text)
{
  g_autoptr (GBytes) bytes = sample_to_bytes (text);
  g_autoptr (GError) error = NULL;
  PpPanel *panel = pp_panel_read (bytes, &error);

  g_assert_no_error (error);
  return panel;
}

guint
sample_count (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

char *
sample_new_crowd (guint n)
{
  g_autoptr (GString) text = g_string_new (
      "{\"format\": \"petalpane-panel\", \"version\": 1, \"background\": {\"shape\": \"ellipse\","
      " \"width\": 300, \"height\": 200, \"thickness\": 6}, \"tray\": [{\"id\": \"campion\","
      " \"kind\": \"flower\", \"thickness\": 4, \"outline\": {\"type\": \"Polygon\","
      " \"coordinates\": [[[0, 0], [9, 0], [9, 9], [0, 0]]]}}], \"placements\": [");

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text,
                            "%s{\"id\": \"p%u\", \"piece\": \"campion\", \"x\": %u, \"y\": 7}",
                            i > 0 ? ", " : "", i, i % 300);
  g_string_append (text, "]}");
  return g_string_free (g_steal_pointer (&text), FALSE);
}
