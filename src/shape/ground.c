/* ground.c: how high glass, fused parts and knots stand, before any piece is laid.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/ground.h"

/* Some cells of a row, with their heights and owners. */
typedef struct
{
  PpSpan   span;
  double  *height;
  PpOwner *owner;
} Row;

/* Raises the cells by `thickness`, from 0 where nothing lies. */
static void
add_layer (const Row     *self,
           const PpCells *cells,
           double         thickness,
           PpOwner        owner)
{
  const PpSpan *row = &self->span;

  for (guint k = pp_cells_find_row (cells, row->j);
       k < cells->n_spans && cells->spans[k].j == row->j && cells->spans[k].i0 < row->i1; k++)
    {
      int from = MAX (cells->spans[k].i0, row->i0) - row->i0;
      int end = MIN (cells->spans[k].i1, row->i1) - row->i0;

      for (int i = from; i < end; i++)
        self->owner[i] = owner;
      for (int i = from; i < end && thickness != 0; i++)
        self->height[i] += thickness;
    }
}

/* The glass stands out over the pocket: once more where the insert of a fused part lies under
 * it. */
static void
add_pocket (const Row    *self,
            const PpPart *part)
{
  const PpSpan *row = &self->span;

  for (int i = row->i0; i < row->i1; i++)
    if (pp_cells_contain (part->insert_cells, i, row->j)
        && pp_cells_contain (part->cells, i, row->j))
      self->height[i - row->i0] += part->fused->pocket.insert_thickness;
}

static gboolean
reaches_row (const PpCells *cells,
             const PpSpan  *row)
{
  return row->j >= cells->box.j0 && row->j < cells->box.j1 && row->i0 < cells->box.i1
         && row->i1 > cells->box.i0;
}

void
pp_ground_lay (const PpScene *scene,
               PpSpan         span,
               double        *height,
               PpOwner       *owner)
{
  const Row row = { span, height, owner };

  for (int i = 0; i < span.i1 - span.i0; i++)
    height[i] = 0;
  for (int i = 0; i < span.i1 - span.i0; i++)
    owner[i] = PP_OWNER_NOTHING;
  add_layer (&row, scene->background_cells, 0, PP_OWNER (PP_OWNER_BACKGROUND, 0));
  for (guint i = 0; i < scene->n_parts; i++)
    {
      const PpPart *part = &scene->parts[i];

      if (!reaches_row (part->cells, &span))
        continue;
      add_layer (&row, part->cells, part->fused->thickness, PP_OWNER (PP_OWNER_FUSED, i));
      if (part->insert_cells != NULL)
        add_pocket (&row, part);
    }
  for (guint i = 0; i < scene->n_knots; i++)
    if (reaches_row (scene->knot_cells[i], &span))
      add_layer (&row, scene->knot_cells[i], scene->panel->wire->knot_height,
                 PP_OWNER (PP_OWNER_KNOT, i));
}

/* Over the cells of one layer. */
static double
find_depth (const PpScene *scene,
            const PpCells *cells)
{
  gsize width = (gsize) (cells->box.i1 - cells->box.i0);
  g_autofree double *height = g_new (double, width);
  g_autofree PpOwner *owner = g_new (PpOwner, width);
  double depth = 0;

  for (guint k = 0; k < cells->n_spans; k++)
    {
      const PpSpan *span = &cells->spans[k];

      pp_ground_lay (scene, *span, height, owner);
      for (int i = 0; i < span->i1 - span->i0; i++)
        depth = MAX (depth, height[i]);
    }
  return depth;
}

double
pp_ground_get_depth (const PpScene *scene)
{
  double depth = 0; /* of the bare background */

  for (guint i = 0; i < scene->n_parts; i++)
    depth = MAX (depth, find_depth (scene, scene->parts[i].cells));
  for (guint i = 0; i < scene->n_knots; i++)
    depth = MAX (depth, find_depth (scene, scene->knot_cells[i]));
  return depth;
}
