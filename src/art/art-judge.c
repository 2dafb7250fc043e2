/* art-judge.c: whether a drawing from a stranger may be given to the SVG library, and what of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One walk over the XML by a parser that reads no document type, expands no entity but the five,
 * and opens nothing. What it saw is written anew, and only that goes on, so it does not matter
 * where two XML parsers disagree about odd input (comments, encodings, "<" in values). Names are
 * judged by their local part whatever their namespace, which can only refuse more.
 *
 * Drawing cannot be stopped once begun, so its cost is bounded here. What has no bound that can
 * be told from the text (filters, markers, dashes) is refused.
 */
#define _GNU_SOURCE /* strcasestr */
#include "config.h"

#include "art/art-judge.h"

#include "art/art-cost.h"
#include "art/art-numbers.h"
#include "art/art-refs.h"
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
#define MAX_NUMBER 10000.0     /* mm; a panel is 3000 */
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

static const char *
get_local_name (const char *name)
{
  const char *colon = strchr (name, ':');

  return colon == NULL ? name : colon + 1;
}

static gboolean
is_one_of (const char         *name,
           const char * const *names)
{
  for (; *names != NULL; names++)
    if (g_ascii_strcasecmp (name, *names) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
fail (GError      **error,
      PpArtError    code,
      const char   *text)
{
  g_set_error_literal (error, PP_ART_ERROR, (int) code, text);
  return FALSE;
}

static gboolean
is_svg_root (const char  *name,
             const char **names,
             const char **values)
{
  const char *colon = strchr (name, ':');
  g_autofree char *declaration = NULL;

  if (strcmp (get_local_name (name), "svg") != 0)
    return FALSE;
  declaration = colon == NULL ? g_strdup ("xmlns")
                              : g_strdup_printf ("xmlns:%.*s", (int) (colon - name), name);
  for (guint i = 0; names[i] != NULL; i++)
    if (strcmp (names[i], declaration) == 0)
      return strcmp (values[i], SVG_NAMESPACE) == 0;
  return colon == NULL;
}

static gboolean
judge_name (const char  *name,
            GError     **error)
{
  static const char *const scripts[] = { "script", "handler", "listener", "foreignObject",
                                         "iframe", "object", "embed", NULL };
  static const char *const outside[] = { "include", "font-face-uri", "color-profile", NULL };
  static const char *const costly[] = { "filter", "marker", NULL };
  const char *local = get_local_name (name);

  if (is_one_of (local, scripts))
    return fail (error, PP_ART_ERROR_SCRIPT,
                 _("The drawing holds a script or a part that is no drawing."));
  if (is_one_of (local, outside))
    return fail (error, PP_ART_ERROR_OUTSIDE,
                 _("The drawing refers to something outside itself."));
  if (is_one_of (local, costly) || g_str_has_prefix (local, "fe"))
    return fail (error, PP_ART_ERROR_TOO_MUCH,
                 _("The drawing has filters or markers, which may take very long to draw."));
  return TRUE;
}

/* The value of a declaration that begins at `at`, behind its colon; up to its end. */
static gboolean
value_is (const char *at,
          const char *wanted)
{
  gsize length = strlen (wanted);

  at += strspn (at, " \t\r\n\f:");
  return g_ascii_strncasecmp (at, wanted, length) == 0 && !g_ascii_isalnum (at[length])
         && at[length] != '.' && at[length] != '%';
}

/* Whether a style or style sheet sets `property` to anything but `harmless`. */
static gboolean
css_sets (const char *css,
          const char *property,
          const char *harmless)
{
  for (const char *at = css; (at = strcasestr (at, property)) != NULL; at += strlen (property))
    {
      gboolean is_part_of_longer = at > css && (g_ascii_isalnum (at[-1]) || at[-1] == '-');

      if (!is_part_of_longer && !value_is (at + strlen (property), harmless))
        return TRUE;
    }
  return FALSE;
}

typedef struct
{
  const char *name;
  const char *harmless;
  double      cost;
} Layer;

/* Each makes the library draw the element on a sheet of its own, as large as the whole picture. */
static const Layer layers[] = {
  { "opacity", "1", 4 },
  { "mask", "none", 50 },
  { "mix-blend-mode", "normal", 4 },
  { "isolation", "auto", 4 },
};

static double
get_css_layer_cost (const char *escaped)
{
  g_autofree char *css = pp_art_css_undo_escapes (escaped);
  double cost = 0;

  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    if (css_sets (css, layers[i].name, layers[i].harmless))
      cost += layers[i].cost;
  return cost;
}

static double
get_layer_cost (const char *local,
                const char *value)
{
  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    if (strcmp (local, layers[i].name) == 0)
      return value_is (value, layers[i].harmless) ? 0 : layers[i].cost;
  return strcmp (local, "style") == 0 ? get_css_layer_cost (value) : 0;
}

/* Dashes multiply a line's length by nothing that is known here; an inherited mask or clip is a
 * reference that is written nowhere. */
static gboolean
judge_hidden_cost (const char  *escaped,
                   GError     **error)
{
  g_autofree char *css = pp_art_css_undo_escapes (escaped);

  if (css_sets (css, "stroke-dasharray", "none"))
    return fail (error, PP_ART_ERROR_TOO_MUCH,
                 _("The drawing has dashed lines, which may take very long to draw."));
  if (css_sets (css, "transform", "none") || pp_art_numbers_greatest (css) > MAX_NUMBER)
    return fail (error, PP_ART_ERROR_TOO_MUCH,
                 _("The drawing is larger than any panel, or enlarged in its style."));
  if (strcasestr (css, "inherit") != NULL
      && (strcasestr (css, "mask") != NULL || strcasestr (css, "clip-path") != NULL))
    return fail (error, PP_ART_ERROR_TOO_MUCH,
                 _("The drawing hands down masks or clips, which may take very long to draw."));
  return TRUE;
}

static gboolean
judge_declaration (const char  *local,
                   const char  *value,
                   GError     **error)
{
  static const char *const properties[] = { "stroke-dasharray", "mask", "clip-path", NULL };
  g_autofree char *css = NULL;

  if (strcmp (local, "style") == 0)
    return judge_hidden_cost (value, error);
  if (!is_one_of (local, properties))
    return TRUE;
  css = g_strconcat (local, ":", value, NULL);
  return judge_hidden_cost (css, error);
}

static gboolean
judge_attribute (const char  *name,
                 const char  *value,
                 PpArtRefs   *refs,
                 GError     **error)
{
  const char *local = get_local_name (name);

  if (strcmp (name, "xmlns") == 0 || g_str_has_prefix (name, "xmlns:"))
    return TRUE;
  if (g_ascii_strncasecmp (local, "on", 2) == 0)
    return fail (error, PP_ART_ERROR_SCRIPT, _("The drawing holds a script."));
  if (strcmp (name, "xml:base") == 0)
    return fail (error, PP_ART_ERROR_OUTSIDE,
                 _("The drawing refers to something outside itself."));
  if (g_ascii_strcasecmp (local, "href") == 0 || g_ascii_strcasecmp (local, "src") == 0)
    return *value == '\0' || pp_art_refs_add_address (refs, value, error);
  return pp_art_refs_add_css (refs, value, error) && judge_declaration (local, value, error);
}

static PpArtPart
get_part (const char *name)
{
  static const char *const gradients[] = { "linearGradient", "radialGradient", "stop", NULL };
  const char *local = get_local_name (name);

  if (is_one_of (local, gradients))
    return PP_ART_GRADIENT;
  return g_ascii_strcasecmp (local, "pattern") == 0 ? PP_ART_PATTERN : PP_ART_DRAWN;
}

/* What an attribute adds to its element's cost. A picture's bytes cost nothing, its pixels do. */
static double
get_attribute_cost (const char *name,
                    const char *value)
{
  const char *local = get_local_name (name);
  double cost = get_layer_cost (local, value);

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

  if (!is_one_of (name, sized_attributes))
    return TRUE;
  if (g_str_has_suffix (name, "ransform"))
    pp_art_cost_enlarge (self->cost, element, fmax (1, pp_art_numbers_scale (value)));
  greatest = pp_art_numbers_greatest (value) * self->shrink[self->depth];
  bend = fmax (1, sqrt (greatest / self->side));
  pp_art_cost_weigh (self->cost, element, bend - 1);
  if (strcmp (name, "d") == 0 || strcmp (name, "points") == 0)
    pp_art_cost_weigh (self->cost, element, length * length * bend * bend / PATH_BYTES_SQUARED);
  if (greatest > MAX_NUMBER || (strcmp (name, "viewBox") == 0 && !read_view_box (value, &side)))
    return fail (error, PP_ART_ERROR_TOO_MUCH,
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
      if (!judge_attribute (names[i], values[i], &refs, error)
          || !judge_size (self, element, names[i], values[i], error))
        return FALSE;
      pp_art_cost_weigh (self->cost, element, get_attribute_cost (names[i], values[i]));
      if (strcmp (get_local_name (names[i]), "id") == 0)
        pp_art_cost_name (self->cost, element, values[i]);
    }
  for (guint i = 0; i < refs.ids->len; i++)
    pp_art_cost_refer (self->cost, element, g_ptr_array_index (refs.ids, i));
  pp_art_cost_weigh (self->cost, element, refs.pixels / PIXELS_PER_ELEMENT);
  self->pixels += refs.pixels;
  return self->pixels <= MAX_PIXELS
         || fail (error, PP_ART_ERROR_TOO_MUCH, _("The drawing's pictures are too large."));
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
      else if (strcmp (get_local_name (names[i]), "id") == 0)
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
start_element (GMarkupParseContext *context,
               const char          *name,
               const char         **names,
               const char         **values,
               gpointer             data,
               GError             **error)
{
  Judge *self = data;
  guint parent = self->depth == 0 ? PP_ART_NO_PARENT : self->path[self->depth - 1];

  if (self->n_elements == 0 && !is_svg_root (name, names, values))
    {
      fail (error, PP_ART_ERROR_NOT_SVG, _("This is not an SVG drawing."));
      return;
    }
  if (self->depth == MAX_DEPTH || self->n_elements == MAX_ELEMENTS)
    {
      fail (error, PP_ART_ERROR_TOO_MUCH, _("The drawing has too many parts to be drawn quickly."));
      return;
    }
  if (!judge_name (name, error))
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
  if (self->style_depth == 0 && g_ascii_strcasecmp (get_local_name (name), "style") == 0)
    self->style_depth = self->depth;
  write_start (self->out, name, names, values);
}

static void
end_element (GMarkupParseContext *context,
             const char          *name,
             gpointer             data,
             GError             **error)
{
  Judge *self = data;

  if (self->style_depth == self->depth)
    self->style_depth = 0;
  self->depth--;
  g_string_append_printf (self->out, "</%s>", name);
}

static void
add_text (GMarkupParseContext *context,
          const char          *text,
          gsize                length,
          gpointer             data,
          GError             **error)
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
judge_passthrough (GMarkupParseContext *context,
                   const char          *text,
                   gsize                length,
                   gpointer             data,
                   GError             **error)
{
  if (g_str_has_prefix (text, "<?xml-stylesheet"))
    fail (error, PP_ART_ERROR_OUTSIDE, _("The drawing refers to something outside itself."));
  else if (!g_str_has_prefix (text, "<?") && !g_str_has_prefix (text, "<!--"))
    fail (error, PP_ART_ERROR_SCRIPT, _("The drawing declares a document type."));
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
      || !judge_hidden_cost (self->style->str, error))
    return FALSE;
  for (const char *at = css; *at != '\0'; at++)
    selectors += *at == '{' || *at == ',';
  if (self->style->len > MAX_STYLE || selectors * self->n_elements > MAX_MATCHES
      || strchr (css, '~') != NULL || strcasestr (css, ":nth-") != NULL || refs.pixels > 0)
    return fail (error, PP_ART_ERROR_TOO_MUCH, _("The drawing's style sheet is too costly."));
  for (guint i = 0; i < refs.ids->len; i++)
    pp_art_cost_refer_by_all (self->cost, g_ptr_array_index (refs.ids, i));
  pp_art_cost_weigh_all (self->cost, get_css_layer_cost (self->style->str));
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
      fail (error, PP_ART_ERROR_TOO_MUCH, _("The drawing is too large."));
      return NULL;
    }
  if (length == 0 || !g_utf8_validate (text, (gssize) length, NULL))
    {
      fail (error, PP_ART_ERROR_NOT_SVG, _("This is not an SVG drawing."));
      return NULL;
    }
  if (length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0)
    {
      text += 3;
      length -= 3;
    }
  if (!walk (&self, text, length, error) || !judge_style_sheets (&self, error))
    return NULL;
  pp_art_cost_weigh (cost, 0, self.words * self.words / TEXT_BYTES_SQUARED);
  if (!pp_art_cost_is_allowed (cost, error))
    return NULL;
  return g_string_free_to_bytes (g_steal_pointer (&out));
}
