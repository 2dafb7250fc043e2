/* art-judge.c: whether a drawing from a stranger may be given to the SVG library, and what of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One walk over the XML by a parser that reads no document type, expands no entity but the five,
 * and opens nothing. What it saw is written anew, and only that goes on, so it does not matter
 * where two XML parsers disagree about odd input (comments, encodings, "<" in values).
 *
 * Drawing cannot be stopped once begun, so its cost is bounded here and in art-rules.c.
 */
#define _GNU_SOURCE /* strcasestr */
#include "config.h"

#include "art/art-judge.h"

#include "art/art-cost.h"
#include "art/art-fail.h"
#include "art/art-numbers.h"
#include "art/art-refs.h"
#include "art/art-rules.h"
#include "panel/i18n.h"

#include <string.h>

#define MAX_ELEMENTS 10000
#define MAX_DEPTH 64
#define MAX_PIXELS 24.0e6      /* of all embedded pictures */
#define MAX_STYLE 65536        /* bytes of style sheets */
#define MAX_MATCHES 2.0e6      /* selectors times elements */
#define BYTES_PER_ELEMENT 64   /* of attributes, as costly as one element */
#define PATTERN_COST 20        /* a tile is a sheet of its own */
#define PIXELS_PER_ELEMENT 5000 /* of embedded pictures */
#define USUAL_SIDE 100.0       /* mm */
/* Crossing lines make a path's cost grow with its square; so does one long line of text. */
#define PATH_BYTES_SQUARED 200000.0
#define TEXT_BYTES_SQUARED 1500.0
#define SVG_NAMESPACE "http://www.w3.org/2000/svg"

typedef struct
{
  GString   *out;     /* the drawing written anew */
  GString   *style;   /* all style sheets together */
  PpArtCost *cost;
  guint      depth;
  guint      n_elements;
  guint      path[MAX_DEPTH]; /* elements that are open */
  double     shrink[MAX_DEPTH]; /* 1 or how much smaller their parts are drawn */
  guint      style_depth;     /* of the outermost style element that is open; 0: none */
  double     side;  /* mm, longer side of the root's view box */
  double     pixels;
  double     words; /* bytes of text */
} Judge;

static gboolean
is_svg_root (const char  *name,
             const char **names,
             const char **values)
{
  const char *colon = strchr (name, ':');
  g_autofree char *declaration = NULL;

  if (strcmp (pp_art_get_local_name (name), "svg") != 0)
    return FALSE;
  declaration = colon == NULL ? g_strdup ("xmlns")
                              : g_strdup_printf ("xmlns:%.*s", (int) (colon - name), name);
  for (guint i = 0; names[i] != NULL; i++)
    if (strcmp (names[i], declaration) == 0)
      return strcmp (values[i], SVG_NAMESPACE) == 0;
  return colon == NULL;
}

static PpArtPart
get_part (const char *name)
{
  static const char *const gradients[] = { "linearGradient", "radialGradient", "stop", NULL };
  const char *local = pp_art_get_local_name (name);

  if (pp_art_is_one_of (local, gradients))
    return PP_ART_GRADIENT;
  return g_ascii_strcasecmp (local, "pattern") == 0 ? PP_ART_PATTERN : PP_ART_DRAWN;
}

/* What an attribute adds to its element's cost. A picture's bytes cost nothing, its pixels do. */
static double
get_attribute_cost (const char *name,
                    const char *value)
{
  const char *local = pp_art_get_local_name (name);
  double cost = pp_art_rules_get_layer_cost (local, value);

  if (g_ascii_strcasecmp (local, "href") == 0)
    return cost;
  return cost + (double) strlen (value) / BYTES_PER_ELEMENT;
}

/* Sides of a view box; FALSE if it is none or one side is under 1 mm, which would enlarge without
 * bound. */
static gboolean
read_view_box (const char *value,
               double     *longer)
{
  double sides[4] = { 0 };
  g_auto (GStrv) parts = g_strsplit_set (value, " ,\t\r\n", -1);
  guint n = 0;

  for (guint i = 0; parts[i] != NULL && n < G_N_ELEMENTS (sides); i++)
    if (*parts[i] != '\0')
      sides[n++] = g_ascii_strtod (parts[i], NULL);
  *longer = MAX (sides[2], sides[3]);
  return n == G_N_ELEMENTS (sides) && sides[2] >= 1 && sides[3] >= 1;
}

/* Not those of a gradient, which costs the same however it is stretched. */
static const char *const sized_attributes[] = {
  "d",      "points",       "x",         "y",          "x1",           "y1",
  "x2",     "y2",           "cx",        "cy",         "r",            "rx",
  "ry",     "dx",           "dy",        "width",      "height",       "font-size",
  "stroke-width",           "transform", "viewBox",    "patternTransform",
  "letter-spacing",         "word-spacing",            "textLength",
  "stroke-miterlimit",      "stroke-dashoffset",       NULL,
};

/* A curve larger than the drawing is cut into more lines, as the square root of its size; in a
 * path each may cross each. */
static gboolean
judge_size (Judge       *self,
            guint        element,
            const char  *name,
            const char  *value,
            GError     **error)
{
  double greatest, bend, side;
  double length = (double) strlen (value);

  if (!pp_art_is_one_of (name, sized_attributes))
    return TRUE;
  if (g_str_has_suffix (name, "ransform"))
    pp_art_cost_enlarge (self->cost, element, fmax (1, pp_art_numbers_scale (value)));
  greatest = pp_art_numbers_greatest (value) * self->shrink[self->depth];
  bend = fmax (1, sqrt (greatest / self->side));
  pp_art_cost_weigh (self->cost, element, bend - 1);
  if (strcmp (name, "d") == 0 || strcmp (name, "points") == 0)
    pp_art_cost_weigh (self->cost, element, length * length * bend * bend / PATH_BYTES_SQUARED);
  if (greatest > PP_ART_MAX_NUMBER
      || (strcmp (name, "viewBox") == 0 && !read_view_box (value, &side)))
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                        _("The drawing has a size that no piece can have."));
  return TRUE;
}

static gboolean
judge_attributes (Judge       *self,
                  guint        element,
                  const char **names,
                  const char **values,
                  GError     **error)
{
  g_auto (PpArtRefs) refs = { 0 };

  pp_art_refs_init (&refs);
  for (guint i = 0; names[i] != NULL; i++)
    {
      if (!pp_art_rules_judge_attribute (names[i], values[i], &refs, error)
          || !judge_size (self, element, names[i], values[i], error))
        return FALSE;
      pp_art_cost_weigh (self->cost, element, get_attribute_cost (names[i], values[i]));
      if (strcmp (pp_art_get_local_name (names[i]), "id") == 0)
        pp_art_cost_name (self->cost, element, values[i]);
    }
  for (guint i = 0; i < refs.ids->len; i++)
    pp_art_cost_refer (self->cost, element, g_ptr_array_index (refs.ids, i));
  pp_art_cost_weigh (self->cost, element, refs.pixels / PIXELS_PER_ELEMENT);
  self->pixels += refs.pixels;
  return self->pixels <= MAX_PIXELS
         || pp_art_fail (error, PP_ART_ERROR_TOO_MUCH, _("The drawing's pictures are too large."));
}

static void
write_start (GString     *out,
             const char  *name,
             const char **names,
             const char **values)
{
  g_string_append_printf (out, "<%s", name);
  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autofree char *value = g_markup_escape_text (values[i], -1);

      g_string_append_printf (out, " %s=\"%s\"", names[i], value);
    }
  g_string_append_c (out, '>');
}

/* What has an id may be drawn elsewhere too, where nothing above it makes it smaller. */
static double
get_shrink (Judge       *self,
            const char **names,
            const char **values)
{
  double above = self->depth == 0 ? 1 : self->shrink[self->depth - 1];
  double own = 1;

  for (guint i = 0; names[i] != NULL; i++)
    {
      if (strcmp (names[i], "transform") == 0)
        own = pp_art_numbers_scale (values[i]);
      else if (strcmp (pp_art_get_local_name (names[i]), "id") == 0)
        above = 1;
    }
  return fmin (1, above * own);
}

static double
get_root_side (const char **names,
               const char **values)
{
  double side;

  for (guint i = 0; names[i] != NULL; i++)
    if (strcmp (names[i], "viewBox") == 0 && read_view_box (values[i], &side))
      return side;
  return USUAL_SIDE;
}

static void
start_element (GMarkupParseContext  *context,
               const char           *name,
               const char          **names,
               const char          **values,
               gpointer              data,
               GError              **error)
{
  Judge *self = data;
  guint parent = self->depth == 0 ? PP_ART_NO_PARENT : self->path[self->depth - 1];

  if (self->n_elements == 0 && !is_svg_root (name, names, values))
    {
      pp_art_fail (error, PP_ART_ERROR_NOT_SVG, _("This is not an SVG drawing."));
      return;
    }
  if (self->depth == MAX_DEPTH || self->n_elements == MAX_ELEMENTS)
    {
      pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                   _("The drawing has too many parts to be drawn quickly."));
      return;
    }
  if (!pp_art_rules_judge_name (name, error))
    return;
  if (self->n_elements == 0)
    self->side = get_root_side (names, values);
  self->path[self->depth] = pp_art_cost_add (self->cost, parent, get_part (name));
  self->shrink[self->depth] = get_shrink (self, names, values);
  if (get_part (name) == PP_ART_PATTERN)
    pp_art_cost_weigh (self->cost, self->path[self->depth], PATTERN_COST);
  self->n_elements++;
  if (!judge_attributes (self, self->path[self->depth], names, values, error))
    return;
  self->depth++;
  if (self->style_depth == 0 && g_ascii_strcasecmp (pp_art_get_local_name (name), "style") == 0)
    self->style_depth = self->depth;
  write_start (self->out, name, names, values);
}

static void
end_element (GMarkupParseContext  *context,
             const char           *name,
             gpointer              data,
             GError              **error)
{
  Judge *self = data;

  if (self->style_depth == self->depth)
    self->style_depth = 0;
  self->depth--;
  g_string_append_printf (self->out, "</%s>", name);
}

static void
add_text (GMarkupParseContext  *context,
          const char           *text,
          gsize                 length,
          gpointer              data,
          GError              **error)
{
  Judge *self = data;
  g_autofree char *escaped = g_markup_escape_text (text, (gssize) length);

  if (self->depth == 0)
    return;
  g_string_append (self->out, escaped);
  if (self->style_depth > 0)
    g_string_append_len (self->style, text, (gssize) length);
  else if (strspn (text, " \t\r\n") < length)
    {
      pp_art_cost_weigh (self->cost, self->path[self->depth - 1], (double) length);
      self->words += (double) length;
    }
}

/* Comments, processing instructions, document types: none is written anew. */
static void
judge_passthrough (GMarkupParseContext  *context,
                   const char           *text,
                   gsize                 length,
                   gpointer              data,
                   GError              **error)
{
  if (g_str_has_prefix (text, "<?xml-stylesheet"))
    pp_art_fail_outside (error);
  else if (!g_str_has_prefix (text, "<?") && !g_str_has_prefix (text, "<!--"))
    pp_art_fail (error, PP_ART_ERROR_SCRIPT, _("The drawing declares a document type."));
}

/* After the walk, because a sheet holds for elements before it too. */
static gboolean
judge_style_sheets (Judge   *self,
                    GError **error)
{
  g_auto (PpArtRefs) refs = { 0 };
  g_autofree char *css = pp_art_css_undo_escapes (self->style->str);
  double selectors = 1;

  pp_art_refs_init (&refs);
  if (!pp_art_refs_add_css (&refs, self->style->str, error)
      || !pp_art_rules_judge_css (self->style->str, error))
    return FALSE;
  for (const char *at = css; *at != '\0'; at++)
    selectors += *at == '{' || *at == ',';
  if (self->style->len > MAX_STYLE || selectors * self->n_elements > MAX_MATCHES
      || strchr (css, '~') != NULL || strcasestr (css, ":nth-") != NULL || refs.pixels > 0)
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                        _("The drawing's style sheet is too costly."));
  for (guint i = 0; i < refs.ids->len; i++)
    pp_art_cost_refer_by_all (self->cost, g_ptr_array_index (refs.ids, i));
  pp_art_cost_weigh_all (self->cost, pp_art_rules_get_css_layer_cost (self->style->str));
  return TRUE;
}

static gboolean
walk (Judge       *self,
      const char  *text,
      gsize        length,
      GError     **error)
{
  static const GMarkupParser parser = { start_element, end_element, add_text, judge_passthrough,
                                        NULL };
  g_autoptr (GMarkupParseContext) context
    = g_markup_parse_context_new (&parser, G_MARKUP_TREAT_CDATA_AS_TEXT, self, NULL);
  g_autoptr (GError) reason = NULL;
  int line;

  if (g_markup_parse_context_parse (context, text, (gssize) length, &reason)
      && g_markup_parse_context_end_parse (context, &reason))
    return TRUE;
  if (reason->domain == PP_ART_ERROR)
    {
      g_propagate_error (error, g_steal_pointer (&reason));
      return FALSE;
    }
  g_markup_parse_context_get_position (context, &line, NULL);
  g_set_error (error, PP_ART_ERROR, PP_ART_ERROR_NOT_SVG,
               _("The drawing is not well-formed SVG (line %d)."), line);
  return FALSE;
}

GBytes *
pp_art_judge (GBytes  *svg,
              GError **error)
{
  g_autoptr (GString) out = g_string_new (NULL);
  g_autoptr (GString) style = g_string_new (NULL);
  g_autoptr (PpArtCost) cost = pp_art_cost_new ();
  Judge self = { .out = out, .style = style, .cost = cost };
  gsize length;
  const char *text = g_bytes_get_data (svg, &length);

  if (length > PP_PIECE_MAX_ART)
    {
      pp_art_fail (error, PP_ART_ERROR_TOO_MUCH, _("The drawing is too large."));
      return NULL;
    }
  if (length == 0 || !g_utf8_validate (text, (gssize) length, NULL))
    {
      pp_art_fail (error, PP_ART_ERROR_NOT_SVG, _("This is not an SVG drawing."));
      return NULL;
    }
  if (length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0)
    {
      text += 3;
      length -= 3;
    }
  if (!walk (&self, text, length, error))
    return NULL;
  if (self.n_elements == 0) /* the parser is content with a declaration alone */
    {
      pp_art_fail (error, PP_ART_ERROR_NOT_SVG, _("This is not an SVG drawing."));
      return NULL;
    }
  if (!judge_style_sheets (&self, error))
    return NULL;
  pp_art_cost_weigh (cost, 0, self.words * self.words / TEXT_BYTES_SQUARED);
  if (!pp_art_cost_is_allowed (cost, error))
    return NULL;
  return g_string_free_to_bytes (g_steal_pointer (&out));
}
