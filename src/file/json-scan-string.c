/* json-scan-string.c: texts in double quotes and their escapes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/json-scan-private.h"

#include <string.h>

static gboolean
is_high_half (guint unit)
{
  return unit >= 0xd800 && unit <= 0xdbff;
}

static gboolean
is_low_half (guint unit)
{
  return unit >= 0xdc00 && unit <= 0xdfff;
}

/* The four digits of a \u that begins here; FALSE if none does. */
static gboolean
read_unit (const PpJsonScan *scan,
           guint            *unit)
{
  *unit = 0;
  if (pp_json_scan_peek (scan, 0) != '\\' || pp_json_scan_peek (scan, 1) != 'u')
    return FALSE;
  for (guint i = 2; i < 6; i++)
    {
      int digit = g_ascii_xdigit_value (pp_json_scan_peek (scan, i));

      if (digit < 0)
        return FALSE;
      *unit = *unit * 16 + digit;
    }
  return TRUE;
}

static gboolean
scan_unicode_escape (PpJsonScan *scan,
                     GString    *decoded)
{
  const gsize length = strlen ("\\u0000");
  gsize start = scan->at;
  guint unit, low = 0;
  gunichar c;

  if (!read_unit (scan, &unit))
    return pp_json_scan_refuse (scan, start, PP_FILE_ERROR_SYNTAX,
                                _("four of 0-9 and a-f must follow \\u."));
  if (unit == 0)
    return pp_json_scan_refuse (scan, start, PP_FILE_ERROR_VALUE,
                                _("a text may not hold the character \\u0000."));
  scan->at += length;
  c = unit;
  if (is_high_half (unit) && read_unit (scan, &low) && is_low_half (low))
    {
      scan->at += length;
      c = 0x10000 + ((unit - 0xd800) << 10) + (low - 0xdc00);
    }
  else if (is_high_half (unit) || is_low_half (unit))
    return pp_json_scan_refuse (scan, start, PP_FILE_ERROR_VALUE,
                                _("only half of a character stands here."));
  if (decoded != NULL)
    g_string_append_unichar (decoded, c);
  return TRUE;
}

static gboolean
scan_escape (PpJsonScan *scan,
             GString    *decoded)
{
  static const char signs[] = "\"\\/bfnrt";
  static const char meanings[] = "\"\\/\b\f\n\r\t";
  char c = pp_json_scan_peek (scan, 1);
  const char *sign = c != '\0' ? strchr (signs, c) : NULL;

  if (c == 'u')
    return scan_unicode_escape (scan, decoded);
  if (sign == NULL)
    return pp_json_scan_refuse (scan, scan->at, PP_FILE_ERROR_SYNTAX,
                                _("the sign after this backslash has no meaning."));
  if (decoded != NULL)
    g_string_append_c (decoded, meanings[sign - signs]);
  scan->at += 2;
  return TRUE;
}

static gboolean
refuse_control (PpJsonScan *scan)
{
  char c = pp_json_scan_peek (scan, 0);

  return pp_json_scan_refuse (scan, scan->at, PP_FILE_ERROR_SYNTAX,
                              c == '\n' || c == '\r'
                                ? _("the line ends inside a text in quotation marks.")
                                : _("a control character stands inside a text."));
}

gboolean
pp_json_scan_string (PpJsonScan *scan,
                     GString    *decoded)
{
  gsize open = scan->at++;

  while (scan->at < scan->length)
    {
      gsize start = scan->at;
      guchar c = 0;

      while (scan->at < scan->length
             && (c = scan->text[scan->at]) >= 0x20 && c != '"' && c != '\\')
        scan->at++;
      if (decoded != NULL)
        g_string_append_len (decoded, scan->text + start, scan->at - start);
      if (scan->at == scan->length)
        break;
      if (c == '"')
        {
          scan->at++;
          return TRUE;
        }
      if (c != '\\')
        return refuse_control (scan);
      if (!scan_escape (scan, decoded))
        return FALSE;
    }
  return pp_json_scan_refuse (scan, open, PP_FILE_ERROR_SYNTAX,
                              _("a text begins here whose closing quotation mark is missing."));
}
