/* frame.c: art in another frame.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The art is put whole into another drawing: its root, whose sizes then count from outside, gets
 * the place and size of its box, and scale and shift go round it. It is taken as the judge wrote
 * it, so that its root is told by plain search.
 */
#include "piece/frame.h"

#include "art/art-judge.h"

#include <string.h>

#define PIXELS_PER_MM (96.0 / PP_MM_PER_INCH) /* CSS: of a root without a viewBox */

static void
append_number (GString    *text,
               const char *before,
               double      number)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_printf (text, "%s%s", before, g_ascii_dtostr (digits, sizeof digits, number));
}

static void
append_view (GString *text,
             PpBox    box)
{
  append_number (text, " viewBox=\"", box.x0);
  append_number (text, " ", box.y0);
  append_number (text, " ", pp_box_width (box));
  append_number (text, " ", pp_box_height (box));
  g_string_append_c (text, '"');
}

static PpBox
scale_box (PpBox   box,
           double  scale,
           PpPoint by)
{
  PpBox scaled = { box.x0 * scale, box.y0 * scale, box.x1 * scale, box.y1 * scale };

  return pp_box_move (scaled, by);
}

/* Of the attributes of a start tag, written ` name="value"`, those that do not size it. */
static void
append_unsized (GString    *text,
                const char *attributes,
                const char *end,
                gboolean   *has_view)
{
  static const char *const sizes[] = { "x", "y", "width", "height", NULL };

  while (attributes < end)
    {
      const char *equals = strchr (attributes, '=');
      const char *next = strchr (equals + 2, '"') + 1;
      g_autofree char *name = g_strndup (attributes + 1, (gsize) (equals - attributes - 1));

      *has_view = *has_view || strcmp (name, "viewBox") == 0;
      if (!g_strv_contains (sizes, name))
        g_string_append_len (text, attributes, next - attributes);
      attributes = next;
    }
}

static void
append_inner (GString    *text,
              const char *art,
              PpBox       box)
{
  const char *end = strchr (art, '>');
  const char *attributes = strpbrk (art, " >");
  gboolean has_view = FALSE;

  g_string_append_len (text, art, attributes - art);
  append_unsized (text, attributes, end, &has_view);
  if (!has_view)
    append_view (text, scale_box (box, PIXELS_PER_MM, (PpPoint) { 0, 0 }));
  append_number (text, " x=\"", box.x0);
  append_number (text, "\" y=\"", box.y0);
  append_number (text, "\" width=\"", pp_box_width (box));
  append_number (text, "\" height=\"", pp_box_height (box));
  g_string_append_printf (text, "\"%s", end);
}

GBytes *
pp_frame_art (GBytes  *art,
              double   scale,
              PpPoint  by,
              GError **error)
{
  g_autoptr (PpArt) loaded = pp_art_new (art, error);
  g_autoptr (GBytes) judged = loaded != NULL ? pp_art_judge (art, error) : NULL;
  g_autofree char *inner = NULL;
  GString *text;

  if (judged == NULL)
    return NULL;
  inner = g_strndup (g_bytes_get_data (judged, NULL), g_bytes_get_size (judged));
  text = g_string_new ("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"");
  append_view (text, scale_box (pp_art_get_box (loaded), scale, by));
  append_number (text, "><g transform=\"translate(", by.x);
  append_number (text, " ", by.y);
  append_number (text, ") scale(", scale);
  g_string_append (text, ")\">");
  append_inner (text, strchr (inner, '<'), pp_art_get_box (loaded));
  g_string_append (text, "</g></svg>\n");
  return g_string_free_to_bytes (text);
}
