/* bed.c: what lies under a placement at the moment it is laid, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/bed.h"

static PpBed *
bed_alloc (const PpBody *body)
{
  PpBed *self = g_new0 (PpBed, 1);
  guint n = body->cells->n_cells;

  self->body = body;
  self->i = g_new (int, n);
  self->j = g_new (int, n);
  self->x = g_new (double, n);
  self->y = g_new (double, n);
  self->underside = g_new (double, n);
  self->below = g_new (double, n);
  self->owner = g_new (PpOwner, n);
  return self;
}

/* `cell` of the body, at column i and row j. */
static void
add_cell (PpBed  *self,
          guint   cell,
          int     i,
          int     j,
          double  below,
          PpOwner owner)
{
  const PpBody *body = self->body;
  guint k = self->n++;

  self->i[k] = i;
  self->j[k] = j;
  self->x[k] = pp_cell_centre (i) - body->centroid.x;
  self->y[k] = pp_cell_centre (j) - body->centroid.y;
  self->underside[k] = body->underside[cell];
  self->below[k] = below;
  self->owner[k] = owner;
}

PpBed *
pp_bed_new (const PpScene *scene,
            guint          index,
            const PpField *field)
{
  const PpBody *body = scene->bodies[index];
  int pocket = scene->pockets[index];
  const PpCells *part = pocket == PP_NO_INDEX ? NULL : scene->parts[pocket].cells;
  PpBed *self = bed_alloc (body);
  guint cell = 0;

  if (!pp_field_has_room (field, body->cells->box))
    return self;
  for (guint k = 0; k < body->cells->n_spans; k++)
    {
      const PpSpan *span = &body->cells->spans[k];
      gsize at = pp_field_at (field, span->i0, span->j);

      for (int i = span->i0; i < span->i1; i++, at++, cell++)
        if (part != NULL && pp_cells_contain (part, i, span->j))
          add_cell (self, cell, i, span->j, 0, PP_OWNER (PP_OWNER_BACKGROUND, 0));
        else if (field->owner[at] != PP_OWNER_NOTHING)
          add_cell (self, cell, i, span->j, field->height[at], field->owner[at]);
    }
  return self;
}

void
pp_bed_free (PpBed *self)
{
  if (self == NULL)
    return;
  g_free (self->i);
  g_free (self->j);
  g_free (self->x);
  g_free (self->y);
  g_free (self->underside);
  g_free (self->below);
  g_free (self->owner);
  g_free (self);
}
