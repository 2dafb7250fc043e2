/* answers.c: what a maker says of a piece however it was made.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "piece/answers.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"

#define GAP_ACROSS 0.16    /* of a round piece's width, slumped into a bowl or over a form */
#define GAP_ALONG 0.08     /* of a long piece's length */
#define SHADOW_FROM 0.1    /* what lets less through hides a black line */
#define CLEAR_FROM 0.5

PpAnswers
pp_answers_draft (void)
{
  return (PpAnswers) { .count = 1, .kind = PP_AS_MADE, .touch = PP_AS_MADE, .light = PP_AS_MADE,
                       .gap = NAN, .thickness = NAN, .weight = NAN, .weighed = 1 };
}

double
pp_touch_estimate_gap (PpTouch          touch,
                       const PpOutline *outline)
{
  PpBox box = pp_outline_get_box (outline);

  if (touch == PP_TOUCH_ALL)
    return 0;
  if (pp_outline_is_long (outline))
    return GAP_ALONG * pp_box_height (box);
  return GAP_ACROSS * fmax (pp_box_width (box), pp_box_height (box));
}

/* A grid is made where the tip stands up, and read from files. */
static PpTouch
touch_of_grid (const PpHeightGrid *grid,
               double             *gap)
{
  gsize n = (gsize) grid->n_rows * grid->n_columns, highest = 0;
  double least = grid->heights[0];
  guint row;

  for (gsize i = 1; i < n; i++)
    {
      least = fmin (least, grid->heights[i]);
      if (grid->heights[i] > grid->heights[highest])
        highest = i;
    }
  *gap = grid->heights[highest] - least;
  row = (guint) (highest / grid->n_columns);
  if (*gap <= 0)
    return PP_TOUCH_ALL;
  return 2 * row < grid->n_rows ? PP_TOUCH_BASE : PP_TOUCH_TIP;
}

PpTouch
pp_touch_of_piece (const PpPiece *piece,
                   double        *gap)
{
  *gap = piece->form.rise;
  switch (piece->form.kind)
    {
    case PP_FORM_FLAT:
      *gap = 0;
      return PP_TOUCH_ALL;
    case PP_FORM_CUPPED:
    case PP_FORM_CURLED:
      return PP_TOUCH_MIDDLE;
    case PP_FORM_DOMED:
      return PP_TOUCH_RIM;
    case PP_FORM_ARCHED:
      return PP_TOUCH_ENDS;
    case PP_FORM_LIFTED:
      return PP_TOUCH_TIP;
    case PP_FORM_MEASURED:
      return touch_of_grid (piece->form.grid, gap);
    }
  g_return_val_if_reached (PP_TOUCH_ALL);
}

PpLight
pp_light_of_piece (const PpPiece *piece)
{
  if (piece->transmittance < SHADOW_FROM)
    return PP_LIGHT_NONE;
  return piece->transmittance < CLEAR_FROM ? PP_LIGHT_SHADOW : PP_LIGHT_CLEAR;
}

/* A gap alone is an answer too: as before, but so high. TRUE if the form is another. */
static gboolean
get_lying (const PpAnswers *self,
           const PpPiece   *piece,
           PpLying         *lying)
{
  double gap;
  PpTouch touch = pp_touch_of_piece (piece, &gap);
  gboolean is_same = self->touch == PP_AS_MADE || (PpTouch) self->touch == touch;

  *lying = (PpLying) { .touch = is_same ? touch : (PpTouch) self->touch, .gap = self->gap,
                       .foot = NAN, .touching = NAN };
  if (piece->form.kind == PP_FORM_CUPPED)
    lying->foot = piece->form.foot;
  if (piece->form.kind == PP_FORM_LIFTED)
    lying->touching = piece->form.flat;
  if (is_same && isnan (self->gap))
    return FALSE;
  if (isnan (lying->gap))
    lying->gap = pp_touch_estimate_gap (lying->touch, piece->outline);
  return TRUE;
}

PpPiece *
pp_answers_apply (const PpAnswers *self,
                  const PpPiece   *piece,
                  GError         **error)
{
  PpPiece draft = *piece;
  g_autoptr (PpHeightGrid) grid = NULL;
  PpLying lying;

  if (!isnan (self->gap) && !pp_lying_check_gap (self->gap, error))
    return NULL;
  if (self->name != NULL && *self->name != '\0')
    draft.name = self->name;
  draft.count = self->count;
  if (self->kind != PP_AS_MADE)
    draft.kind = (PpKind) self->kind;
  if (self->light != PP_AS_MADE && (PpLight) self->light != pp_light_of_piece (piece))
    draft.transmittance = pp_light_get_transmittance ((PpLight) self->light);
  if (!isnan (self->thickness))
    draft.thickness = self->thickness;
  if (!isnan (self->weight))
    draft.mass = self->weight / self->weighed;
  if (get_lying (self, piece, &lying))
    {
      draft.form = pp_lying_get_form (&lying, piece->outline, pp_outline_is_long (piece->outline));
      grid = (PpHeightGrid *) draft.form.grid;
    }
  return pp_piece_new (&draft, error);
}
