/* json-append.c: the spelling of texts, numbers and what json-glib has read.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/json-append.h"

#include <math.h>

/* Whole doubles below this are written digit by digit: all of them are exact, and 15 digits are
 * not harder to read than an exponent. */
#define PLAIN_BELOW 1e15

static void
append_escaped (GString *text,
                guchar   c)
{
  static const char *const short_escapes[0x20] = {
    ['\b'] = "\\b", ['\f'] = "\\f", ['\n'] = "\\n", ['\r'] = "\\r", ['\t'] = "\\t",
  };

  if (c >= 0x20)
    {
      g_string_append_c (text, '\\');
      g_string_append_c (text, c);
    }
  else if (short_escapes[c] != NULL)
    g_string_append (text, short_escapes[c]);
  else
    g_string_append_printf (text, "\\u%04x", c);
}

void
pp_json_append_string (GString    *text,
                       const char *string)
{
  const char *p = string;

  g_string_append_c (text, '"');
  while (*p != '\0')
    {
      const char *start = p;

      while ((guchar) *p >= 0x20 && *p != '"' && *p != '\\')
        p++;
      g_string_append_len (text, start, p - start);
      if (*p != '\0')
        append_escaped (text, *p++);
    }
  g_string_append_c (text, '"');
}

void
pp_json_append_number (GString *text,
                       double   number)
{
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_return_if_fail (isfinite (number));
  if (number == trunc (number) && fabs (number) < PLAIN_BELOW)
    {
      g_string_append_printf (text, "%" G_GINT64_FORMAT, (gint64) number);
      return;
    }
  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (buffer, sizeof buffer, formats[i], number);
      if (g_ascii_strtod (buffer, NULL) == number)
        break;
    }
  g_string_append (text, buffer);
}

static void
append_value (GString  *text,
              JsonNode *node)
{
  GType type = json_node_get_value_type (node);

  if (type == G_TYPE_STRING)
    pp_json_append_string (text, json_node_get_string (node));
  else if (type == G_TYPE_INT64)
    g_string_append_printf (text, "%" G_GINT64_FORMAT, json_node_get_int (node));
  else if (type == G_TYPE_DOUBLE)
    pp_json_append_number (text, json_node_get_double (node));
  else
    g_string_append (text, json_node_get_boolean (node) ? "true" : "false");
}

static void
append_object (GString    *text,
               JsonObject *object)
{
  JsonObjectIter iter;
  const char *member;
  JsonNode *node;
  const char *before = "";

  g_string_append_c (text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &member, &node))
    {
      g_string_append (text, before);
      pp_json_append_string (text, member);
      g_string_append_c (text, ':');
      pp_json_append_node (text, node);
      before = ",";
    }
  g_string_append_c (text, '}');
}

static void
append_array (GString   *text,
              JsonArray *array)
{
  guint n = json_array_get_length (array);

  g_string_append_c (text, '[');
  for (guint i = 0; i < n; i++)
    {
      if (i > 0)
        g_string_append_c (text, ',');
      pp_json_append_node (text, json_array_get_element (array, i));
    }
  g_string_append_c (text, ']');
}

void
pp_json_append_node (GString  *text,
                     JsonNode *node)
{
  if (node == NULL || JSON_NODE_HOLDS_NULL (node))
    g_string_append (text, "null");
  else if (JSON_NODE_HOLDS_OBJECT (node))
    append_object (text, json_node_get_object (node));
  else if (JSON_NODE_HOLDS_ARRAY (node))
    append_array (text, json_node_get_array (node));
  else
    append_value (text, node);
}
