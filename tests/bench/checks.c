/* checks.c: how long a check takes, anew and after a drag, how it grows, and its memory.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: checks [drags N]
 * With `drags` nothing but the check of 200 pieces and N drags, for a tool that counts instructions.
 *
 * Processor time, medians, all in one run. The plain pass, which the whole check is held against,
 * turns the same outlines into spans and fills these in the same grid with the pieces' heights: once
 * with one a piece, as memset does, once with the height of its top over each cell.
 */
#include "meadow.h"

#include "check/check.h"
#include "shape/wide.h"

#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

#define MOST_RUNS 400

static double
time_check (const PpPanel *panel,
            guint          runs)
{
  double times[MOST_RUNS];

  for (guint k = 0; k < runs; k++)
    {
      double start = bench_now ();

      pp_check_unref (pp_check_new (panel, NULL, NULL, NULL, NULL, NULL));
      times[k] = bench_now () - start;
    }
  return bench_median (times, runs);
}

/* The cells that hold all of a panel. */
typedef struct
{
  PpCellBox box;
  double   *height;
} Grid;

static PpCellBox
join_boxes (PpCellBox a,
            PpCellBox b)
{
  return (PpCellBox) { MIN (a.i0, b.i0), MIN (a.j0, b.j0), MAX (a.i1, b.i1), MAX (a.j1, b.j1) };
}

static Grid
grid_of (const PpScene *scene)
{
  PpCellBox box = scene->background_cells->box;

  for (guint i = 0; i < scene->n_bodies; i++)
    box = join_boxes (box, scene->bodies[i]->cells->box);
  return (Grid) { box, g_new0 (double, (gsize) (box.i1 - box.i0) * (gsize) (box.j1 - box.j0)) };
}

static double *
grid_at (const Grid   *self,
         const PpSpan *span)
{
  return self->height + (gsize) (span->j - self->box.j0) * (gsize) (self->box.i1 - self->box.i0)
         + (span->i0 - self->box.i0);
}

/* For vectors as wide as memset has them. */
PP_WIDE static void
fill (const Grid    *grid,
      const PpCells *cells,
      double         height)
{
  for (guint k = 0; k < cells->n_spans; k++)
    {
      const PpSpan *span = &cells->spans[k];
      double *at = grid_at (grid, span);

      for (int i = span->i0; i < span->i1; i++)
        *at++ = height;
    }
}

/* Undersides first, where the tops come to lie then. */
static void
fill_tops (const Grid    *grid,
           const PpCells *cells,
           const PpBody  *body)
{
  const PpPoint origin = pp_frame_to_piece (&body->frame, (PpPoint) { 0, 0 });
  const PpPoint right = pp_frame_to_piece (&body->frame, (PpPoint) { PP_CELL, 0 });
  const PpPoint step = { right.x - origin.x, right.y - origin.y };

  for (guint k = 0; k < cells->n_spans; k++)
    {
      const PpSpan *span = &cells->spans[k];
      guint n = (guint) (span->i1 - span->i0);
      PpPoint first = pp_frame_to_piece (&body->frame, (PpPoint) { pp_cell_centre (span->i0),
                                                                   pp_cell_centre (span->j) });
      double *at = grid_at (grid, span);

      pp_heights_fill (&body->heights, first, step, n, at);
      pp_heights_fill_top (&body->heights, first, step, n, at, at);
    }
}

static void
fill_by_memset (const Grid    *grid,
                const PpCells *cells)
{
  for (guint k = 0; k < cells->n_spans; k++)
    {
      const PpSpan *span = &cells->spans[k];

      memset (grid_at (grid, span), 0, (gsize) (span->i1 - span->i0) * sizeof (double));
    }
}

typedef enum
{
  BY_MEMSET, /* over spans that are there */
  PLAINLY,   /* from outlines, as the next */
  WITH_TOPS,
  N_WAYS
} Way;

static void
fill_all (const Grid    *grid,
          const PpScene *scene,
          Way            way)
{
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];
      g_autoptr (PpCells) cells = way == BY_MEMSET ? pp_cells_ref (body->cells)
                                                   : pp_cells_new (body->outline);

      if (way == BY_MEMSET)
        fill_by_memset (grid, cells);
      else if (way == PLAINLY || (pp_body_is_flat (body) && body->heights.crown.height == 0))
        fill (grid, cells, body->piece->thickness);
      else
        fill_tops (grid, cells, body);
    }
}

/* One round of all that is compared with one another, so that each meets the machine as it is just
 * then. The grid has been through the caches before. */
static void
time_round (const PpPanel *panel,
            const PpScene *scene,
            const Grid    *grid,
            double         times[N_WAYS + 1])
{
  double start = bench_now ();

  pp_check_unref (pp_check_new (panel, NULL, NULL, NULL, NULL, NULL));
  times[N_WAYS] = bench_now () - start;
  fill_all (grid, scene, BY_MEMSET);
  for (Way way = 0; way < N_WAYS; way++)
    {
      start = bench_now ();
      fill_all (grid, scene, way);
      times[way] = bench_now () - start;
    }
}

#define ROUNDS 101

static void
measure_whole (void)
{
  PpPanel *panel = meadow_new (60, MEADOW_ROOM);
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);
  Grid grid = grid_of (scene);
  double times[N_WAYS + 1][ROUNDS], round[N_WAYS + 1], median[N_WAYS + 1];

  for (guint k = 0; k < ROUNDS; k++)
    {
      time_round (panel, scene, &grid, round);
      for (guint i = 0; i <= N_WAYS; i++)
        times[i][k] = round[i];
    }
  for (guint i = 0; i <= N_WAYS; i++)
    median[i] = bench_median (times[i], ROUNDS);
  bench_say ("check of 60 pieces, schedule aside", median[N_WAYS], "ms", "");
  bench_say ("the same outlines filled into the grid, one height a piece", median[PLAINLY], "ms",
             "");
  bench_say ("the same with the height of each cell", median[WITH_TOPS], "ms", "");
  bench_say ("memset over the same spans", median[BY_MEMSET], "ms", "");
  bench_say ("check / pass of one height a piece", median[N_WAYS] / median[PLAINLY], "",
             "below 15");
  bench_say ("check / pass with the height of each cell", median[N_WAYS] / median[WITH_TOPS], "",
             "below 15");
  bench_say ("pass of one height a piece / memset", median[PLAINLY] / median[BY_MEMSET], "",
             "below 2");
  bench_say ("pass with the height of each cell / memset", median[WITH_TOPS] / median[BY_MEMSET], "",
             "");
  g_free (grid.height);
  pp_panel_unref (panel);
}

/* As many times a pointer moves a piece before it takes another. */
#define MOVES 20

/* A whole check at the first move of each piece, in `whole` (nullable), the moves in `times`. Takes
 * the panel. */
static void
time_drags (PpPanel *panel,
            double  *whole,
            double  *times,
            guint    runs)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (7);
  PpCheck *last = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  guint which = 0;

  for (guint k = 0; k < runs; k++)
    {
      PpPanel *next;
      PpCheck *check;
      double start;

      if (k % MOVES == 0 && whole != NULL)
        whole[k / MOVES] = time_check (panel, 1);
      which = k % MOVES == 0 ? meadow_choose (panel, dice) : which;
      next = meadow_drag (panel, which, dice);
      start = bench_now ();
      check = pp_check_new (next, last, NULL, NULL, NULL, NULL);
      times[k] = bench_now () - start;
      pp_check_unref (last);
      pp_panel_unref (panel);
      last = check;
      panel = next;
    }
  pp_check_unref (last);
  pp_panel_unref (panel);
}

static void
measure_drag (double      room,
              const char *where,
              const char *aim)
{
  g_autofree char *line = g_strdup_printf ("check of 200 pieces%s", where);
  double checks[MOST_RUNS / MOVES], times[MOST_RUNS], whole, drag;

  time_drags (meadow_new (200, room), checks, times, MOST_RUNS);
  whole = bench_median (checks, MOST_RUNS / MOVES);
  drag = bench_median (times, MOST_RUNS);
  bench_say (line, whole, "ms", "");
  bench_say ("one of them dragged, median", drag, "ms", "");
  bench_say ("one of them dragged, worst of 400", times[MOST_RUNS - 1], "ms", ""); /* sorted */
  bench_say ("check of 200 / one dragged", whole / drag, "", aim);
}

static void
measure_growth (void)
{
  const guint sizes[] = { 25, 50, 100, 200, 400 };
  double times[G_N_ELEMENTS (sizes)];

  for (guint k = 0; k < G_N_ELEMENTS (sizes); k++)
    {
      PpPanel *panel = meadow_new (sizes[k], MEADOW_ROOM);
      g_autofree char *what = g_strdup_printf ("check of %u pieces", sizes[k]);

      times[k] = time_check (panel, 15);
      bench_say (what, times[k], "ms", "");
      pp_panel_unref (panel);
    }
  bench_say ("growth from 25 to 400 pieces, power", log (times[4] / times[0]) / log (400 / 25.0), "",
             "below 1.2");
}

/* Of the process with the panel, its check and all that was let go. First, as it never falls. */
static void
measure_memory (void)
{
  PpPanel *panel = meadow_new (400, MEADOW_ROOM);
  struct rusage usage;

  pp_check_unref (pp_check_new (panel, NULL, NULL, NULL, NULL, NULL));
  getrusage (RUSAGE_SELF, &usage);
  bench_say ("memory of a check of 400 pieces", (double) usage.ru_maxrss / 1024, "MiB",
             "below 190 (200 MB)");
  pp_panel_unref (panel);
}

int
main (int    argc,
      char **argv)
{
  double times[MOST_RUNS];

  if (argc == 3 && g_str_equal (argv[1], "drags"))
    {
      time_drags (meadow_new (200, MEADOW_ROOM), NULL, times,
                  MIN ((guint) atoi (argv[2]), MOST_RUNS));
      return 0;
    }
  measure_memory ();
  measure_whole ();
  measure_drag (MEADOW_ROOM, "", "above 50");
  measure_drag (HEAP_ROOM, " in a heap", "");
  measure_growth ();
  return 0;
}
