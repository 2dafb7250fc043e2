/* json-layout.c: one pass over the text, writing each token with the space before it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Looking ahead is cheap: a byte is searched for an object at most once for each array around it,
 * and the measure of an element stops at the end of a line.
 */
#include "file/json-layout.h"

#include <string.h>

typedef struct
{
  GString *out;
  gsize line_start; /* in out */
  guint depth;
  guint running; /* of the levels, how many are arrays that run on in their line */
} Layout;

static const char *
skip_space (const char *p)
{
  return p + strspn (p, " \n\t\r");
}

/* The end of the text in quotation marks that begins here. */
static const char *
skip_string (const char *p)
{
  for (p++; *p != '"'; p++)
    if (*p == '\\')
      p++;
  return p + 1;
}

/* The end of a text, a number or a word. */
static const char *
skip_scalar (const char *p)
{
  return *p == '"' ? skip_string (p) : p + strcspn (p, ",:]} \n\t\r");
}

/* Whether no object stands in the array that begins here. */
static gboolean
can_run_on (const char *p)
{
  int depth = 0;

  do
    {
      p = *p == '"' ? skip_string (p) : p + 1;
      p = skip_space (p);
      depth += (*p == '[') - (*p == ']');
    }
  while (*p != '{' && depth >= 0);
  return *p != '{';
}

/* Bytes that the element beginning here will take on a line, with the brackets and the comma that
 * cannot be parted from its end; or more than limit. */
static gsize
measure (const char *p,
         gsize       limit)
{
  gsize n = 0;
  int depth = 0;

  do
    {
      const char *end = strchr ("[],", *p) != NULL ? p + 1 : skip_scalar (p);

      depth += (*p == '[') - (*p == ']');
      n += end - p + (*p == ',' ? 1 : 0);
      p = skip_space (end);
    }
  while (depth > 0 && n <= limit);
  for (; *p == ']'; p = skip_space (p + 1))
    n++;
  return n + (*p == ',' ? 1 : 0);
}

static void
break_line (Layout *layout)
{
  g_string_append_c (layout->out, '\n');
  layout->line_start = layout->out->len;
  for (guint i = 0; i < layout->depth; i++)
    g_string_append (layout->out, "  ");
}

static void
open_level (Layout     *layout,
            const char *p)
{
  gboolean runs_on = layout->running > 0 || (*p == '[' && can_run_on (p));
  char close = *p == '[' ? ']' : '}';

  g_string_append_c (layout->out, *p);
  layout->depth++;
  if (runs_on)
    layout->running++;
  else if (*skip_space (p + 1) != close)
    break_line (layout);
}

static void
close_level (Layout *layout,
             char    bracket)
{
  char last = layout->out->str[layout->out->len - 1];

  layout->depth--;
  if (layout->running > 0)
    layout->running--;
  else if (last != '{' && last != '[')
    break_line (layout);
  g_string_append_c (layout->out, bracket);
}

/* next: what follows the comma. */
static void
separate (Layout     *layout,
          const char *next)
{
  gsize column = layout->out->len + 1 - layout->line_start;

  g_string_append_c (layout->out, ',');
  if (layout->running > 0
      && column + strlen (" ") + measure (next, PP_JSON_LINE) <= PP_JSON_LINE)
    g_string_append_c (layout->out, ' ');
  else
    break_line (layout);
}

/* Lays out the token at p and returns its end. */
static const char *
lay_out_token (Layout     *layout,
               const char *p)
{
  const char *end = p + 1;

  switch (*p)
    {
    case '{':
    case '[':
      open_level (layout, p);
      break;
    case '}':
    case ']':
      close_level (layout, *p);
      break;
    case ',':
      separate (layout, skip_space (end));
      break;
    case ':':
      g_string_append (layout->out, ": ");
      break;
    default:
      end = skip_scalar (p);
      g_string_append_len (layout->out, p, end - p);
      break;
    }
  return end;
}

GString *
pp_json_layout (const char *json)
{
  Layout layout = { .out = g_string_sized_new (strlen (json)) };

  for (const char *p = skip_space (json); *p != '\0'; p = skip_space (p))
    p = lay_out_token (&layout, p);
  g_string_append_c (layout.out, '\n');
  return layout.out;
}
