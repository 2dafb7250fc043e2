/* bed.c: what lies under a placement at the moment it is laid, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/bed.h"

#include "check/loops.h"

#include <string.h>

static PpBed *
bed_alloc (const PpBody *body,
           double       *below,
           PpOwner      *owner,
           PpRoom       *room)
{
  PpBed *self = g_new0 (PpBed, 1);

  self->body = body;
  self->room = room;
  self->n_runs_held = body->cells->n_spans;
  self->runs = g_new (PpBedRun, self->n_runs_held);
  self->h = below;
  self->gap = pp_room_take (room, body->cells->n_cells * sizeof (double));
  self->owner = owner;
  return self;
}

/* `cell` is the body's own number of its first: cells without support are passed over, so that none
 * comes to stand behind it. */
static void
add_run (PpBed   *self,
         PpBedRun run,
         guint    cell)
{
  double *h = self->h + self->n;

  if (self->n < cell)
    memmove (h, self->h + cell, run.n * sizeof *h);
  if (run.underside != NULL)
    pp_loop_lower (h, run.underside, run.n);
  run.first = self->n;
  self->n += run.n;
  if (self->n_runs == self->n_runs_held)
    {
      self->n_runs_held = 2 * self->n_runs + 1;
      self->runs = g_renew (PpBedRun, self->runs, self->n_runs_held);
    }
  self->runs[self->n_runs++] = run;
}

/* Of a run, `n` cells from the one at `start` on. */
static PpBedRun
part_of_run (const PpBedRun *run,
             guint           start,
             guint           n)
{
  PpBedRun part = *run;

  part.i0 += (int) start;
  part.n = n;
  part.underside = run->underside == NULL ? NULL : run->underside + start;
  part.owner += start;
  return part;
}

static const PpOwner bare_background = PP_OWNER (PP_OWNER_BACKGROUND, 0);

/* Parts it where nothing lies. */
static void
part_run (PpBed   *self,
          PpBedRun run,
          guint    cell)
{
  guint8 *owned = pp_room_take (self->room, run.n);
  guint first, end = 0;

  pp_loop_owned (run.owner, run.n, owned);
  while (pp_loop_find_stretch (owned, run.n, &first, &end))
    add_run (self, part_of_run (&run, first, end - first), cell + first);
}

/* The `k`-th cell of a run, on the bare background. */
static void
add_bare_cell (PpBed          *self,
               const PpBedRun *run,
               guint           k,
               guint           cell)
{
  PpBedRun bare = part_of_run (run, k, 1);

  bare.owner = &bare_background;
  bare.has_knot = FALSE;
  self->h[cell] = 0;
  add_run (self, bare, cell);
}

/* And where the pocket is. */
static void
part_by_pocket (PpBed         *self,
                const PpCells *part,
                PpBedRun       run,
                guint          cell)
{
  guint start = 0;

  for (guint k = 0; k < run.n; k++)
    {
      gboolean bare = pp_cells_contain (part, run.i0 + (int) k, run.j);

      if (!bare && run.owner[k] != PP_OWNER_NOTHING)
        continue;
      if (start < k)
        add_run (self, part_of_run (&run, start, k - start), cell + start);
      if (bare)
        add_bare_cell (self, &run, k, cell + k);
      start = k + 1;
    }
  if (start < run.n)
    add_run (self, part_of_run (&run, start, run.n - start), cell + start);
}

/* Whether all its cells are the background's: then something lies in each. */
static gboolean
is_on_background (const PpScene *scene,
                  PpSpan         span)
{
  const PpCells *cells = scene->background_cells;

  for (guint k = pp_cells_find_row (cells, span.j);
       k < cells->n_spans && cells->spans[k].j == span.j; k++)
    if (cells->spans[k].i0 <= span.i0 && cells->spans[k].i1 >= span.i1)
      return TRUE;
  return FALSE;
}

static gboolean
may_have_knot (const PpScene *scene,
               PpSpan         span)
{
  for (guint i = 0; i < scene->n_knots; i++)
    if (pp_cell_boxes_meet (scene->knot_cells[i]->box,
                            (PpCellBox) { span.i0, span.j, span.i1, span.j + 1 }))
      return TRUE;
  return FALSE;
}

static void
add_span (PpBed         *self,
          const PpScene *scene,
          const PpCells *part,
          PpSpan         span,
          guint          cell)
{
  PpBedRun run = { .j = span.j, .i0 = span.i0, .n = (guint) (span.i1 - span.i0),
                   .underside = pp_relief_underside (pp_body_get_relief (self->body), cell),
                   .owner = self->owner + cell,
                   .has_knot = may_have_knot (scene, span) };

  if (part != NULL)
    part_by_pocket (self, part, run, cell);
  else if (is_on_background (scene, span))
    add_run (self, run, cell);
  else
    part_run (self, run, cell);
}

PpBed *
pp_bed_new (const PpScene *scene,
            guint          index,
            double        *below,
            PpOwner       *owner,
            PpRoom        *room)
{
  const PpBody *body = scene->bodies[index];
  int pocket = scene->pockets[index];
  const PpCells *part = pocket == PP_NO_INDEX ? NULL : scene->parts[pocket].cells;
  PpBed *self = bed_alloc (body, below, owner, room);
  guint cell = 0;

  for (guint k = 0; k < body->cells->n_spans; k++)
    {
      const PpSpan *span = &body->cells->spans[k];

      add_span (self, scene, part, *span, cell);
      cell += (guint) (span->i1 - span->i0);
    }
  return self;
}

void
pp_bed_free (PpBed *self)
{
  if (self == NULL)
    return;
  g_free (self->runs);
  g_free (self);
}
