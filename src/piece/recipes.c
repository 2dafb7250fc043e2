/* recipes.c: what each recipe asks for, and what it takes where it is not told.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "piece/recipes.h"

#include "panel/i18n.h"

#include <string.h>

#define ASKS(measure) (1u << PP_MEASURE_##measure)
#define FLOWER_MEASURES (ASKS (ACROSS) | ASKS (PETALS) | ASKS (NOTCH) | ASKS (MIDDLE) \
                         | ASKS (THICKNESS))
#define LONG_MEASURES (ASKS (LENGTH) | ASKS (QUARTER) | ASKS (HALF) | ASKS (THREE_QUARTERS) \
                       | ASKS (BEND) | ASKS (THICKNESS))
#define FLOWER(across, petals, notch, middle) \
  .asks = FLOWER_MEASURES, \
  .usual = { [PP_MEASURE_ACROSS] = across, [PP_MEASURE_PETALS] = petals, \
             [PP_MEASURE_NOTCH] = notch, [PP_MEASURE_MIDDLE] = middle }
#define LONG(length, quarter, half, three_quarters) \
  .asks = LONG_MEASURES, \
  .usual = { [PP_MEASURE_LENGTH] = length, [PP_MEASURE_QUARTER] = quarter, \
             [PP_MEASURE_HALF] = half, [PP_MEASURE_THREE_QUARTERS] = three_quarters }

static const PpRecipeRow recipes[PP_N_RECIPES] = {
  [PP_RECIPE_RAY] = { "ray", N_("Ray flower"), PP_KIND_FLOWER, "#f0efe6",
                      FLOWER (50, 17, 0.14, 0.3) },
  [PP_RECIPE_LOBED] = { "lobed", N_("Lobed flower"), PP_KIND_FLOWER, "#b55cb8",
                        FLOWER (50, 5, 0.13, 0.16) },
  [PP_RECIPE_CUP] = { "cup", N_("Cup"), PP_KIND_FLOWER, "#5b7fd0", FLOWER (50, 5, 0.035, 0.3) },
  [PP_RECIPE_SPIKE] = { "spike", N_("Flower spike"), PP_KIND_FLOWER, "#7d63c4",
                        LONG (90, 0.25, 0.2, 0.13), .ends = { 0.75, 0.35, 0.8, 1 } },
  [PP_RECIPE_BUD] = { "bud", N_("Bud"), PP_KIND_BUD, "#cf4f86", LONG (40, 0.44, 0.48, 0.3),
                      .ends = { 0.5, 0.3, 0.7, 0.9 } },
  [PP_RECIPE_LEAF] = { "leaf", N_("Leaf"), PP_KIND_LEAF, "#5f9a4c", LONG (70, 0.33, 0.36, 0.24),
                       .ends = { 0.14, 0.06, 0.5, 1 } },
  [PP_RECIPE_BLADE] = { "blade", N_("Blade"), PP_KIND_LEAF, "#4d8a6a",
                        LONG (140, 0.075, 0.072, 0.05), .ends = { 0.95, 0.08, 0.12, 1 } },
  [PP_RECIPE_ROD] = { "rod", N_("Rod"), PP_KIND_STEM, "#7fa65a", LONG (200, 0.025, 0.025, 0.025),
                      .ends = { 1, 1, 0.5, 0.5 } },
  [PP_RECIPE_SHARD] = { "shard", N_("Shard"), PP_KIND_FILLER, "#7fb9c4", LONG (30, 0.6, 0.72, 0.5),
                        .ends = { 0.55, 0.3, 0.1, 0.1 } },
};

static const struct
{
  const char *name;
  const char *title;
} names[PP_N_MEASURES] = {
  [PP_MEASURE_ACROSS] = { "across", N_("Widest across") },
  [PP_MEASURE_PETALS] = { "petals", N_("Petals") },
  [PP_MEASURE_NOTCH] = { "notch", N_("Notch between petals") },
  [PP_MEASURE_MIDDLE] = { "middle", N_("Middle") },
  [PP_MEASURE_LENGTH] = { "length", N_("Length") },
  [PP_MEASURE_QUARTER] = { "quarter", N_("Width a quarter up") },
  [PP_MEASURE_HALF] = { "half", N_("Width half-way") },
  [PP_MEASURE_THREE_QUARTERS] = { "three-quarters", N_("Width three quarters up") },
  [PP_MEASURE_BEND] = { "bend", N_("Bend of the tip") },
  [PP_MEASURE_THICKNESS] = { "thickness", N_("Thickness") },
};

const PpRecipeRow *
pp_recipe_get_row (PpRecipe recipe)
{
  return &recipes[recipe];
}

gboolean
pp_recipe_has (PpRecipe  recipe,
               PpMeasure measure)
{
  return (recipes[recipe].asks >> measure & 1) != 0;
}

gboolean
pp_recipe_is_long (PpRecipe recipe)
{
  return pp_recipe_has (recipe, PP_MEASURE_LENGTH);
}

const char *
pp_recipe_get_name (PpRecipe recipe)
{
  return recipes[recipe].name;
}

const char *
pp_recipe_get_title (PpRecipe recipe)
{
  return _(recipes[recipe].title);
}

const char *
pp_measure_get_name (PpMeasure measure)
{
  return names[measure].name;
}

const char *
pp_measure_get_title (PpMeasure measure)
{
  return _(names[measure].title);
}

gboolean
pp_recipe_from_name (const char *name,
                     PpRecipe   *recipe)
{
  for (guint i = 0; i < PP_N_RECIPES; i++)
    if (strcmp (name, recipes[i].name) == 0)
      {
        *recipe = (PpRecipe) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
pp_measure_from_name (const char *name,
                      PpMeasure  *measure)
{
  for (guint i = 0; i < PP_N_MEASURES; i++)
    if (strcmp (name, names[i].name) == 0)
      {
        *measure = (PpMeasure) i;
        return TRUE;
      }
  return FALSE;
}

PpMeasures
pp_measures_draft (PpRecipe recipe)
{
  PpMeasures self = { .recipe = recipe, .weight = NAN, .weighed = 1, .count = 1,
                      .kind = pp_recipe_get_row (recipe)->kind };

  for (guint i = 0; i < PP_N_MEASURES; i++)
    self.measures[i] = NAN;
  self.lying.gap = self.lying.foot = self.lying.touching = NAN;
  return self;
}

static void
fill (double *measure,
      double  estimate)
{
  if (isnan (*measure))
    *measure = estimate;
}

static void
fill_flower (double       *m,
             const double *usual)
{
  fill (&m[PP_MEASURE_ACROSS], usual[PP_MEASURE_ACROSS]);
  fill (&m[PP_MEASURE_PETALS], usual[PP_MEASURE_PETALS]);
  for (guint i = PP_MEASURE_NOTCH; i <= PP_MEASURE_MIDDLE; i++)
    fill (&m[i], usual[i] * m[PP_MEASURE_ACROSS]);
  fill (&m[PP_MEASURE_THICKNESS], 6);
}

/* One width tells the others; without any the length tells them. */
static double
scale_of_widths (const double *m,
                 const double *usual,
                 double        length)
{
  double sum = 0;
  guint n = 0;

  for (guint i = PP_MEASURE_QUARTER; i <= PP_MEASURE_THREE_QUARTERS; i++)
    if (!isnan (m[i]))
      {
        sum += m[i] / usual[i];
        n++;
      }
  return n > 0 ? sum / n : length;
}

static void
fill_long (double       *m,
           const double *usual,
           gboolean      is_round)
{
  double scale;

  fill (&m[PP_MEASURE_LENGTH], usual[PP_MEASURE_LENGTH]);
  scale = scale_of_widths (m, usual, m[PP_MEASURE_LENGTH]);
  for (guint i = PP_MEASURE_QUARTER; i <= PP_MEASURE_THREE_QUARTERS; i++)
    fill (&m[i], usual[i] * scale);
  fill (&m[PP_MEASURE_BEND], 0);
  fill (&m[PP_MEASURE_THICKNESS], is_round ? m[PP_MEASURE_HALF] : 5);
}

PpMeasures
pp_measures_estimate (const PpMeasures *self)
{
  PpMeasures filled = *self;
  const double *usual = recipes[self->recipe].usual;

  if (pp_recipe_is_long (self->recipe))
    fill_long (filled.measures, usual, self->recipe == PP_RECIPE_ROD);
  else
    fill_flower (filled.measures, usual);
  return filled;
}
