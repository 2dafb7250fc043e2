/* json-scan.c: the structure of a JSON text, without recursion.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is open is a stack of at most PP_JSON_MAX_DEPTH levels, and what may come next is one
 * state. Line and column are counted only when something is refused.
 */
#include "file/json-scan-private.h"

#include <string.h>

static void
find_place (const PpJsonScan *scan,
            gsize             at,
            guint            *line,
            guint            *column)
{
  *line = *column = 1;
  for (gsize i = 0; i < at; i++)
    {
      char c = scan->text[i];

      if (c == '\n' || (c == '\r' && (i + 1 == scan->length || scan->text[i + 1] != '\n')))
        {
          *line += 1;
          *column = 1;
        }
      else if ((c & 0xc0) != 0x80) /* only the first byte of a character counts */
        *column += 1;
    }
}

gboolean
pp_json_scan_refuse (PpJsonScan *scan,
                     gsize       at,
                     PpFileError code,
                     const char *reason)
{
  guint line, column;

  find_place (scan, at, &line, &column);
  /* Translators: where in a file, and what is wrong there. */
  g_set_error (scan->error, PP_FILE_ERROR, code, _("Line %u, column %u: %s"), line, column, reason);
  return FALSE;
}

/* Words for what people and other programs write where JSON wants something else. */
static const char *
explain_sign (char        sign,
              const char *otherwise)
{
  switch (sign)
    {
    case '/':
    case '#':
      return _("a comment stands here, and there can be none.");
    case '\'':
      return _("a text must stand in double quotation marks.");
    default:
      return otherwise;
    }
}

static gboolean
refuse_sign (PpJsonScan *scan,
             const char *otherwise)
{
  const char *reason = scan->at == scan->length
                         ? _("the file ends too early, so a part of it is missing.")
                         : explain_sign (scan->text[scan->at], otherwise);

  return pp_json_scan_refuse (scan, scan->at, PP_FILE_ERROR_SYNTAX, reason);
}

static gboolean
refuse_value (PpJsonScan *scan)
{
  char sign = pp_json_scan_peek (scan, 0);

  if (sign == '+' || sign == '.')
    return refuse_sign (scan, _("a number must begin with a digit or a minus."));
  if (strchr (",:]}", sign) != NULL)
    return refuse_sign (scan, _("a value is missing, or a comma before it is one too many."));
  return refuse_sign (scan, _("this is no number, no text in double quotation marks, "
                              "and not true, false or null."));
}

static void
end_value (PpJsonScan *scan)
{
  scan->expect = scan->depth > 0 ? PP_JSON_EXPECT_COMMA : PP_JSON_EXPECT_END;
}

static gboolean
open_level (PpJsonScan *scan,
            gboolean    is_object)
{
  if (scan->depth == PP_JSON_MAX_DEPTH)
    return pp_json_scan_refuse (scan, scan->at, PP_FILE_ERROR_LIMIT,
                                _("too many brackets are open inside one another."));
  scan->levels[scan->depth++] = (PpJsonLevel) {
    .is_object = is_object,
    .first_name = scan->names->len,
    .first_character = scan->letters->len,
  };
  scan->at++;
  scan->expect = is_object ? PP_JSON_EXPECT_FIRST_NAME : PP_JSON_EXPECT_FIRST_VALUE;
  return TRUE;
}

static gboolean
close_level (PpJsonScan *scan)
{
  if (scan->levels[scan->depth - 1].is_object && !pp_json_scan_end_names (scan))
    return FALSE;
  scan->depth--;
  scan->at++;
  end_value (scan);
  return TRUE;
}

static gboolean
scan_word (PpJsonScan *scan)
{
  static const char *const words[] = { "true", "false", "null" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      gsize n = strlen (words[i]);

      if (scan->length - scan->at >= n && memcmp (scan->text + scan->at, words[i], n) == 0)
        {
          scan->at += n;
          return TRUE;
        }
    }
  return refuse_value (scan);
}

static gboolean
scan_scalar (PpJsonScan *scan)
{
  char c = pp_json_scan_peek (scan, 0);
  gboolean good;

  if (c == '"')
    good = pp_json_scan_string (scan, NULL);
  else if (c == '-' || g_ascii_isdigit (c))
    good = pp_json_scan_number (scan);
  else
    good = scan_word (scan);
  if (good)
    end_value (scan);
  return good;
}

static gboolean
scan_value (PpJsonScan *scan)
{
  char c = pp_json_scan_peek (scan, 0);

  if (c == '{' || c == '[')
    return open_level (scan, c == '{');
  return scan_scalar (scan);
}

static void
skip_space (PpJsonScan *scan)
{
  while (scan->at < scan->length && strchr (" \n\t\r", scan->text[scan->at]) != NULL)
    scan->at++;
}

static gboolean
scan_member (PpJsonScan *scan)
{
  if (pp_json_scan_peek (scan, 0) != '"')
    return refuse_sign (scan, _("a name in double quotation marks is missing, "
                                "or a comma before it is one too many."));
  if (!pp_json_scan_name (scan))
    return FALSE;
  skip_space (scan);
  if (pp_json_scan_peek (scan, 0) != ':')
    return refuse_sign (scan, _("a colon is missing between a name and its value."));
  scan->at++;
  scan->expect = PP_JSON_EXPECT_VALUE;
  return TRUE;
}

static gboolean
scan_separator (PpJsonScan *scan)
{
  gboolean is_object = scan->levels[scan->depth - 1].is_object;
  char c = pp_json_scan_peek (scan, 0);

  if (c == (is_object ? '}' : ']'))
    return close_level (scan);
  if (c == '}' || c == ']')
    return refuse_sign (scan, is_object ? _("a ] stands where a } is due.")
                                        : _("a } stands where a ] is due."));
  if (c != ',')
    return refuse_sign (scan, _("a comma is missing before this, or it does not belong here."));
  scan->at++;
  scan->expect = is_object ? PP_JSON_EXPECT_NAME : PP_JSON_EXPECT_VALUE;
  return TRUE;
}

static gboolean
scan_next (PpJsonScan *scan)
{
  char c = pp_json_scan_peek (scan, 0);

  switch (scan->expect)
    {
    case PP_JSON_EXPECT_FIRST_VALUE:
      return c == ']' ? close_level (scan) : scan_value (scan);
    case PP_JSON_EXPECT_VALUE:
      return scan_value (scan);
    case PP_JSON_EXPECT_FIRST_NAME:
      return c == '}' ? close_level (scan) : scan_member (scan);
    case PP_JSON_EXPECT_NAME:
      return scan_member (scan);
    case PP_JSON_EXPECT_COMMA:
      return scan_separator (scan);
    case PP_JSON_EXPECT_END:
      return refuse_sign (scan, _("something follows after the end."));
    }
  g_assert_not_reached ();
}

static gboolean
check_bytes (PpJsonScan *scan)
{
  static const char mark[] = "\xef\xbb\xbf";
  const char *end;

  if (scan->length >= strlen (mark) && memcmp (scan->text, mark, strlen (mark)) == 0)
    return pp_json_scan_refuse (scan, 0, PP_FILE_ERROR_SYNTAX,
                                _("a byte order mark stands before the text: save it without."));
  if (!g_utf8_validate_len (scan->text, scan->length, &end))
    return pp_json_scan_refuse (scan, end - scan->text, PP_FILE_ERROR_SYNTAX,
                                _("this is not text in UTF-8, so the file is damaged "
                                  "or of another kind."));
  skip_space (scan);
  if (scan->at == scan->length)
    {
      g_set_error_literal (scan->error, PP_FILE_ERROR, PP_FILE_ERROR_SYNTAX,
                           _("The file is empty."));
      return FALSE;
    }
  return TRUE;
}

static gboolean
scan_text (PpJsonScan *scan)
{
  if (!check_bytes (scan))
    return FALSE;
  while (scan->expect != PP_JSON_EXPECT_END || scan->at < scan->length)
    {
      if (!scan_next (scan))
        return FALSE;
      skip_space (scan);
    }
  return TRUE;
}

gboolean
pp_json_scan (const char *bytes,
              gsize       length,
              GError    **error)
{
  g_autoptr (GArray) names = pp_json_scan_new_names ();
  g_autoptr (GString) letters = g_string_new (NULL);
  PpJsonScan scan = {
    .text = length > 0 ? bytes : "",
    .length = length,
    .names = names,
    .letters = letters,
    .error = error,
  };

  g_return_val_if_fail (bytes != NULL || length == 0, FALSE);
  if (length > PP_JSON_MAX_BYTES)
    {
      g_set_error (error, PP_FILE_ERROR, PP_FILE_ERROR_LIMIT,
                   _("The file is larger than %d MiB, and no panel is."),
                   PP_JSON_MAX_BYTES / (1024 * 1024));
      return FALSE;
    }
  return scan_text (&scan);
}
