/* shown-name.c: the name of a file in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/shown-name.h"

#define MOST_SHOWN 100 /* letters of a name in a sentence */

char *
pp_shown_name (const char *path)
{
  g_autofree char *name = g_filename_display_name (path);
  glong length = g_utf8_strlen (name, -1);
  g_autofree char *first = NULL;

  if (length <= MOST_SHOWN)
    return g_steal_pointer (&name);
  first = g_utf8_substring (name, 0, MOST_SHOWN / 2);
  return g_strconcat (first, "…", g_utf8_offset_to_pointer (name, length - MOST_SHOWN / 2), NULL);
}
