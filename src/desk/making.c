/* making.c: a piece being made at the piece bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/making.h"

#include "desk/making-ways.h"

PpMaking
pp_making_new (guint way)
{
  PpMeasures measures = pp_measures_draft (PP_RECIPE_LEAF);
  PpMaking self = { .way = way, .answers = pp_answers_draft (), .name = g_strdup (""),
                    .offcut = NAN, .size = NAN, .recipe = measures.recipe,
                    .ladder = NAN, .picking = pp_picking_new () };

  memcpy (self.measures, measures.measures, sizeof self.measures);
  for (guint i = 0; i < PP_SHEET_SPOKES; i++)
    self.spokes[i] = NAN;
  for (guint i = 0; i < PP_MAKING_RUNGS; i++)
    self.widths[i] = NAN;
  return self;
}

PpMaking
pp_making_of (const PpPiece *piece)
{
  PpMaking self = pp_making_new (pp_making_way_find ("like"));

  pp_making_set_like (&self, piece);
  pp_making_set_text (&self.name, piece->name);
  self.answers.count = piece->count;
  return self;
}

PpMaking
pp_making_next (const PpMaking *self)
{
  PpMaking next = pp_making_new (self->way);

  pp_picking_clear (&next.picking);
  next.picking = pp_picking_next (&self->picking);
  next.recipe = self->recipe;
  next.colour = g_strdup (self->colour);
  next.answers.thickness = self->answers.thickness;
  return next;
}

PpMaking
pp_making_copy (const PpMaking *self)
{
  PpMaking copy = *self;

  copy.name = g_strdup (self->name);
  copy.like = self->like != NULL ? pp_piece_ref (self->like) : NULL;
  copy.colour = g_strdup (self->colour);
  copy.drawing = self->drawing != NULL ? g_bytes_ref (self->drawing) : NULL;
  copy.drawing_name = g_strdup (self->drawing_name);
  copy.element = g_strdup (self->element);
  copy.picking = pp_picking_copy (&self->picking);
  return copy;
}

void
pp_making_clear (PpMaking *self)
{
  g_clear_pointer (&self->name, g_free);
  g_clear_pointer (&self->like, pp_piece_unref);
  g_clear_pointer (&self->colour, g_free);
  g_clear_pointer (&self->drawing, g_bytes_unref);
  g_clear_pointer (&self->drawing_name, g_free);
  g_clear_pointer (&self->element, g_free);
  if (self->picking.picked != NULL)
    pp_picking_clear (&self->picking);
}

void
pp_making_set_text (char      **text,
                    const char *other)
{
  char *copy = g_strdup (other);

  g_free (*text);
  *text = copy;
}

void
pp_making_set_like (PpMaking      *self,
                    const PpPiece *piece)
{
  if (piece != NULL)
    pp_piece_ref (piece);
  g_clear_pointer (&self->like, pp_piece_unref);
  self->like = piece;
}

/* What was told of the one before is kept with it. */
void
pp_making_choose (PpMaking *self,
                  guint     piece)
{
  PpPicking *picking = &self->picking;
  PpPicked *last, *next;

  g_return_if_fail (picking->found != NULL && piece < picking->found->n_pieces);

  last = pp_picking_tell (picking, pp_picking_get_chosen (picking));
  pp_making_set_text (&last->name, self->name);
  last->answers = self->answers;
  last->offcuts = self->offcuts;
  last->offcut = self->offcut;
  next = pp_picking_tell (picking, piece);
  pp_making_set_text (&self->name, next->name);
  self->answers = next->answers;
  self->offcuts = next->offcuts;
  self->offcut = next->offcut;
  picking->chosen = next->at;
}

PpMeasures
pp_making_get_measures (const PpMaking *self)
{
  PpMeasures measures = pp_measures_draft (self->recipe);

  memcpy (measures.measures, self->measures, sizeof measures.measures);
  measures.measures[PP_MEASURE_THICKNESS] = self->answers.thickness;
  measures.seed = self->seed;
  measures.colour = self->colour;
  if (self->answers.light != PP_AS_MADE)
    measures.light = (PpLight) self->answers.light;
  return measures;
}

PpPiece *
pp_making_make (const PpMaking *self,
                PpUnits         units,
                GError        **error)
{
  const PpMakingWay *way = pp_making_way_get (self->way);
  g_autoptr (PpPiece) made = way->make (self, units, error);
  PpAnswers answers = self->answers;

  if (made == NULL)
    return NULL;
  answers.name = self->name;
  return pp_answers_apply (&answers, made, error);
}
