/* file-words.c: names of files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/file-words.h"

#include "panel/i18n.h"

#include <string.h>

/* Bytes; most file systems take 255, and an ending and a number still follow. */
#define LONGEST_NAME 200

/* What one system or another takes for a separator, a drive, a pattern or a quote. */
static const char not_in_names[] = "/\\:*?\"<>|";

static gboolean
is_in_names (gunichar c)
{
  return !g_unichar_iscntrl (c) && (c > 127 || strchr (not_in_names, (int) c) == NULL);
}

char *
pp_file_name_suggest (const char *title,
                      const char *ending)
{
  g_autoptr (GString) name = g_string_new (NULL);

  g_return_val_if_fail (title != NULL && ending != NULL, NULL);

  for (const char *p = title; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (name->len + 6 > LONGEST_NAME)
        break;
      g_string_append_unichar (name, is_in_names (c) ? c : '-');
    }
  g_strstrip (name->str);
  name->len = strlen (name->str);
  if (*name->str == '.') /* it would be hidden */
    *name->str = '-';
  if (name->len == 0)
    g_string_append (name, _("Untitled panel"));
  return g_strconcat (name->str, ending, NULL);
}

char *
pp_file_path_with_ending (const char *path,
                          const char *ending)
{
  gsize length, tail;

  g_return_val_if_fail (path != NULL && ending != NULL, NULL);

  length = strlen (path);
  tail = strlen (ending);
  if (length > tail && path[length - tail - 1] != G_DIR_SEPARATOR
      && g_ascii_strcasecmp (path + length - tail, ending) == 0)
    return g_strdup (path);
  return g_strconcat (path, ending, NULL);
}

char *
pp_file_name_show (GFile *file)
{
  g_autofree char *base = NULL;

  g_return_val_if_fail (G_IS_FILE (file), NULL);

  base = g_file_get_basename (file);
  return base != NULL ? g_filename_display_name (base) : g_file_get_uri (file);
}

char *
pp_file_name_show_bare (GFile *file)
{
  char *name = pp_file_name_show (file);

  if (name != NULL && g_str_has_suffix (name, PP_PANEL_ENDING))
    name[strlen (name) - strlen (PP_PANEL_ENDING)] = '\0';
  return name;
}

char *
pp_file_folder_show (GFile *file)
{
  g_autoptr (GFile) folder = NULL;

  g_return_val_if_fail (G_IS_FILE (file), NULL);

  folder = g_file_get_parent (file);
  return pp_file_name_show (folder != NULL ? folder : file);
}

char *
pp_file_content_of (const void *bytes,
                    gsize       length)
{
  return g_compute_checksum_for_data (G_CHECKSUM_SHA256, bytes, length);
}

const char *
pp_file_paper_of (const char *system_name)
{
  static const char * const papers[][2] = {
    { "iso_a4", "a4" },     { "iso_a3", "a3" },       { "na_letter", "letter" },
    { "na_legal", "legal" }, { "na_ledger", "tabloid" },
  };

  g_return_val_if_fail (system_name != NULL, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (strcmp (system_name, papers[i][0]) == 0)
      return papers[i][1];
  return "a4";
}
