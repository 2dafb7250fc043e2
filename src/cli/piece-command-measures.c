/* piece-command-measures.c: petalpane-cli piece measures.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "cli/piece-command.h"

#include "cli/command.h"
#include "cli/piece-words.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "piece/measures.h"

#include <string.h>

/* Keys that are no measures of the recipe. FALSE: no such key, or not such a value. */
static gboolean
read_other (PpMeasures *measures,
            const char *key,
            const char *value)
{
  if (strcmp (key, "touches") == 0)
    return pp_touch_from_name (value, &measures->lying.touch);
  if (strcmp (key, "gap") == 0)
    return pp_word_read_length (value, &measures->lying.gap);
  if (strcmp (key, "foot") == 0)
    return pp_word_read_length (value, &measures->lying.foot);
  if (strcmp (key, "touching") == 0)
    return pp_word_read_length (value, &measures->lying.touching);
  if (strcmp (key, "light") == 0)
    return pp_light_from_name (value, &measures->light);
  if (strcmp (key, "weight") == 0)
    return pp_word_read_weight (value, &measures->weight);
  if (strcmp (key, "weighed") == 0)
    return pp_word_read_count (value, 1, &measures->weighed);
  if (strcmp (key, "kind") == 0)
    return pp_kind_from_name (value, &measures->kind);
  if (strcmp (key, "count") == 0)
    return pp_word_read_count (value, 1, &measures->count);
  if (strcmp (key, "seed") == 0)
    return pp_word_read_count (value, 0, &measures->seed);
  if (strcmp (key, "name") == 0)
    measures->name = value;
  else if (strcmp (key, "colour") == 0)
    measures->colour = value;
  else
    return FALSE;
  return TRUE;
}

static gboolean
read_pair (PpMeasures *measures,
           const char *pair)
{
  g_autofree char *key = NULL;
  const char *value;
  PpMeasure measure;
  guint petals;

  if (!pp_word_split (pair, &key, &value))
    return FALSE;
  if (!pp_measure_from_name (key, &measure))
    return read_other (measures, key, value);
  if (!pp_recipe_has (measures->recipe, measure))
    return FALSE;
  if (measure != PP_MEASURE_PETALS)
    return pp_word_read_length (value, &measures->measures[measure]);
  if (!pp_word_read_count (value, 1, &petals))
    return FALSE;
  measures->measures[measure] = petals;
  return TRUE;
}

/* Of a pair that read_pair() did not take. */
static const char *
get_complaint (const PpMeasures *measures,
               const char       *pair)
{
  g_autofree char *key = NULL;
  const char *value;
  PpMeasure measure;

  if (pp_word_split (pair, &key, &value) && pp_measure_from_name (key, &measure)
      && !pp_recipe_has (measures->recipe, measure))
    return _("this kind takes no such measure; --help tells them.");
  return _("this says nothing of a piece; --help tells what does.");
}

/* What was not measured, each with its estimate; NULL if all was. */
static char *
list_estimates (const PpMeasures *measures)
{
  PpMeasures filled = pp_measures_estimate (measures);
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; i < PP_N_MEASURES; i++)
    {
      g_autofree char *length = NULL;

      if (!pp_recipe_has (measures->recipe, (PpMeasure) i) || !isnan (measures->measures[i]))
        continue;
      length = i == PP_MEASURE_PETALS
                 ? g_strdup_printf ("%.0f", filled.measures[i])
                 : pp_length_format (filled.measures[i], PP_UNITS_MM);
      g_string_append_printf (list, _("\n  %s: about %s"), pp_measure_get_title ((PpMeasure) i),
                              length);
    }
  if (list->len == 0)
    return NULL;
  return g_strconcat (_("Not measured, so estimated:"), list->str, NULL);
}

static int
make (char             **args,
      const PpPieceWish *wish)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) piece = NULL;
  g_autofree char *note = NULL;
  const char *fault;
  PpRecipe recipe;
  PpMeasures measures;

  if (args[0] == NULL || !pp_recipe_from_name (args[0], &recipe))
    return pp_command_fail (args[0], _("a kind must be named: ray, lobed, cup, spike, bud, leaf, "
                                       "blade, rod or shard."));
  measures = pp_measures_draft (recipe);
  for (guint i = 1; args[i] != NULL; i++)
    if (!read_pair (&measures, args[i]))
      return pp_command_fail (args[i], get_complaint (&measures, args[i]));
  fault = pp_word_find_gap_fault (measures.lying.touch, measures.lying.gap);
  if (fault != NULL)
    return pp_command_fail (NULL, fault);
  piece = pp_measures_make (&measures, &error);
  if (piece == NULL)
    return pp_command_fail (NULL, error->message);
  note = list_estimates (&measures);
  return pp_piece_command_deliver (
    wish, &piece, NULL, 1, measures.lying.touch != PP_TOUCH_ALL && isnan (measures.lying.gap),
    note);
}

int
pp_piece_command_measures (int    argc,
                           char **argv)
{
  g_auto (PpPieceWish) wish = { NULL };
  g_auto (GStrv) args = pp_piece_command_parse (
    argc, argv, _("KIND KEY=LENGTH…"),
    _("Makes a piece from measures, in mm unless a unit is written (across='3 in').\n\n"
      "ray, lobed, cup: across, petals, notch, middle\n"
      "spike, bud, leaf, blade, rod, shard: length, quarter, half, three-quarters (widths, from "
      "the base), bend\n"
      "All: thickness; touches (all, middle, rim, ends, base, tip: what touches a flat top), gap "
      "(under the high part), foot, touching; weight and weighed (how many together); light "
      "(none, shadow, clear: a black line seen through it); name, kind (flower, bud, leaf, stem, "
      "filler), colour, count, seed"),
    NULL, &wish);

  if (args == NULL)
    return PP_EXIT_UNUSABLE;
  return make (args, &wish);
}
