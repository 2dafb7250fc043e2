/* checks.c: how long a check takes, anew and after a drag, how it grows, and its memory.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Processor time, medians, all in one run. The plain pass, which the whole check is held against,
 * turns the same outlines into spans and fills these in the same grid with the pieces' heights: once
 * with one a piece, as memset does, once with the height of its top over each cell.
 */
#include "meadow.h"

#include "check/check.h"

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

static void
fill (PpField       *field,
      const PpCells *cells,
      double         height)
{
  for (guint k = 0; k < cells->n_spans; k++)
    {
      PpSpan span = cells->spans[k];
      double *at;

      if (!pp_field_clip (field, &span))
        continue;
      at = field->height + pp_field_at (field, span.i0, span.j);
      for (int i = span.i0; i < span.i1; i++)
        *at++ = height;
    }
}

/* Undersides first, where the tops come to lie then. */
static void
fill_tops (PpField       *field,
           const PpCells *cells,
           const PpBody  *body)
{
  const PpPoint origin = pp_frame_to_piece (&body->frame, (PpPoint) { 0, 0 });
  const PpPoint right = pp_frame_to_piece (&body->frame, (PpPoint) { PP_CELL, 0 });
  const PpPoint step = { right.x - origin.x, right.y - origin.y };

  for (guint k = 0; k < cells->n_spans; k++)
    {
      PpSpan span = cells->spans[k];
      PpPoint first;
      double *at;

      if (!pp_field_clip (field, &span))
        continue;
      first = pp_frame_to_piece (&body->frame, (PpPoint) { pp_cell_centre (span.i0),
                                                           pp_cell_centre (span.j) });
      at = field->height + pp_field_at (field, span.i0, span.j);
      pp_heights_fill (&body->heights, first, step, (guint) (span.i1 - span.i0), at);
      pp_heights_fill_top (&body->heights, first, step, (guint) (span.i1 - span.i0), at, at);
    }
}

static void
fill_by_memset (PpField       *field,
                const PpCells *cells)
{
  for (guint k = 0; k < cells->n_spans; k++)
    {
      PpSpan span = cells->spans[k];

      if (pp_field_clip (field, &span))
        memset (field->height + pp_field_at (field, span.i0, span.j), 0,
                (gsize) (span.i1 - span.i0) * sizeof (double));
    }
}

typedef enum
{
  BY_MEMSET, /* over spans that are there */
  PLAINLY,   /* from outlines, as the next */
  WITH_TOPS,
} Way;

static void
fill_all (PpField       *field,
          const PpScene *scene,
          Way            way)
{
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];
      g_autoptr (PpCells) cells = way == BY_MEMSET ? pp_cells_ref (body->cells)
                                                   : pp_cells_new (body->outline);

      if (way == BY_MEMSET)
        fill_by_memset (field, cells);
      else if (way == PLAINLY || (pp_body_is_flat (body) && body->top == NULL))
        fill (field, cells, body->piece->thickness);
      else
        fill_tops (field, cells, body);
    }
}

static double
time_fill (const PpPanel *panel,
           guint          runs,
           Way            way)
{
  g_autoptr (PpScene) scene = pp_scene_new (panel, NULL);
  g_autoptr (PpField) field = pp_field_new (scene);
  double times[MOST_RUNS];

  for (guint k = 0; k < runs; k++)
    {
      double start = bench_now ();

      fill_all (field, scene, way);
      times[k] = bench_now () - start;
    }
  return bench_median (times, runs);
}

static void
measure_whole (void)
{
  PpPanel *panel = meadow_new (60);
  double whole = time_check (panel, 41);
  double plain = time_fill (panel, MOST_RUNS, PLAINLY);
  double tops = time_fill (panel, MOST_RUNS, WITH_TOPS);
  double least = time_fill (panel, MOST_RUNS, BY_MEMSET);

  bench_say ("check of 60 pieces, schedule aside", whole, "ms", "");
  bench_say ("the same outlines filled into the grid, one height a piece", plain, "ms", "");
  bench_say ("the same with the height of each cell", tops, "ms", "");
  bench_say ("memset over the same spans", least, "ms", "");
  bench_say ("check / pass of one height a piece", whole / plain, "", "");
  bench_say ("check / pass with the height of each cell", whole / tops, "", "below 15");
  bench_say ("pass of one height a piece / memset", plain / least, "", "below 2");
  bench_say ("pass with the height of each cell / memset", tops / least, "", "");
  pp_panel_unref (panel);
}

static double
time_drags (PpPanel *panel,
            double  *worst)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (7);
  PpCheck *last = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  double times[MOST_RUNS];

  for (guint k = 0; k < MOST_RUNS; k++)
    {
      PpPanel *next = meadow_drag (panel, dice);
      double start = bench_now ();
      PpCheck *check = pp_check_new (next, last, NULL, NULL, NULL, NULL);

      times[k] = bench_now () - start;
      pp_check_unref (last);
      pp_panel_unref (panel);
      last = check;
      panel = next;
    }
  pp_check_unref (last);
  pp_panel_unref (panel);
  *worst = 0;
  for (guint k = 0; k < MOST_RUNS; k++)
    *worst = MAX (*worst, times[k]);
  return bench_median (times, MOST_RUNS);
}

static void
measure_drag (void)
{
  PpPanel *panel = meadow_new (200);
  double whole = time_check (panel, 21);
  double worst, drag = time_drags (panel, &worst);

  bench_say ("check of 200 pieces", whole, "ms", "");
  bench_say ("one of them dragged, median", drag, "ms", "");
  bench_say ("one of them dragged, worst of 400", worst, "ms", "");
  bench_say ("check of 200 / one dragged", whole / drag, "", "above 50");
}

static void
measure_growth (void)
{
  const guint sizes[] = { 25, 50, 100, 200, 400 };
  double times[G_N_ELEMENTS (sizes)];

  for (guint k = 0; k < G_N_ELEMENTS (sizes); k++)
    {
      PpPanel *panel = meadow_new (sizes[k]);
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
  PpPanel *panel = meadow_new (400);
  struct rusage usage;

  pp_check_unref (pp_check_new (panel, NULL, NULL, NULL, NULL, NULL));
  getrusage (RUSAGE_SELF, &usage);
  bench_say ("memory of a check of 400 pieces", (double) usage.ru_maxrss / 1024, "MiB",
             "below 190 (200 MB)");
  pp_panel_unref (panel);
}

int
main (void)
{
  measure_memory ();
  measure_whole ();
  measure_drag ();
  measure_growth ();
  return 0;
}
