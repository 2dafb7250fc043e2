/* piece-words.c: what is written about a piece on the command line, KEY=VALUE.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "cli/piece-words.h"

#include "panel/i18n.h"
#include "panel/measure.h"

#include <string.h>

gboolean
pp_word_read_count (const char *text,
                    guint       least,
                    guint      *count)
{
  guint64 number;

  if (!g_ascii_string_to_unsigned (text, 10, least, G_MAXINT, &number, NULL))
    return FALSE;
  *count = (guint) number;
  return TRUE;
}

gboolean
pp_word_read_weight (const char *text,
                     double     *g)
{
  double weight;

  if (!pp_mass_parse (text, PP_UNITS_MM, &weight) || weight <= 0)
    return FALSE;
  *g = weight;
  return TRUE;
}

gboolean
pp_word_read_length (const char *text,
                     double     *mm)
{
  return pp_length_parse (text, PP_UNITS_MM, mm);
}

gboolean
pp_word_split (const char  *word,
               char       **key,
               const char **value)
{
  const char *equals = strchr (word, '=');

  if (equals == NULL || equals == word)
    return FALSE;
  *key = g_strndup (word, (gsize) (equals - word));
  *value = equals + 1;
  return TRUE;
}

static gboolean
read_kind (const char *text,
           int        *answer)
{
  PpKind kind;

  if (!pp_kind_from_name (text, &kind))
    return FALSE;
  *answer = (int) kind;
  return TRUE;
}

static gboolean
read_touch (const char *text,
            int        *answer)
{
  PpTouch touch;

  if (!pp_touch_from_name (text, &touch))
    return FALSE;
  *answer = (int) touch;
  return TRUE;
}

static gboolean
read_light (const char *text,
            int        *answer)
{
  PpLight light;

  if (!pp_light_from_name (text, &light))
    return FALSE;
  *answer = (int) light;
  return TRUE;
}

gboolean
pp_word_read_answer (PpAnswers  *answers,
                     const char *key,
                     const char *value)
{
  if (strcmp (key, "count") == 0)
    return pp_word_read_count (value, 1, &answers->count);
  if (strcmp (key, "kind") == 0)
    return read_kind (value, &answers->kind);
  if (strcmp (key, "touches") == 0)
    return read_touch (value, &answers->touch);
  if (strcmp (key, "gap") == 0)
    return pp_word_read_length (value, &answers->gap);
  if (strcmp (key, "light") == 0)
    return read_light (value, &answers->light);
  if (strcmp (key, "thickness") == 0)
    return pp_word_read_length (value, &answers->thickness);
  if (strcmp (key, "weight") == 0)
    return pp_word_read_weight (value, &answers->weight);
  if (strcmp (key, "weighed") == 0)
    return pp_word_read_count (value, 1, &answers->weighed);
  if (strcmp (key, "name") != 0)
    return FALSE;
  answers->name = value;
  return TRUE;
}

const char *
pp_word_find_gap_fault (int    touch,
                        double gap)
{
  if (isnan (gap) || gap <= 0 || (touch != PP_AS_MADE && touch != PP_TOUCH_ALL))
    return NULL;
  return _("gap is the light under the high part of a piece; touches=middle, rim, ends, base or "
           "tip must say which part is low.");
}

gboolean
pp_word_is_gap_guessed (const PpAnswers *answers)
{
  return answers->touch != PP_AS_MADE && answers->touch != PP_TOUCH_ALL && isnan (answers->gap);
}

const char *
pp_word_usual_thickness (void)
{
  return _("Not measured, so estimated: thickness, about 6 mm.");
}

const char *
pp_word_list_answers (void)
{
  return _("name; count; kind (flower, bud, leaf, stem, filler); thickness; touches (all, middle, "
           "rim, ends, base, tip: what touches a flat top), gap (under the high part); weight and "
           "weighed (how many together); light (none, shadow, clear: a black line seen through "
           "it)");
}
