/* shown.c: the words of a file inside a sentence of ours.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/shown.h"

#define LONGEST 40

char *
pp_shown (const char *text)
{
  GString *shown = g_string_new (NULL);
  const char *p = text != NULL ? text : "";

  for (guint n = 0; *p != '\0' && n < LONGEST; p = g_utf8_next_char (p), n++)
    {
      gunichar c = g_utf8_get_char (p);

      g_string_append_unichar (shown, g_unichar_isprint (c) ? c : 0xfffd);
    }
  if (*p != '\0')
    g_string_append (shown, "…");
  return g_string_free (shown, FALSE);
}
