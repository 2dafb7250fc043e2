/* drawing-part.c: the parts of a drawing that have a name of their own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/drawing-part.h"

#include <string.h>

static void
free_part (gpointer data)
{
  PpDrawingPart *part = data;

  g_free (part->id);
  g_free (part);
}

typedef struct
{
  GPtrArray *parts;
  guint      depth;
  guint      hidden; /* the depth of the definition it is in; 0: in none */
} Reading;

static const char *
get_local (const char *name)
{
  const char *colon = strrchr (name, ':');

  return colon != NULL ? colon + 1 : name;
}

static gboolean
is_without_fill (const char *name,
                 const char *value)
{
  g_autofree char *squeezed = g_strdup (value);
  char *to = squeezed;

  for (const char *from = value; *from != '\0'; from++)
    if (!g_ascii_isspace (*from))
      *to++ = *from;
  *to = '\0';
  if (strcmp (name, "fill") == 0)
    return strcmp (squeezed, "none") == 0;
  return strcmp (name, "style") == 0 && strstr (squeezed, "fill:none") != NULL;
}

static void
add_part (Reading     *self,
          const char **names,
          const char **values)
{
  PpDrawingPart part = { NULL, FALSE };

  for (guint i = 0; names[i] != NULL; i++)
    {
      if (strcmp (names[i], "id") == 0 && *values[i] != '\0')
        part.id = (char *) values[i];
      part.is_line = part.is_line || is_without_fill (names[i], values[i]);
    }
  if (part.id == NULL || self->parts->len >= PP_DRAWING_MOST_PARTS)
    return;
  part.id = g_strdup (part.id);
  g_ptr_array_add (self->parts, g_memdup2 (&part, sizeof part));
}

static void
start_cb (GMarkupParseContext  *context,
          const char           *name,
          const char          **names,
          const char          **values,
          gpointer              data,
          GError              **error)
{
  static const char *const drawn[] = { "path", "rect", "circle", "ellipse", "polygon", "polyline",
                                       "line", "g", "use", "image", "text", NULL };
  static const char *const defined[] = { "defs", "clipPath", "mask", "symbol", "pattern", "marker",
                                         "linearGradient", "radialGradient", NULL };
  Reading *self = data;

  self->depth++;
  if (self->hidden == 0 && g_strv_contains (defined, get_local (name)))
    self->hidden = self->depth;
  else if (self->hidden == 0 && g_strv_contains (drawn, get_local (name)))
    add_part (self, names, values);
}

static void
end_cb (GMarkupParseContext  *context,
        const char           *name,
        gpointer              data,
        GError              **error)
{
  Reading *self = data;

  if (self->hidden == self->depth)
    self->hidden = 0;
  self->depth--;
}

GPtrArray *
pp_drawing_parts (GBytes *judged)
{
  const GMarkupParser parser = { .start_element = start_cb, .end_element = end_cb };
  Reading reading = { g_ptr_array_new_with_free_func (free_part), 0, 0 };
  GMarkupParseContext *context = g_markup_parse_context_new (&parser, 0, &reading, NULL);

  g_markup_parse_context_parse (context, g_bytes_get_data (judged, NULL),
                                (gssize) g_bytes_get_size (judged), NULL);
  g_markup_parse_context_free (context);
  return reading.parts;
}

const PpDrawingPart *
pp_drawing_parts_find (const GPtrArray *parts,
                       const char      *id)
{
  for (guint i = 0; i < parts->len; i++)
    {
      const PpDrawingPart *part = parts->pdata[i];

      if (strcmp (part->id, id) == 0)
        return part;
    }
  return NULL;
}
