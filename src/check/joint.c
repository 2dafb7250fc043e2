/* joint.c: what glue holds a placement: where it can be filled, and the dabs there is room for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The upward pass. Fillable cells stand on a grid of the piece's box, grown by one cell so that
 * its border is never fillable. The distance to the nearest cell that is not says how wide a dab
 * may be; regions are flooded from cell to cell. Then dabs are set one after another: each place
 * has a score, and the greatest wins, ties going to the first by row and column.
 */
#include "check/joint.h"

#include "check/distance.h"
#include "check/finding.h"
#include "check/loops.h"

#include <string.h>

#define CELL_AREA (PP_CELL * PP_CELL)
#define MM3_PER_ML 1000.0

/* Fillable cells beside each other in a row, column i0 to i1 - 1 of the grid. */
typedef struct
{
  int   row;
  int   i0;
  int   i1;
  guint first; /* in the bed */
  const PpOwner *owner; /* of each, and H */
  const double  *below;
  guint root;  /* an earlier run of the same region, or itself */
  int   squared; /* of a root: the region's greatest */
} Run;

typedef struct
{
  const PpBed *bed;
  double  bond;    /* mm */
  int     i0;      /* column and row of the grid's first cell */
  int     j0;
  int     width;
  int     height;
  int    *squared; /* in cells: distance to the nearest not fillable, as far as it matters */
  GArray *runs;    /* Run */
} Ground;

/* Where dabs may be centred, row by row from the top, each from the left. */
typedef struct
{
  guint   n;
  guint  *cell;     /* in the bed */
  double *x;        /* mm from the centre of mass */
  double *y;
  double *diameter;
  double *score;    /* mm²; PP_LOOP_NEVER: not at all */
} Places;

static double
glue_in_cell (const Ground *self,
              guint         k)
{
  return (self->bed->gap[k] + self->bond) * CELL_AREA / MM3_PER_ML;
}

static gsize
square_at (const Ground *self,
           int           column,
           int           row)
{
  return (gsize) row * (gsize) self->width + (gsize) column;
}

/* A stretch from the `first` to before the `end` of a run's cells. */
static void
add_stretch (Ground         *self,
             const PpBedRun *of,
             guint           first,
             guint           end)
{
  int column = of->i0 - self->i0;
  Run run = { of->j - self->j0, column + (int) first, column + (int) end, of->first + first,
              of->owner + first, of->below + first, self->runs->len, 0 };

  if (first < end)
    g_array_append_val (self->runs, run);
}

/* The fillable stretches of a run of the bed: most often all of it, or nothing. */
static void
part_run (Ground         *self,
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
  while (g_array_index (runs, Run, r).root != r)
    r = g_array_index (runs, Run, r).root = g_array_index (runs, Run,
                                                           g_array_index (runs, Run, r).root).root;
  return r;
}

static void
join_runs (GArray *runs,
           guint   a,
           guint   b)
{
  guint p = find_root (runs, a), q = find_root (runs, b);

  g_array_index (runs, Run, MAX (p, q)).root = MIN (p, q);
}

/* Runs hang together that share a side, or that the bed parted where nothing parts them. */
static void
find_regions (GArray *runs)
{
  guint above = 0;

  for (guint r = 0; r < runs->len; r++)
    {
      const Run *run = &g_array_index (runs, Run, r);
      const Run *other;

      if (r > 0 && run[-1].row == run->row && run[-1].i1 == run->i0)
        join_runs (runs, r - 1, r);
      for (; above < r; above++)
        {
          other = &g_array_index (runs, Run, above);
          if (other->row > run->row - 1 || (other->row == run->row - 1 && other->i1 > run->i0))
            break;
        }
      for (guint o = above; o < r; o++)
        {
          other = &g_array_index (runs, Run, o);
          if (other->row != run->row - 1 || other->i0 >= run->i1)
            break;
          join_runs (runs, o, r);
        }
    }
}

static void
measure_distances (Ground *self,
                   double  dab)
{
  gsize n = (gsize) self->width * (gsize) self->height;
  g_autofree guint8 *full = g_new0 (guint8, n);
  double enough = fmin (ceil (dab / 2 / PP_CELL), G_MAXINT);

  for (guint r = 0; r < self->runs->len; r++)
    {
      const Run *run = &g_array_index (self->runs, Run, r);

      memset (full + square_at (self, run->i0, run->row), 1, (gsize) (run->i1 - run->i0));
    }
  self->squared = pp_distance_squared (full, self->width, self->height, (int) enough);
}

static void
find_greatest (Ground *self)
{
  for (guint r = 0; r < self->runs->len; r++)
    {
      const Run *run = &g_array_index (self->runs, Run, r);
      const int *squared = self->squared + square_at (self, run->i0, run->row);
      Run *root = &g_array_index (self->runs, Run, find_root (self->runs, r));
      int greatest = 0;

      for (int i = 0; i < run->i1 - run->i0; i++)
        greatest = MAX (greatest, squared[i]);
      root->squared = MAX (root->squared, greatest);
    }
}

static double
diameter_of (const Run *root,
             double     dab)
{
  return fmin (dab, 2 * PP_CELL * sqrt (root->squared));
}

/* Regions too small for a dab take none, unless all are: then the largest do. */
static double
find_least_diameter (const Ground *self,
                     double        dab,
                     double        small)
{
  double greatest = 0;

  for (guint r = 0; r < self->runs->len; r++)
    greatest = fmax (greatest, diameter_of (&g_array_index (self->runs, Run, r), dab));
  return fmin (small, greatest);
}

/* The least squared distance that leaves room for a dab. */
static int
find_room (double diameter)
{
  int least = (int) fmax (0, floor (pow ((diameter / 2 - PP_TIE) / PP_CELL, 2)) - 1);

  while (pp_is_under (PP_CELL * sqrt (least), diameter / 2))
    least++;
  return least;
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

static void
places_init (Places *self,
             guint   n)
{
  double *columns = g_new (double, 4 * (gsize) n + 1); /* all in one, which `x` owns */

  *self = (Places) { 0, g_new (guint, n + 1), columns, columns + n, columns + 2 * (gsize) n,
                     columns + 3 * (gsize) n };
}

static void
places_clear (Places *self)
{
  g_free (self->cell);
  g_free (self->x);
}

static void
add_places (const Ground *self,
            const Run    *run,
            double        diameter,
            int           least,
            Places       *places)
{
  const int *squared = self->squared + square_at (self, run->i0, run->row);

  for (guint i = 0; i < (guint) (run->i1 - run->i0); i++)
    {
      guint p = places->n;

      if (squared[i] < least)
        continue;
      places->cell[p] = run->first + i;
      places->x[p] = self->bed->x[run->first + i];
      places->y[p] = self->bed->y[run->first + i];
      places->diameter[p] = diameter;
      places->n++;
    }
}

static void
find_places (const Ground *self,
             double        dab,
             double        small,
             Places       *places)
{
  double least = find_least_diameter (self, dab, small), last = 0;
  int room = 0; /* for the last diameter */

  places_init (places, self->bed->n);
  for (guint r = 0; r < self->runs->len; r++)
    {
      double diameter
          = diameter_of (&g_array_index (self->runs, Run, find_root (self->runs, r)), dab);

      if (diameter <= 0 || pp_is_under (diameter, least))
        continue;
      if (diameter != last)
        room = find_room (diameter);
      last = diameter;
      add_places (self, &g_array_index (self->runs, Run, r), diameter, room, places);
    }
}

static double
reach_of (const Places *places,
          guint         p)
{
  return places->x[p] * places->x[p] + places->y[p] * places->y[p];
}

/* The nearest to the centre of mass; if any place is in contact, of those. FALSE without a
 * place. */
static gboolean
pick_first (const Ground *self,
            const Places *places,
            double        contact,
            guint        *which)
{
  const double *gap = self->bed->gap;
  double least = INFINITY, least_touching = INFINITY;
  gboolean any;

  for (guint p = 0; p < places->n; p++)
    {
      double reach = reach_of (places, p);

      least = MIN (least, reach);
      if (reach < least_touching && !pp_is_over (gap[places->cell[p]], contact))
        least_touching = reach;
    }
  any = isfinite (least_touching);
  least = sqrt (any ? least_touching : least) + PP_TIE;
  for (guint p = 0; p < places->n; p++)
    if (reach_of (places, p) <= least * least
        && (!any || !pp_is_over (gap[places->cell[p]], contact)))
      {
        *which = p;
        return TRUE;
      }
  return FALSE;
}

/* The place that is farthest from its nearest dab, once one is laid at the place `laid`. FALSE if
 * none is left. */
static gboolean
pick_next (const Places *places,
           guint         laid,
           guint        *which)
{
  double best = pp_loop_farthest (places->x, places->y, places->diameter, places->n,
                                  places->x[laid], places->y[laid], places->diameter[laid],
                                  places->score);
  double least;

  if (best <= PP_LOOP_NEVER)
    return FALSE;
  least = fmax (0, sqrt (best) - PP_TIE);
  for (guint p = 0; p < places->n; p++)
    if (places->score[p] >= least * least)
      {
        *which = p;
        return TRUE;
      }
  g_return_val_if_reached (FALSE);
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

      if (g_array_index (runs, Run, middle).row < row)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* ml that the fillable gap holds within `radius` of a square. */
static double
glue_around (const Ground *self,
             int           column,
             int           row,
             double        radius)
{
  int reach = (int) ceil (radius / PP_CELL), most = find_reach (radius);
  double sum = 0;

  for (guint r = find_row (self->runs, row - reach); r < self->runs->len; r++)
    {
      const Run *run = &g_array_index (self->runs, Run, r);

      if (run->row > row + reach)
        break;
      for (int i = MAX (column - reach, run->i0); i < MIN (column + reach + 1, run->i1); i++)
        if ((i - column) * (i - column) + (run->row - row) * (run->row - row) <= most)
          sum += glue_in_cell (self, run->first + (guint) (i - run->i0));
    }
  return sum;
}

/* The run in which a cell of the bed lies. */
static const Run *
find_run (GArray *runs,
          guint   cell)
{
  guint low = 0, high = runs->len;

  while (high - low > 1)
    {
      guint middle = (low + high) / 2;

      if (g_array_index (runs, Run, middle).first <= cell)
        low = middle;
      else
        high = middle;
    }
  return &g_array_index (runs, Run, low);
}

static PpDab
make_dab (const Ground  *self,
          const PpPanel *panel,
          const Places  *places,
          guint          place)
{
  const PpBed *bed = self->bed;
  guint k = places->cell[place];
  const Run *run = find_run (self->runs, k);
  PpPoint at = { bed->x[k] + bed->body->centroid.x, bed->y[k] + bed->body->centroid.y };
  int i = pp_cell_at (at.x), j = pp_cell_at (at.y);
  double glue = glue_around (self, i - self->i0, j - self->j0, places->diameter[place] / 2);

  return (PpDab) {
    .at = { pp_cell_centre (i), pp_cell_centre (j) },
    .diameter = places->diameter[place],
    .volume = fmax (pp_panel_get_limit (panel, PP_LIMIT_DAB_LEAST),
                    pp_panel_get_limit (panel, PP_LIMIT_WASTE) * glue),
    .underside = bed->gap[k] + run->below[k - run->first],
    .owner = run->owner[k - run->first],
  };
}

static void
set_dabs (const Ground  *self,
          const PpPanel *panel,
          PpJoint       *joint)
{
  Places places;
  guint place = 0;
  gboolean found;

  find_places (self, pp_panel_get_limit (panel, PP_LIMIT_DAB),
               pp_panel_get_limit (panel, PP_LIMIT_DAB_SMALL), &places);
  for (guint p = 0; p < places.n; p++)
    places.score[p] = PP_LOOP_FAR;
  found = pick_first (self, &places, pp_panel_get_limit (panel, PP_LIMIT_CONTACT), &place);
  while (found)
    {
      joint->places[joint->n_places++] = make_dab (self, panel, &places, place);
      found = joint->n_places < PP_MAX_DABS && pick_next (&places, place, &place);
    }
  places_clear (&places);
}

static void
sum_up (const Ground *self,
        PpJoint      *joint)
{
  for (guint r = 0; r < self->runs->len; r++)
    {
      const Run *run = &g_array_index (self->runs, Run, r);
      guint n = (guint) (run->i1 - run->i0);

      joint->area += CELL_AREA * n;
      for (guint k = run->first; k < run->first + n; k++)
        joint->capacity += glue_in_cell (self, k);
    }
}

void
pp_joint_find_places (PpJoint       *self,
                      const PpScene *scene,
                      const PpBed   *bed,
                      const PpRest  *rest)
{
  const PpPanel *panel = scene->panel;
  PpCellBox box = bed->body->cells->box;
  Ground ground = {
    .bed = bed,
    .bond = pp_panel_get_limit (panel, PP_LIMIT_BOND),
    .i0 = box.i0 - 1,
    .j0 = box.j0 - 1,
    .width = box.i1 - box.i0 + 2,
    .height = box.j1 - box.j0 + 2,
  };

  *self = (PpJoint) { .utilisation = NAN };
  if (rest->state == PP_STATE_FLOATS)
    return;
  ground.runs = g_array_sized_new (FALSE, FALSE, sizeof (Run), bed->n_runs);
  for (guint r = 0; r < bed->n_runs; r++)
    part_run (&ground, &bed->runs[r], panel->adhesive->fill_gap);
  find_regions (ground.runs);
  measure_distances (&ground, pp_panel_get_limit (panel, PP_LIMIT_DAB));
  find_greatest (&ground);
  sum_up (&ground, self);
  set_dabs (&ground, panel, self);
  g_free (ground.squared);
  g_array_unref (ground.runs);
}
