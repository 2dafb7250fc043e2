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

#include <string.h>

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
  int column = of->i0 - self->i0;
  PpFillableRun run = { of->j - self->j0, column + (int) first, column + (int) end,
                        of->first + first, of->owner + first, of->below + first,
                        self->runs->len, 0 };

  if (first < end)
    g_array_append_val (self->runs, run);
}

/* The fillable stretches of a run of the bed: most often all of it, or nothing. */
static void
part_run (PpFillable     *self,
          const PpBedRun *of,
          double          fill_gap)
{
  const double *gap = self->bed->gap + of->first;
  guint start = 0;

  if (pp_is_over (of->least, fill_gap))
    return;
  for (guint k = 0; k < of->n && (of->has_knot || pp_is_over (of->greatest, fill_gap)); k++)
    if (pp_is_over (gap[k], fill_gap) || pp_owner_kind (of->owner[k]) == PP_OWNER_KNOT)
      {
        add_stretch (self, of, start, k);
        start = k + 1;
      }
  add_stretch (self, of, start, of->n);
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
      const PpFillableRun *run = run_at (runs, r);
      const PpFillableRun *other;

      if (r > 0 && run[-1].row == run->row && run[-1].i1 == run->i0)
        join_runs (runs, r - 1, r);
      for (; above < r; above++)
        {
          other = run_at (runs, above);
          if (other->row > run->row - 1 || (other->row == run->row - 1 && other->i1 > run->i0))
            break;
        }
      for (guint o = above; o < r; o++)
        {
          other = run_at (runs, o);
          if (other->row != run->row - 1 || other->i0 >= run->i1)
            break;
          join_runs (runs, o, r);
        }
    }
}

static void
measure_distances (PpFillable *self,
                   double      dab)
{
  gsize n = (gsize) self->width * (gsize) self->height;
  g_autofree guint8 *full = g_new0 (guint8, n);
  double enough = fmin (ceil (dab / 2 / PP_CELL), G_MAXINT);

  for (guint r = 0; r < self->runs->len; r++)
    {
      const PpFillableRun *run = pp_fillable_run (self, r);

      memset (full + (gsize) run->row * (gsize) self->width + (gsize) run->i0, 1,
              (gsize) (run->i1 - run->i0));
    }
  self->squared = pp_distance_squared (full, self->width, self->height, (int) enough);
}

static int
find_farthest (const PpFillable    *self,
               const PpFillableRun *run)
{
  const int *squared = pp_fillable_squared (self, run);
  int farthest = 0;

  for (int i = 0; i < run->i1 - run->i0; i++)
    farthest = MAX (farthest, squared[i]);
  return farthest;
}

static void
find_greatest (PpFillable *self)
{
  GArray *runs = self->runs;

  for (guint r = 0; r < runs->len; r++)
    {
      PpFillableRun *root = run_at (runs, find_root (runs, r));

      root->squared = MAX (root->squared, find_farthest (self, run_at (runs, r)));
    }
  for (guint r = 0; r < runs->len; r++)
    run_at (runs, r)->squared = run_at (runs, find_root (runs, r))->squared;
}

void
pp_fillable_init (PpFillable  *self,
                  const PpBed *bed,
                  double       fill_gap,
                  double       bond,
                  double       dab)
{
  PpCellBox box = bed->body->cells->box;

  *self = (PpFillable) {
    .bed = bed,
    .bond = bond,
    .i0 = box.i0 - 1,
    .j0 = box.j0 - 1,
    .width = box.i1 - box.i0 + 2,
    .height = box.j1 - box.j0 + 2,
    .runs = g_array_sized_new (FALSE, FALSE, sizeof (PpFillableRun), bed->n_runs),
  };
  for (guint r = 0; r < bed->n_runs; r++)
    part_run (self, &bed->runs[r], fill_gap);
  find_regions (self->runs);
  measure_distances (self, dab);
  find_greatest (self);
}

void
pp_fillable_clear (PpFillable *self)
{
  g_free (self->squared);
  g_array_unref (self->runs);
}

static double
glue_in_cell (const PpFillable *self,
              guint             k)
{
  return (self->bed->gap[k] + self->bond) * CELL_AREA / MM3_PER_ML;
}

void
pp_fillable_sum_up (const PpFillable *self,
                    double           *area,
                    double           *capacity)
{
  *area = *capacity = 0;
  for (guint r = 0; r < self->runs->len; r++)
    {
      const PpFillableRun *run = pp_fillable_run (self, r);
      guint n = (guint) (run->i1 - run->i0);

      *area += CELL_AREA * n;
      for (guint k = run->first; k < run->first + n; k++)
        *capacity += glue_in_cell (self, k);
    }
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

      if (run_at (runs, middle)->row < row)
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
  int column = i - self->i0, row = j - self->j0;
  int reach = (int) ceil (radius / PP_CELL), most = find_reach (radius);
  double sum = 0;

  for (guint r = find_row (self->runs, row - reach); r < self->runs->len; r++)
    {
      const PpFillableRun *run = pp_fillable_run (self, r);

      if (run->row > row + reach)
        break;
      for (int c = MAX (column - reach, run->i0); c < MIN (column + reach + 1, run->i1); c++)
        if ((c - column) * (c - column) + (run->row - row) * (run->row - row) <= most)
          sum += glue_in_cell (self, run->first + (guint) (c - run->i0));
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
