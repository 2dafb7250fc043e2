/* cells.c: outlines on the anchored grid.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every side is cut by the rows of centres it spans; each row's cuts, sorted, pair up to spans. A
 * coordinate is rounded to the first centre at or after it, less PP_TIE, in both directions and at
 * both ends of a span alike: so a centre on the border counts on left and upper sides only, and
 * outlines that share a border share no cell. As rounding keeps the order, cuts are kept as
 * columns.
 */
#include "shape/cells.h"

#include "shape/wide.h"

#include <stdlib.h>
#include <string.h>

/* mm: there are no cells beyond, so that columns and rows are whole numbers of an int's size. */
#define CELLS_END 1e8

/* The first column or row whose centre is not before `coordinate`. */
static inline int
first_cell (double coordinate)
{
  return (int) ceil (coordinate / PP_CELL - (PP_TIE / PP_CELL + 0.5));
}

/* A ring, closed, and the first row at or after each of its points. */
typedef struct
{
  guint          n;
  const PpPoint *p;
  int           *rows;
} Ring;

/* Where the sides cut the rows j0 to j1 - 1: those of row j are from first[j - j0] on, up to the
 * next row's. */
typedef struct
{
  int    j0;
  int    j1;
  guint *first;
  guint *next;   /* of each row, where its next cut goes */
  int   *column;
} Cuts;

PP_WIDE static void
find_rows (const PpPoint *p,
           guint          n,
           int           *rows)
{
  for (guint i = 0; i < n; i++)
    rows[i] = first_cell (p[i].y);
}

/* Where more cuts begin or end, until they are counted: a side is cut from its upper end on, down
 * to its lower one. Most points end one side and begin the next. */
static void
mark_points (Cuts       *self,
             const Ring *ring)
{
  int before = CLAMP (ring->rows[ring->n - 2], self->j0, self->j1);
  int at = CLAMP (ring->rows[0], self->j0, self->j1);

  for (guint i = 1; i < ring->n; i++)
    {
      int after = CLAMP (ring->rows[i], self->j0, self->j1);
      int more = (before > at) - (before < at) + (after > at) - (after < at);

      if (more != 0)
        self->first[at - self->j0] += (guint) more;
      before = at;
      at = after;
    }
}

/* From where sides begin and end to how many cuts there are before each row. */
static void
count_cuts (Cuts *self)
{
  guint rows = (guint) (self->j1 - self->j0), cut = 0, sum = 0;

  for (guint row = 0; row <= rows; row++)
    {
      cut += self->first[row]; /* which may be less than 0, going round */
      self->first[row] = sum;
      self->next[row] = sum;
      sum += cut;
    }
  self->column = g_new (int, self->first[rows] + 1);
}

/* Cuts of the side between two points in the rows `from` to `to` - 1. None is farther left than
 * both, nor right, whatever rounding does to a level side. */
static inline void
cut_side (Cuts   *self,
          PpPoint upper,
          PpPoint lower,
          int     from,
          int     to)
{
  double slope = (lower.x - upper.x) / (lower.y - upper.y);
  double left = MIN (upper.x, lower.x), right = MAX (upper.x, lower.x);
  guint *restrict next = self->next - self->j0;
  int *restrict column = self->column;

  for (int j = from; j < to; j++)
    {
      double x = upper.x + (pp_cell_centre (j) - upper.y) * slope;

      x = MAX (MIN (x, right), left);
      column[next[j]++] = first_cell (x);
    }
}

PP_WIDE static void
cut_sides (Cuts       *cuts,
           const Ring *ring)
{
  Cuts self = *cuts; /* which no store into it can alter */

  for (guint i = 0; i + 1 < ring->n; i++)
    {
      gboolean falls = ring->rows[i] < ring->rows[i + 1];
      guint upper = falls ? i : i + 1, lower = falls ? i + 1 : i;
      int from = MAX (ring->rows[upper], self.j0), to = MIN (ring->rows[lower], self.j1);

      if (from < to)
        cut_side (&self, ring->p[upper], ring->p[lower], from, to);
    }
}

static int
compare_columns (const void *a,
                 const void *b)
{
  const int *p = a, *q = b;

  return *p < *q ? -1 : *p > *q;
}

#define FEW 16

static void
sort_cuts (int  *column,
           guint n)
{
  if (n > FEW)
    qsort (column, n, sizeof *column, compare_columns);
  for (guint i = 1; i < n && n <= FEW; i++)
    {
      int cut = column[i];
      guint k = i;

      for (; k > 0 && column[k - 1] > cut; k--)
        column[k] = column[k - 1];
      column[k] = cut;
    }
}

static void
add_span (PpCells *self,
          int      j,
          int      a,
          int      b)
{
  self->spans[self->n_spans] = (PpSpan) { j, a, b };
  self->n_spans += a < b;
}

/* A row has two cuts, or a few. */
static void
pair_cuts (PpCells *self,
           int      j,
           int     *column,
           guint    n)
{
  if (n == 2)
    {
      add_span (self, j, MIN (column[0], column[1]), MAX (column[0], column[1]));
      return;
    }
  sort_cuts (column, n);
  for (guint k = 0; k + 1 < n; k += 2)
    add_span (self, j, column[k], column[k + 1]);
}

/* Of the rows j0 to j1 - 1. */
static void
add_spans (PpCells    *self,
           const Ring *rings,
           guint       n_rings,
           int         j0,
           int         j1)
{
  guint rows = (guint) (j1 - j0);
  g_autofree guint *counts = g_new0 (guint, 2 * (rows + 1));
  Cuts cuts = { .j0 = j0, .j1 = j1, .first = counts, .next = counts + rows + 1 };

  for (guint r = 0; r < n_rings; r++)
    mark_points (&cuts, &rings[r]);
  count_cuts (&cuts);
  for (guint r = 0; r < n_rings; r++)
    cut_sides (&cuts, &rings[r]);
  for (guint row = 0; row < rows; row++)
    pair_cuts (self, j0 + (int) row, cuts.column + cuts.first[row],
               cuts.first[row + 1] - cuts.first[row]);
  g_free (cuts.column);
}

/* From its spans. */
static void
sum_up (PpCells *self)
{
  PpCellBox box = { G_MAXINT, 0, G_MININT, 0 };
  guint n_cells = 0;

  self->box = (PpCellBox) { 0, 0, 0, 0 };
  self->n_cells = 0;
  if (self->n_spans == 0)
    return;
  for (guint k = 0; k < self->n_spans; k++)
    {
      PpSpan span = self->spans[k];

      n_cells += (guint) (span.i1 - span.i0);
      box.i0 = MIN (box.i0, span.i0);
      box.i1 = MAX (box.i1, span.i1);
    }
  box.j0 = self->spans[0].j;
  box.j1 = self->spans[self->n_spans - 1].j + 1;
  self->n_cells = n_cells;
  self->box = box;
}

/* Room for spans: two cuts make one, none without a cell is kept, and one without may stand behind
 * them. */
static guint64
bound_spans (const Ring *rings,
             guint       n_rings,
             PpBox       box,
             guint64     rows)
{
  guint64 columns = (guint64) (first_cell (box.x1) - first_cell (box.x0)), n_cuts = 0;

  for (guint r = 0; r < n_rings; r++)
    for (guint i = 0; i + 1 < rings[r].n; i++)
      n_cuts += (guint64) ABS (rings[r].rows[i + 1] - rings[r].rows[i]);
  return MIN (n_cuts / 2, rows * columns) + 1;
}

/* (transfer full) */
static Ring *
find_rings (const PpOutline *outline,
            guint            n_rings,
            guint            n_positions)
{
  Ring *rings = g_malloc (n_rings * sizeof (Ring) + n_positions * sizeof (int));
  int *rows = (int *) (gpointer) (rings + n_rings);

  for (guint r = 0; r < n_rings; r++)
    {
      rings[r].p = pp_outline_get_ring (outline, r, &rings[r].n);
      rings[r].rows = rows;
      find_rows (rings[r].p, rings[r].n, rows);
      rows += rings[r].n;
    }
  return rings;
}

static guint
count_positions (const PpOutline *outline)
{
  guint sum = 0, n;

  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      pp_outline_get_ring (outline, r, &n);
      sum += n;
    }
  return sum;
}

/* As many cuts are held at a time. */
#define MOST_CUTS 1000000

static gboolean
is_within_end (PpBox box)
{
  return box.x0 > -CELLS_END && box.x1 < CELLS_END && box.y0 > -CELLS_END && box.y1 < CELLS_END;
}

static PpCells *
cells_alloc (guint64 most)
{
  PpCells *self = g_atomic_rc_box_alloc (sizeof *self + most * sizeof (PpSpan));

  self->n_spans = 0;
  return self;
}

static PpCells *
cells_within (const PpOutline *outline,
              PpBox            box)
{
  int j0 = first_cell (box.y0), j1 = first_cell (box.y1);
  guint n_rings = pp_outline_get_n_rings (outline), n_positions = count_positions (outline);
  int step = 1 + MOST_CUTS / (int) n_positions;
  g_autofree Ring *rings = find_rings (outline, n_rings, n_positions);
  PpCells *self = cells_alloc (bound_spans (rings, n_rings, box, (guint64) (j1 - j0)));

  for (int j = j0; j < j1; j += step)
    add_spans (self, rings, n_rings, j, MIN (j + step, j1));
  return self;
}

PpCells *
pp_cells_new (const PpOutline *outline)
{
  PpBox box = pp_outline_get_box (outline);
  PpCells *self = is_within_end (box) ? cells_within (outline, box) : cells_alloc (0);

  sum_up (self);
  return self;
}

PpCells *
pp_cells_new_disc (PpPoint centre,
                   double  radius)
{
  double reach = radius + PP_TIE;
  int first = first_cell (centre.y - reach), end = first_cell (centre.y + reach) + 1;
  PpCells *self = cells_alloc ((guint64) (end - first + 1));

  for (int j = first; pp_cell_centre (j) <= centre.y + reach; j++)
    {
      double dy = pp_cell_centre (j) - centre.y;
      double half = sqrt (fmax (reach * reach - dy * dy, 0));

      add_span (self, j, (int) ceil ((centre.x - half) / PP_CELL - 0.5),
                (int) floor ((centre.x + half) / PP_CELL - 0.5) + 1);
    }
  sum_up (self);
  return self;
}

PpCells *
pp_cells_ref (PpCells *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
pp_cells_unref (PpCells *self)
{
  if (self != NULL)
    g_atomic_rc_box_release (self);
}

gboolean
pp_cells_contain (const PpCells *self,
                  int            i,
                  int            j)
{
  guint low = 0, high = self->n_spans;

  while (low < high)
    {
      guint middle = (low + high) / 2;
      const PpSpan *span = &self->spans[middle];

      if (j < span->j || (j == span->j && i < span->i0))
        high = middle;
      else if (j > span->j || i >= span->i1)
        low = middle + 1;
      else
        return TRUE;
    }
  return FALSE;
}

guint
pp_cells_find_row (const PpCells *self,
                   int            j)
{
  guint low = 0, high = self->n_spans, guess = (guint) (j - self->box.j0);

  /* Where it is if each row has one. */
  if (j > self->box.j0 && guess < high && self->spans[guess].j == j
      && self->spans[guess - 1].j < j)
    return guess;
  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (self->spans[middle].j < j)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

gboolean
pp_cells_meet (const PpCells *a,
               const PpCells *b)
{
  guint k = pp_cells_find_row (a, b->box.j0), m = pp_cells_find_row (b, a->box.j0);

  while (k < a->n_spans && m < b->n_spans)
    {
      const PpSpan *p = &a->spans[k], *q = &b->spans[m];

      if (p->j < q->j || (p->j == q->j && p->i1 <= q->i0))
        k++;
      else if (q->j < p->j || q->i1 <= p->i0)
        m++;
      else
        return TRUE;
    }
  return FALSE;
}
