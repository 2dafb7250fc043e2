/* art-rules.c: what an element's name and its attributes may be.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Names are judged by their local part whatever their namespace, which can only refuse more. What
 * has no bound that can be told from the text (filters, markers, dashes) is refused.
 */
#define _GNU_SOURCE /* strcasestr */
#include "config.h"

#include "art/art-rules.h"

#include "art/art-fail.h"
#include "art/art-numbers.h"
#include "panel/i18n.h"

#include <string.h>

const char *
pp_art_get_local_name (const char *name)
{
  const char *colon = strchr (name, ':');

  return colon == NULL ? name : colon + 1;
}

gboolean
pp_art_is_one_of (const char         *name,
                  const char * const *names)
{
  for (; *names != NULL; names++)
    if (g_ascii_strcasecmp (name, *names) == 0)
      return TRUE;
  return FALSE;
}

gboolean
pp_art_rules_judge_name (const char  *name,
                         GError     **error)
{
  static const char *const scripts[] = { "script", "handler", "listener", "foreignObject",
                                         "iframe", "object", "embed", NULL };
  static const char *const outside[] = { "include", "font-face-uri", "color-profile", NULL };
  static const char *const costly[] = { "filter", "marker", NULL };
  const char *local = pp_art_get_local_name (name);

  if (pp_art_is_one_of (local, scripts))
    return pp_art_fail (error, PP_ART_ERROR_SCRIPT,
                        _("The drawing holds a script or a part that is no drawing."));
  if (pp_art_is_one_of (local, outside))
    return pp_art_fail_outside (error);
  if (pp_art_is_one_of (local, costly) || g_str_has_prefix (local, "fe"))
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
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
  { "mask", "none", 200 },
  { "mix-blend-mode", "normal", 4 },
  { "isolation", "auto", 4 },
};

double
pp_art_rules_get_css_layer_cost (const char *escaped)
{
  g_autofree char *css = pp_art_css_undo_escapes (escaped);
  double cost = 0;

  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    if (css_sets (css, layers[i].name, layers[i].harmless))
      cost += layers[i].cost;
  return cost;
}

double
pp_art_rules_get_layer_cost (const char *local,
                             const char *value)
{
  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    if (strcmp (local, layers[i].name) == 0)
      return value_is (value, layers[i].harmless) ? 0 : layers[i].cost;
  return strcmp (local, "style") == 0 ? pp_art_rules_get_css_layer_cost (value) : 0;
}

/* Dashes multiply a line's length by nothing that is known here; an inherited mask or clip is a
 * reference that is written nowhere. */
gboolean
pp_art_rules_judge_css (const char  *escaped,
                        GError     **error)
{
  g_autofree char *css = pp_art_css_undo_escapes (escaped);

  if (css_sets (css, "stroke-dasharray", "none"))
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                        _("The drawing has dashed lines, which may take very long to draw."));
  if (css_sets (css, "transform", "none") || pp_art_numbers_greatest (css) > PP_ART_MAX_NUMBER)
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                        _("The drawing is larger than any panel, or enlarged in its style."));
  if (strcasestr (css, "inherit") != NULL
      && (strcasestr (css, "mask") != NULL || strcasestr (css, "clip-path") != NULL))
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                        _("The drawing hands down masks or clips, which may take very "
                          "long to draw."));
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
    return pp_art_rules_judge_css (value, error);
  if (!pp_art_is_one_of (local, properties))
    return TRUE;
  css = g_strconcat (local, ":", value, NULL);
  return pp_art_rules_judge_css (css, error);
}

gboolean
pp_art_rules_judge_attribute (const char  *name,
                              const char  *value,
                              PpArtRefs   *refs,
                              GError     **error)
{
  const char *local = pp_art_get_local_name (name);

  if (strcmp (name, "xmlns") == 0 || g_str_has_prefix (name, "xmlns:"))
    return TRUE;
  if (g_ascii_strncasecmp (local, "on", 2) == 0)
    return pp_art_fail (error, PP_ART_ERROR_SCRIPT, _("The drawing holds a script."));
  if (strcmp (name, "xml:base") == 0)
    return pp_art_fail_outside (error);
  if (g_ascii_strcasecmp (local, "href") == 0 || g_ascii_strcasecmp (local, "src") == 0)
    return *value == '\0' || pp_art_refs_add_address (refs, value, error);
  return pp_art_refs_add_css (refs, value, error) && judge_declaration (local, value, error);
}
