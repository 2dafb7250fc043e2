/* wrap.c: sentences broken into lines for a terminal.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/wrap.h"

/* Sentences are wrapped by hand: a terminal's width is not ours to know, and 78 reads well. */
#define COLUMNS 78

void
pp_append_wrapped (GString    *text,
                   const char *first,
                   const char *sentence)
{
  g_auto (GStrv) words = g_strsplit (sentence, " ", -1);
  glong indent = g_utf8_strlen (first, -1);
  glong column = indent;

  g_string_append (text, first);
  for (guint i = 0; words[i] != NULL; i++)
    {
      glong width = g_utf8_strlen (words[i], -1);

      if (i > 0 && column + 1 + width > COLUMNS)
        {
          g_string_append_printf (text, "\n%*s", (int) indent, "");
          column = indent;
        }
      else if (i > 0)
        {
          g_string_append_c (text, ' ');
          column++;
        }
      g_string_append (text, words[i]);
      column += width;
    }
  g_string_append_c (text, '\n');
}
