/* bed.c: what lies under a placement at the moment it is laid, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/bed.h"

#include "check/loops.h"

static PpBed *
bed_alloc (const PpBody *body,
           PpRoom       *room)
{
  PpBed *self = g_new0 (PpBed, 1);
  gsize column = body->cells->n_cells * sizeof (double);

  self->body = body;
  self->room = room;
  self->x = pp_room_take (room, column);
  self->y = pp_room_take (room, column);
  self->h = pp_room_take (room, column);
  self->gap = pp_room_take (room, column);
  return self;
}

/* `cell` is the body's own number of its first. */
static void
add_run (PpBed   *self,
         GArray  *runs,
         PpBedRun run,
         guint    cell)
{
  const PpBody *body = self->body;
  const double *underside = body->underside == NULL ? NULL : body->underside + cell;
  double row = pp_cell_centre (run.j) - body->centroid.y;

  run.first = self->n;
  pp_loop_lay (run.below, underside, run.n, pp_cell_centre (run.i0), body->centroid.x,
               self->x + run.first, self->h + run.first);
  for (guint k = run.first; k < run.first + run.n; k++)
    self->y[k] = row;
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

/* Of a run, `n` cells from the one at `start` on. */
static PpBedRun
part_of_run (const PpBedRun *run,
             guint           start,
             guint           n)
{
  PpBedRun part = *run;

  part.i0 += (int) start;
  part.n = n;
  part.below += start;
  part.owner += start;
  return part;
}

static const double bare_ground = 0;
static const PpOwner bare_background = PP_OWNER (PP_OWNER_BACKGROUND, 0);

/* Parts it where nothing lies, and where the pocket is. */
static void
part_run (PpBed         *self,
          GArray        *runs,
          const PpCells *part,
          PpBedRun       run,
          guint          cell)
{
  guint start = 0;

  for (guint k = 0; k < run.n; k++)
    {
      gboolean bare = is_bare (part, run.i0 + (int) k, run.j);

      if (!bare && run.owner[k] != PP_OWNER_NOTHING)
        continue;
      if (start < k)
        add_run (self, runs, part_of_run (&run, start, k - start), cell + start);
      if (bare)
        add_run (self, runs, (PpBedRun) { .j = run.j, .i0 = run.i0 + (int) k, .n = 1,
                                          .below = &bare_ground, .owner = &bare_background },
                 cell + k);
      start = k + 1;
    }
  if (start < run.n)
    add_run (self, runs, part_of_run (&run, start, run.n - start), cell + start);
}

static void
add_span (PpBed         *self,
          GArray        *runs,
          const PpCells *part,
          PpSpan         span,
          guint          cell)
{
  PpBedRun run = { .j = span.j, .i0 = span.i0, .n = (guint) (span.i1 - span.i0),
                   .below = self->below + cell, .owner = self->owner + cell };
  gboolean nothing;

  pp_loop_owners (run.owner, run.n, &nothing, &run.has_knot);
  if (nothing || part != NULL)
    part_run (self, runs, part, run, cell);
  else
    add_run (self, runs, run, cell);
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
  PpBed *self = bed_alloc (body, room);
  GArray *runs = g_array_sized_new (FALSE, FALSE, sizeof (PpBedRun), body->cells->n_spans);
  guint cell = 0;

  self->below = below;
  self->owner = owner;
  for (guint k = 0; k < body->cells->n_spans; k++)
    {
      const PpSpan *span = &body->cells->spans[k];

      add_span (self, runs, part, *span, cell);
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
  g_free (self->runs);
  g_free (self);
}
