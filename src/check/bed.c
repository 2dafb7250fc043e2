/* bed.c: what lies under a placement at the moment it is laid, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/bed.h"

#include <string.h>

static PpBed *
bed_alloc (const PpBody *body)
{
  PpBed *self = g_new0 (PpBed, 1);
  guint n = body->cells->n_cells;
  double *columns = g_new (double, 5 * (gsize) n + 1); /* all in one, which `x` owns */

  self->body = body;
  self->x = columns;
  self->y = columns + n;
  self->below = columns + 2 * (gsize) n;
  self->h = columns + 3 * (gsize) n;
  self->gap = columns + 4 * (gsize) n;
  self->owner = g_new (PpOwner, n + 1);
  return self;
}

/* Cells i0 to i1 - 1 of row j, `cell` being the body's own number of the first. `below` and `owner`
 * begin with it. */
static void
add_run (PpBed         *self,
         GArray        *runs,
         PpSpan         span,
         guint          cell,
         const double  *below,
         const PpOwner *owner)
{
  const PpBody *body = self->body;
  PpBedRun run = { span.j, span.i0, self->n, (guint) (span.i1 - span.i0) };
  const double *underside = body->underside + cell;
  double *x = self->x + run.first, *y = self->y + run.first, *h = self->h + run.first;
  double row = pp_cell_centre (span.j) - body->centroid.y;

  memcpy (self->below + run.first, below, run.n * sizeof *below);
  memcpy (self->owner + run.first, owner, run.n * sizeof *owner);
  for (guint k = 0; k < run.n; k++)
    {
      x[k] = pp_cell_centre (span.i0 + (int) k) - body->centroid.x;
      y[k] = row;
      h[k] = below[k] - underside[k];
    }
  self->n += run.n;
  g_array_append_val (runs, run);
}

static gboolean
is_bare (const PpCells *part,
         int            i,
         int            j)
{
  return part != NULL && pp_cells_contain (part, i, j);
}

/* A stretch of the span that has support all along and lies in the pocket all along or nowhere. */
static void
add_span (PpBed         *self,
          GArray        *runs,
          const PpField *field,
          const PpCells *part,
          PpSpan         span,
          guint          cell)
{
  const double *below = field->height + pp_field_at (field, span.i0, span.j);
  const PpOwner *owner = field->owner + pp_field_at (field, span.i0, span.j);
  const double ground = 0;
  const PpOwner background = PP_OWNER (PP_OWNER_BACKGROUND, 0);
  int start = span.i0;

  for (int i = span.i0; i < span.i1; i++)
    {
      gboolean bare = is_bare (part, i, span.j);

      if (!bare && owner[i - span.i0] != PP_OWNER_NOTHING)
        continue;
      if (start < i)
        add_run (self, runs, (PpSpan) { span.j, start, i }, cell + (guint) (start - span.i0),
                 below + (start - span.i0), owner + (start - span.i0));
      if (bare)
        add_run (self, runs, (PpSpan) { span.j, i, i + 1 }, cell + (guint) (i - span.i0), &ground,
                 &background);
      start = i + 1;
    }
  if (start < span.i1)
    add_run (self, runs, (PpSpan) { span.j, start, span.i1 }, cell + (guint) (start - span.i0),
             below + (start - span.i0), owner + (start - span.i0));
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
  GArray *runs = g_array_sized_new (FALSE, FALSE, sizeof (PpBedRun), body->cells->n_spans);
  guint cell = 0;

  if (pp_field_has_room (field, body->cells->box))
    for (guint k = 0; k < body->cells->n_spans; k++)
      {
        const PpSpan *span = &body->cells->spans[k];

        add_span (self, runs, field, part, *span, cell);
        cell += (guint) (span->i1 - span->i0);
      }
  self->n_runs = runs->len;
  self->runs = (PpBedRun *) (gpointer) g_array_free (runs, FALSE);
  return self;
}

void
pp_bed_free (PpBed *self)
{
  if (self == NULL)
    return;
  g_free (self->x);
  g_free (self->owner);
  g_free (self->runs);
  g_free (self);
}
