/* plain-line.c: texts of a maker as they stand on a sheet, most on one line.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/plain-line.h"

#include "panel/i18n.h"

#include <string.h>

static gboolean
is_plain (gunichar c)
{
  return !g_unichar_iscntrl (c) && c != 0xfffe && c != 0xffff && c != 0x2028 && c != 0x2029;
}

static char *
make_plain (const char *text,
            gboolean    keeps_lines)
{
  GString *plain = g_string_new (NULL);
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  for (const char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      g_string_append_unichar (plain, is_plain (c) || (keeps_lines && c == '\n') ? c : ' ');
    }
  return g_strstrip (g_string_free (plain, FALSE));
}

char *
pp_plain_line_new (const char *text)
{
  return make_plain (text, FALSE);
}

char *
pp_plain_line_new_lines (const char *text)
{
  return make_plain (text, TRUE);
}

char *
pp_plain_line_new_title (const PpPanel *panel)
{
  g_autofree char *title = NULL;

  if (panel == NULL)
    return g_strdup (_("Sheets for making pieces"));
  title = pp_plain_line_new (panel->title);
  return *title != '\0' ? g_steal_pointer (&title) : g_strdup (_("Panel without a title"));
}

char *
pp_plain_line_new_date (const PpPanel *panel)
{
  return g_strndup (panel->created, strcspn (panel->created, "T"));
}
