/* measures.c: a piece from measures: judged, drawn, put together.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "piece/measures.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "piece/answers.h"
#include "piece/look.h"
#include "piece/petal.h"
#include "piece/recipes.h"

#define LEAST 0.5        /* mm: less is no piece of glass */
#define MOST PP_BACKGROUND_MAX_SIDE
#define LEAST_PETALS 3
#define MOST_THICKNESS 100.0 /* mm */

static gboolean
refuse (const char *sentence,
        GError    **error)
{
  g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, sentence);
  return FALSE;
}

static gboolean
check_range (const PpMeasures *self,
             PpMeasure         measure,
             GError          **error)
{
  double value = self->measures[measure];
  double least = measure == PP_MEASURE_PETALS ? LEAST_PETALS : measure == PP_MEASURE_BEND ? -MOST
                 : measure == PP_MEASURE_NOTCH || measure == PP_MEASURE_MIDDLE ? 0 : LEAST;
  double most = measure == PP_MEASURE_PETALS ? PP_PETALS_MAX
                : measure == PP_MEASURE_THICKNESS ? MOST_THICKNESS : MOST;

  if (!pp_recipe_has (self->recipe, measure) || (value >= least && value <= most))
    return TRUE;
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
               measure == PP_MEASURE_PETALS ? _("%s: must be from %g to %g.")
                                            : _("%s: must be from %g to %g mm."),
               pp_measure_get_title (measure), least, most);
  return FALSE;
}

static gboolean
check_flower (const double *m,
              GError      **error)
{
  double radius = m[PP_MEASURE_ACROSS] / 2;

  if (m[PP_MEASURE_PETALS] != floor (m[PP_MEASURE_PETALS]))
    return refuse (_("Petals are counted in whole numbers."), error);
  if (m[PP_MEASURE_MIDDLE] / 2 + m[PP_MEASURE_NOTCH] >= radius)
    return refuse (_("The notch and half the middle together must be less than half the widest "
                     "across."), error);
  return TRUE;
}

static gboolean
check_long (const double *m,
            GError      **error)
{
  if (fabs (m[PP_MEASURE_BEND]) > m[PP_MEASURE_LENGTH])
    return refuse (_("The bend of the tip must be no more than the length."), error);
  for (guint i = PP_MEASURE_QUARTER; i <= PP_MEASURE_THREE_QUARTERS; i++)
    if (m[i] > 4 * m[PP_MEASURE_LENGTH])
      return refuse (_("A width must be no more than four times the length."), error);
  return TRUE;
}

static gboolean
check_bench (const PpMeasures *self,
             GError          **error)
{
  const PpLying *lying = &self->lying;

  if (!isnan (lying->gap) && !pp_lying_check_gap (lying->gap, error))
    return FALSE;
  if (lying->foot < 0 || lying->touching < 0)
    return refuse (_("What touches must not be less than nothing."), error);
  if (self->weight <= 0 || self->weighed == 0)
    return refuse (_("The weight and how many were weighed must be more than nothing."), error);
  return TRUE;
}

static gboolean
check (const PpMeasures *self,
       GError          **error)
{
  for (guint i = 0; i < PP_N_MEASURES; i++)
    if (!check_range (self, (PpMeasure) i, error))
      return FALSE;
  return (pp_recipe_is_long (self->recipe) ? check_long (self->measures, error)
                                           : check_flower (self->measures, error))
         && check_bench (self, error);
}

static const char *
colour_of (const PpMeasures *self)
{
  return self->colour != NULL ? self->colour : pp_recipe_get_row (self->recipe)->colour;
}

/* Only a ray flower stands on thick ground: its middle is a drop of glass. */
static PpCrown
crown_of (const PpMeasures *self)
{
  double radius = self->measures[PP_MEASURE_MIDDLE] / 2;

  if (self->recipe != PP_RECIPE_RAY || radius < LEAST)
    return (PpCrown) { 0 };
  return (PpCrown) { .height = radius * 0.4, .radius = radius };
}

static PpForm
form_of (const PpMeasures *self,
         const PpOutline  *outline)
{
  PpLying lying = self->lying;

  if (isnan (lying.gap))
    lying.gap = pp_touch_estimate_gap (lying.touch, outline);
  return pp_lying_get_form (&lying, outline, pp_recipe_is_long (self->recipe));
}

static PpPiece *
put_together (const PpMeasures *self,
              const PpOutline  *outline,
              GBytes           *art,
              GError          **error)
{
  PpPiece draft = pp_piece_draft ();
  g_autoptr (PpHeightGrid) grid = NULL;

  draft.id = self->id != NULL ? self->id : pp_recipe_get_name (self->recipe);
  draft.name = self->name != NULL ? self->name : pp_recipe_get_title (self->recipe);
  draft.kind = self->kind;
  draft.count = self->count;
  draft.thickness = self->measures[PP_MEASURE_THICKNESS];
  draft.mass = self->weight / self->weighed;
  draft.transmittance = pp_light_get_transmittance (self->light);
  draft.colour = colour_of (self);
  draft.form = form_of (self, outline);
  grid = (PpHeightGrid *) draft.form.grid;
  draft.crown = crown_of (self);
  draft.outline = outline;
  draft.art = art;
  return pp_piece_new (&draft, error);
}

PpPiece *
pp_measures_make (const PpMeasures *self,
                  GError          **error)
{
  PpMeasures filled = pp_measures_estimate (self);
  g_autoptr (PpSvg) svg = NULL;
  g_autoptr (PpOutline) outline = NULL;
  g_autoptr (GBytes) art = NULL;

  g_return_val_if_fail (self->recipe < PP_N_RECIPES, NULL);
  if (!check (&filled, error))
    return NULL;
  svg = pp_svg_new (1 - 0.35 * pp_light_get_transmittance (self->light));
  outline = pp_recipe_is_long (self->recipe)
              ? pp_look_long (&filled, pp_tint_parse (colour_of (self)), svg)
              : pp_look_flower (&filled, pp_tint_parse (colour_of (self)), svg);
  art = pp_svg_finish (svg, self->name != NULL ? self->name : pp_recipe_get_title (self->recipe),
                       pp_outline_get_box (outline));
  return put_together (&filled, outline, art, error);
}
