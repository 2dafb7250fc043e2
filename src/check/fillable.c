/* fillable.c: where the gap under a placement can be filled with glue, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Regions are flooded from run to run of a row: each knows an earlier one, up to the first, the
 * root.
 */
#include "check/fillable.h"

#include "check/distance.h"
#include "check/finding.h"
#include "check/loops.h"
#include "shape/wide.h"

#define CELL_AREA (PP_CELL * PP_CELL)
#define MM3_PER_ML 1000.0

static PpFillableRun *
run_at (GArray *runs,
        guint   r)
{
  return &g_array_index (runs, PpFillableRun, r);
}

/* A stretch from the `first` to before the `end` of a run's cells. */
static void
add_stretch (PpFillable     *self,
             const PpBedRun *of,
             guint           first,
             guint           end)
{
  PpFillableRun run = { .span = { of->j, of->i0 + (int) first, of->i0 + (int) end },
                        .first = of->first + first, .owner = of->owner + first,
                        .underside = of->underside == NULL ? NULL : of->underside + first,
                        .root = self->runs->len };

  g_array_append_val (self->runs, run);
}

/* The fillable stretches of a run of the bed. `fills` has room for each cell. */
static void
part_run (PpFillable     *self,
          const PpBedRun *of,
          double          fill_gap,
          guint8         *fills)
{
  guint first, end = 0;

  pp_loop_no_more (self->bed->gap + of->first, of->n, fill_gap + PP_TIE, fills);
  for (guint k = 0; k < of->n && of->has_knot; k++)
    if (pp_owner_kind (of->owner[k]) == PP_OWNER_KNOT)
      fills[k] = FALSE;
  while (pp_loop_find_stretch (fills, of->n, &first, &end))
    add_stretch (self, of, first, end);
}

/* Most often a run is fillable wholly, or not at all. */
static void
part_runs (PpFillable *self,
           double      fill_gap)
{
  guint8 *fills = pp_room_take (self->bed->room, self->bed->n);

  for (guint r = 0; r < self->bed->n_runs; r++)
    {
      const PpBedRun *run = &self->bed->runs[r];

      if (pp_is_over (run->least, fill_gap))
        continue;
      if (run->has_knot || pp_is_over (run->greatest, fill_gap))
        part_run (self, run, fill_gap, fills);
      else
        add_stretch (self, run, 0, run->n);
    }
}

static guint
find_root (GArray *runs,
           guint   r)
{
  while (run_at (runs, r)->root != r)
    {
      PpFillableRun *run = run_at (runs, r);

      run->root = run_at (runs, run->root)->root;
      r = run->root;
    }
  return r;
}

static void
join_runs (GArray *runs,
           guint   a,
           guint   b)
{
  guint p = find_root (runs, a), q = find_root (runs, b);

  run_at (runs, MAX (p, q))->root = MIN (p, q);
}

/* Runs hang together that share a side, or that the bed parted where nothing parts them. */
static void
find_regions (GArray *runs)
{
  guint above = 0;

  for (guint r = 0; r < runs->len; r++)
    {
      PpSpan span = run_at (runs, r)->span, other = run_at (runs, r > 0 ? r - 1 : 0)->span;

      if (other.j == span.j && other.i1 == span.i0)
        join_runs (runs, r - 1, r);
      for (; above < r; above++)
        {
          other = run_at (runs, above)->span;
          if (other.j > span.j - 1 || (other.j == span.j - 1 && other.i1 > span.i0))
            break;
        }
      for (guint o = above; o < r; o++)
        {
          other = run_at (runs, o)->span;
          if (other.j != span.j - 1 || other.i0 >= span.i1)
            break;
          join_runs (runs, o, r);
        }
    }
}

/* Of each run also the greatest. */
static void
measure_distances (PpFillable *self,
                   double      dab)
{
  guint n = self->runs->len, n_cells = 0;
  g_autofree PpSpan *full = g_new (PpSpan, n + 1);
  g_autofree int *farthest = g_new (int, n + 1);
  int *squared;
  double enough = fmin (ceil (dab / 2 / PP_CELL), G_MAXINT);

  for (guint r = 0; r < n; r++)
    {
      full[r] = pp_fillable_run (self, r)->span;
      n_cells += pp_fillable_count (pp_fillable_run (self, r));
    }
  squared = pp_room_take (self->bed->room, n_cells * sizeof *squared);
  pp_distance_squared (full, n, (int) enough, squared, farthest);
  for (guint r = 0; r < n; r++)
    {
      PpFillableRun *run = run_at (self->runs, r);

      run->squared = squared;
      run->farthest = farthest[r];
      squared += pp_fillable_count (run);
    }
}

static void
find_greatest (PpFillable *self)
{
  GArray *runs = self->runs;

  for (guint r = 0; r < runs->len; r++)
    {
      PpFillableRun *root = run_at (runs, find_root (runs, r));

      root->farthest = MAX (root->farthest, run_at (runs, r)->farthest);
    }
  for (guint r = 0; r < runs->len; r++)
    run_at (runs, r)->farthest = run_at (runs, find_root (runs, r))->farthest;
}

void
pp_fillable_init (PpFillable  *self,
                  const PpBed *bed,
                  double       fill_gap,
                  double       bond,
                  double       dab)
{
  *self = (PpFillable) {
    .bed = bed,
    .bond = bond,
    .runs = g_array_sized_new (FALSE, FALSE, sizeof (PpFillableRun), bed->n_runs),
  };
  part_runs (self, fill_gap);
  find_regions (self->runs);
  measure_distances (self, dab);
  find_greatest (self);
}

void
pp_fillable_clear (PpFillable *self)
{
  g_array_unref (self->runs);
}

/* ml, in `n` cells of the bed from the `first` on. */
static double
glue_in_cells (const PpFillable *self,
               guint             first,
               guint             n)
{
  return (pp_wide_sum (self->bed->gap + first, n) + n * self->bond) * (CELL_AREA / MM3_PER_ML);
}

void
pp_fillable_sum_up (const PpFillable *self,
                    double           *area,
                    double           *capacity)
{
  guint n_cells = 0;
  double glue = 0;

  for (guint r = 0; r < self->runs->len; r++)
    {
      const PpFillableRun *run = pp_fillable_run (self, r);
      guint n = pp_fillable_count (run);

      n_cells += n;
      glue += glue_in_cells (self, run->first, n);
    }
  *area = CELL_AREA * n_cells;
  *capacity = glue;
}

/* The greatest squared distance within a radius. */
static int
find_reach (double radius)
{
  int most = (int) floor (pow ((radius + PP_TIE) / PP_CELL, 2)) + 1;

  while (pp_is_over (PP_CELL * sqrt (most), radius))
    most--;
  return most;
}

/* The first run of a row or a later one. */
static guint
find_row (GArray *runs,
          int     row)
{
  guint low = 0, high = runs->len;

  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (run_at (runs, middle)->span.j < row)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

double
pp_fillable_glue_around (const PpFillable *self,
                         int               i,
                         int               j,
                         double            radius)
{
  int reach = (int) ceil (radius / PP_CELL), most = find_reach (radius);
  double sum = 0;

  for (guint r = find_row (self->runs, j - reach); r < self->runs->len; r++)
    {
      const PpFillableRun *run = pp_fillable_run (self, r);
      PpSpan span = run->span;
      int half, i0, i1;

      if (span.j > j + reach)
        break;
      if ((span.j - j) * (span.j - j) > most)
        continue;
      half = (int) sqrt (most - (span.j - j) * (span.j - j)); /* of a whole number: exact */
      i0 = MAX (i - half, span.i0);
      i1 = MIN (i + half + 1, span.i1);
      if (i0 < i1)
        sum += glue_in_cells (self, run->first + (guint) (i0 - span.i0), (guint) (i1 - i0));
    }
  return sum;
}

const PpFillableRun *
pp_fillable_find_run (const PpFillable *self,
                      guint             cell)
{
  guint low = 0, high = self->runs->len;

  while (high - low > 1)
    {
      guint middle = (low + high) / 2;

      if (pp_fillable_run (self, middle)->first <= cell)
        low = middle;
      else
        high = middle;
    }
  return pp_fillable_run (self, low);
}
