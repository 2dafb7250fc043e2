/* settings.c: what the program keeps between runs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GSettings ends a program that asks for a schema, or a key of one, that is not there. So a program
 * run from where it was built, or installed in part, or beside an older schema, would not start.
 * Therefore the schema is also a part of the program, and is taken from there unless the one of
 * the system knows all of it; and with neither, nothing is kept.
 */
#include "config.h"

#include "desk/settings.h"

#include <glib/gstdio.h>

#define SCHEMA "org.petalpane.Petalpane"
#define COMPILED "/org/petalpane/Petalpane/gschemas.compiled"

/* The one that is part of the program. It can only be read from a folder, and stays in memory when
 * that is gone again. (transfer full) (nullable) */
static GSettingsSchema *
read_own_schema (void)
{
  g_autoptr (GBytes) bytes = g_resources_lookup_data (COMPILED, 0, NULL);
  g_autoptr (GSettingsSchemaSource) source = NULL;
  g_autofree char *folder = g_dir_make_tmp (NULL, NULL);
  g_autofree char *path = NULL;
  gsize length;
  const char *text;

  g_return_val_if_fail (bytes != NULL, NULL);

  if (folder == NULL)
    return NULL;
  path = g_build_filename (folder, "gschemas.compiled", NULL);
  text = g_bytes_get_data (bytes, &length);
  if (g_file_set_contents (path, text, (gssize) length, NULL))
    source = g_settings_schema_source_new_from_directory (folder, NULL, TRUE, NULL);
  g_unlink (path);
  g_rmdir (folder);
  return source != NULL ? g_settings_schema_source_lookup (source, SCHEMA, FALSE) : NULL;
}

/* Whether the other schema has every key of this one, of the same type. */
static gboolean
knows_all (GSettingsSchema *other,
           GSettingsSchema *schema)
{
  g_auto (GStrv) keys = g_settings_schema_list_keys (schema);

  for (guint i = 0; keys[i] != NULL; i++)
    {
      g_autoptr (GSettingsSchemaKey) key = g_settings_schema_get_key (schema, keys[i]);
      g_autoptr (GSettingsSchemaKey) same = NULL;

      if (!g_settings_schema_has_key (other, keys[i]))
        return FALSE;
      same = g_settings_schema_get_key (other, keys[i]);
      if (!g_variant_type_equal (g_settings_schema_key_get_value_type (key),
                                 g_settings_schema_key_get_value_type (same)))
        return FALSE;
    }
  return TRUE;
}

/* The system's, which whoever cares for the machine may have given other defaults, if it can be
 * used. (transfer full) (nullable) */
static GSettingsSchema *
find_schema (void)
{
  GSettingsSchemaSource *system = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) own = read_own_schema ();
  g_autoptr (GSettingsSchema) theirs = NULL;

  if (system != NULL)
    theirs = g_settings_schema_source_lookup (system, SCHEMA, TRUE);
  if (own != NULL && theirs != NULL && knows_all (theirs, own))
    return g_steal_pointer (&theirs);
  return g_steal_pointer (&own);
}

/* (transfer none) (nullable) */
static GSettings *
get_settings (void)
{
  static GSettings *settings;
  static gboolean is_made;

  if (!is_made)
    {
      g_autoptr (GSettingsSchema) schema = find_schema ();

      is_made = TRUE;
      settings = schema != NULL ? g_settings_new_full (schema, NULL, NULL) : NULL;
    }
  return settings;
}

char *
pp_settings_dup_text (const char *key)
{
  GSettings *settings = get_settings ();

  return settings != NULL ? g_settings_get_string (settings, key) : g_strdup ("");
}

void
pp_settings_keep_text (const char *key,
                       const char *text)
{
  GSettings *settings = get_settings ();

  if (settings != NULL)
    g_settings_set_string (settings, key, text);
}

char **
pp_settings_dup_list (const char *key)
{
  GSettings *settings = get_settings ();

  return settings != NULL ? g_settings_get_strv (settings, key) : g_new0 (char *, 1);
}

void
pp_settings_keep_list (const char         *key,
                       const char * const *list)
{
  GSettings *settings = get_settings ();

  if (settings != NULL)
    g_settings_set_strv (settings, key, list);
}

gboolean
pp_settings_get_flag (const char *key)
{
  GSettings *settings = get_settings ();

  return settings != NULL && g_settings_get_boolean (settings, key);
}

void
pp_settings_keep_flag (const char *key,
                       gboolean    flag)
{
  GSettings *settings = get_settings ();

  if (settings != NULL)
    g_settings_set_boolean (settings, key, flag);
}

int
pp_settings_get_count (const char *key)
{
  GSettings *settings = get_settings ();

  return settings != NULL ? g_settings_get_int (settings, key) : 0;
}

void
pp_settings_keep_count (const char *key,
                        int         count)
{
  GSettings *settings = get_settings ();

  if (settings != NULL)
    g_settings_set_int (settings, key, count);
}

double
pp_settings_get_figure (const char *key)
{
  GSettings *settings = get_settings ();

  return settings != NULL ? g_settings_get_double (settings, key) : 0;
}

void
pp_settings_keep_figure (const char *key,
                         double      figure)
{
  GSettings *settings = get_settings ();

  if (settings != NULL)
    g_settings_set_double (settings, key, figure);
}

void
pp_settings_finish (void)
{
  g_settings_sync ();
}
