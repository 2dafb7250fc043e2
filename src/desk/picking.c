/* picking.c: pieces being made from a picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/picking.h"

#include "desk/sheet-choice.h"
#include "shape/polygon.h"
#include "sheet/frame-sheet.h"

#define TRIES 16 /* a side of the box of a piece, for a place on it */

static PpPicked *
copy_picked (const PpPicked *picked)
{
  PpPicked *copy = g_memdup2 (picked, sizeof *picked);

  copy->name = g_strdup (picked->name);
  return copy;
}

static void
free_picked (gpointer data)
{
  PpPicked *picked = data;

  g_free (picked->name);
  g_free (picked);
}

PpPicking
pp_picking_new (void)
{
  PpPaper paper = pp_sheet_usual_paper ();

  return (PpPicking) {
    .frame = pp_frame_sheet_measure (&paper),
    .dpi = NAN,
    .length = NAN,
    .lens = NAN,
    .strokes = g_array_new (FALSE, FALSE, sizeof (PpStroke)),
    .picked = g_ptr_array_new_with_free_func (free_picked),
    .chosen = { NAN, NAN },
    .is_due = TRUE,
  };
}

PpPicking
pp_picking_next (const PpPicking *self)
{
  PpPicking next = pp_picking_new ();

  next.scale = self->scale;
  next.frame = self->frame;
  next.dpi = self->dpi;
  next.lens = self->lens;
  return next;
}

PpPicking
pp_picking_copy (const PpPicking *self)
{
  PpPicking copy = *self;

  copy.file = self->file != NULL ? g_bytes_ref (self->file) : NULL;
  copy.title = g_strdup (self->title);
  copy.strokes = g_array_copy (self->strokes);
  copy.picked = g_ptr_array_new_with_free_func (free_picked);
  for (guint i = 0; i < self->picked->len; i++)
    g_ptr_array_add (copy.picked, copy_picked (self->picked->pdata[i]));
  copy.found = self->found != NULL ? pp_found_ref (self->found) : NULL;
  copy.said = g_strdup (self->said);
  return copy;
}

void
pp_picking_clear (PpPicking *self)
{
  g_clear_pointer (&self->file, g_bytes_unref);
  g_clear_pointer (&self->title, g_free);
  g_clear_pointer (&self->strokes, g_array_unref);
  g_clear_pointer (&self->picked, g_ptr_array_unref);
  g_clear_pointer (&self->found, pp_found_unref);
  g_clear_pointer (&self->said, g_free);
}

void
pp_picking_forget (PpPicking *self)
{
  g_clear_pointer (&self->found, pp_found_unref);
  g_clear_pointer (&self->said, g_free);
  self->is_due = TRUE;
}

PpStroke *
pp_picking_strokes (const PpPicking *self,
                    const PpSquared *squared)
{
  PpStroke *strokes = g_memdup2 (self->strokes->data, self->strokes->len * sizeof (PpStroke));
  PpSheetPlane back;

  if (pp_plane_invert (&squared->plane, &back))
    for (guint i = 0; i < self->strokes->len; i++)
      {
        strokes[i].from = pp_plane_map (&back, strokes[i].from);
        strokes[i].to = pp_plane_map (&back, strokes[i].to);
      }
  return strokes;
}

void
pp_picking_add_stroke (PpPicking *self,
                       PpStroke   stroke)
{
  const PpSheetPlane *plane = &self->found->ground->squared->plane;

  stroke.from = pp_plane_map (plane, stroke.from);
  stroke.to = pp_plane_map (plane, stroke.to);
  g_array_append_val (self->strokes, stroke);
  self->is_due = TRUE;
}

/* FALSE if the place is on none of what is found. */
static gboolean
find_piece (const PpFound *found,
            PpPoint        pixel,
            guint         *piece)
{
  PpSheetPlane back;

  return found != NULL && isfinite (pixel.x)
         && pp_plane_invert (&found->ground->squared->plane, &back)
         && pp_found_at (found, pp_plane_map (&back, pixel), piece);
}

guint
pp_picking_get_chosen (const PpPicking *self)
{
  guint piece = 0;

  return find_piece (self->found, self->chosen, &piece) ? piece : 0;
}

PpPicked *
pp_picking_get (const PpPicking *self,
                guint            piece)
{
  for (guint i = 0; i < self->picked->len; i++)
    {
      PpPicked *picked = self->picked->pdata[i];
      guint its;

      if (find_piece (self->found, picked->at, &its) && its == piece)
        return picked;
    }
  return NULL;
}

PpPicked *
pp_picking_tell (PpPicking *self,
                 guint      piece)
{
  PpPicked *picked = pp_picking_get (self, piece);

  if (picked == NULL)
    {
      picked = g_new0 (PpPicked, 1);
      picked->at = pp_plane_map (&self->found->ground->squared->plane,
                                 pp_picking_place (self->found, piece));
      picked->name = g_strdup ("");
      picked->answers = pp_answers_draft ();
      picked->offcut = picked->rim = NAN;
      g_ptr_array_add (self->picked, picked);
    }
  return picked;
}

gboolean
pp_picking_is_left_out (const PpPicking *self,
                        guint            piece)
{
  const PpPicked *picked = pp_picking_get (self, piece);

  return picked != NULL && picked->is_left_out;
}

/* Of a piece on its middle the border stands as high as the light under it; of all others most of
 * it lies. */
double
pp_picking_get_rim (const PpPicked  *picked,
                    const PpAnswers *answers,
                    const PpOutline *outline)
{
  if (picked != NULL && !isnan (picked->rim))
    return picked->rim;
  if (answers->touch != PP_TOUCH_MIDDLE)
    return 0;
  return !isnan (answers->gap) ? answers->gap : pp_touch_estimate_gap (PP_TOUCH_MIDDLE, outline);
}

/* The dot of it that lies deepest, of many tried: no corner of it, and in no hole. */
PpPoint
pp_picking_place (const PpFound *found,
                  guint          piece)
{
  const PpOutline *outline = found->outlines[piece];
  PpBox box = pp_outline_get_box (outline);
  guint n, within;
  PpPoint best = pp_outline_get_ring (outline, 0, &n)[0];
  double deepest = -1;

  for (guint i = 0; i < TRIES; i++)
    for (guint j = 0; j < TRIES; j++)
      {
        PpPoint p = { box.x0 + (i + 0.5) / TRIES * pp_box_width (box),
                      box.y0 + (j + 0.5) / TRIES * pp_box_height (box) };
        double depth;

        if (!pp_found_at (found, p, &within) || within != piece)
          continue;
        depth = pp_outline_border_distance (outline, p);
        if (depth > deepest)
          {
            deepest = depth;
            best = p;
          }
      }
  return best;
}
