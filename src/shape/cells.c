/* cells.c: outlines on the anchored grid.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every edge is cut by the rows of centres it spans; each row's cuts, sorted, pair up to spans. A
 * coordinate is rounded to the first centre at or after it, less PP_TIE, in both directions and at
 * both ends of a span alike: so a centre on the border counts on left and upper sides only, and
 * outlines that share a border share no cell.
 */
#include "shape/cells.h"

#include <stdlib.h>

/* mm: there are no cells beyond, so that columns and rows are whole numbers of an int's size. */
#define CELLS_END 1e8

/* The first column or row whose centre is not before `coordinate`. */
static inline int
first_cell (double coordinate)
{
  double place = (CLAMP (coordinate, -CELLS_END, CELLS_END) - PP_TIE) / PP_CELL - 0.5;
  int whole = (int) place; /* toward 0 */

  return whole + (whole < place);
}

/* Where the sides cut the rows j0 to j1 - 1: those of row j are from first[j - j0] on, up to the
 * next row's. */
typedef struct
{
  int     j0;
  int     j1;
  guint  *first;
  double *x;
} Cuts;

/* The rows that a side cuts, of those asked for. */
static inline void
get_rows (const Cuts *cuts,
          PpPoint     a,
          PpPoint     b,
          int        *from,
          int        *to)
{
  *from = MAX (first_cell (MIN (a.y, b.y)), cuts->j0);
  *to = MIN (first_cell (MAX (a.y, b.y)), cuts->j1);
}

static void
count_cuts (Cuts          *cuts,
            const PpPoint *p,
            guint          n)
{
  for (guint i = 0; i + 1 < n; i++)
    {
      int from, to;

      get_rows (cuts, p[i], p[i + 1], &from, &to);
      for (int j = from; j < to; j++)
        cuts->first[j - cuts->j0 + 1]++;
    }
}

/* `next`: of each row, where its next cut goes. */
static void
put_cuts (Cuts          *cuts,
          const PpPoint *p,
          guint          n,
          guint         *next)
{
  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint upper = p[i].y < p[i + 1].y ? p[i] : p[i + 1];
      PpPoint lower = p[i].y < p[i + 1].y ? p[i + 1] : p[i];
      double slope = (lower.x - upper.x) / (lower.y - upper.y);
      int from, to;

      get_rows (cuts, upper, lower, &from, &to);
      for (int j = from; j < to; j++)
        {
          double x = upper.x + (pp_cell_centre (j) - upper.y) * slope;

          x = CLAMP (x, MIN (upper.x, lower.x), MAX (upper.x, lower.x));
          cuts->x[next[j - cuts->j0]++] = x;
        }
    }
}

static int
compare_doubles (const void *a,
                 const void *b)
{
  const double *p = a, *q = b;

  return *p < *q ? -1 : *p > *q;
}

#define FEW 16

/* A row has two cuts, or a few. */
static void
sort_cuts (double *x,
           guint   n)
{
  if (n > FEW)
    qsort (x, n, sizeof *x, compare_doubles);
  for (guint i = 1; i < n && n <= FEW; i++)
    {
      double cut = x[i];
      guint k = i;

      for (; k > 0 && x[k - 1] > cut; k--)
        x[k] = x[k - 1];
      x[k] = cut;
    }
}

static void
cuts_init (Cuts            *self,
           const PpOutline *outline,
           int              j0,
           int              j1)
{
  guint n, rows = (guint) (j1 - j0);
  g_autofree guint *next = NULL;

  self->j0 = j0;
  self->j1 = j1;
  self->first = g_new0 (guint, rows + 1);
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);

      count_cuts (self, p, n);
    }
  for (guint row = 0; row < rows; row++)
    self->first[row + 1] += self->first[row];
  self->x = g_new (double, self->first[rows] + 1);
  next = g_memdup2 (self->first, rows * sizeof *next);
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);

      put_cuts (self, p, n, next);
    }
  for (guint row = 0; row < rows; row++)
    sort_cuts (self->x + self->first[row], self->first[row + 1] - self->first[row]);
}

static void
cuts_clear (Cuts *self)
{
  g_free (self->first);
  g_free (self->x);
}

static PpCells *
cells_from_spans (GArray *spans)
{
  PpCells *self = g_atomic_rc_box_alloc0 (sizeof *self + spans->len * sizeof (PpSpan));

  self->n_spans = spans->len;
  for (guint k = 0; k < spans->len; k++)
    {
      PpSpan span = g_array_index (spans, PpSpan, k);

      self->spans[k] = span;
      self->n_cells += (guint) (span.i1 - span.i0);
      self->box.i0 = k == 0 ? span.i0 : MIN (self->box.i0, span.i0);
      self->box.i1 = k == 0 ? span.i1 : MAX (self->box.i1, span.i1);
      self->box.j0 = k == 0 ? span.j : self->box.j0;
      self->box.j1 = span.j + 1;
    }
  return self;
}

static void
add_spans (GArray          *spans,
           const PpOutline *outline,
           int              j0,
           int              j1)
{
  Cuts cuts;

  cuts_init (&cuts, outline, j0, j1);
  for (int j = j0; j < j1; j++)
    for (guint k = cuts.first[j - j0]; k + 1 < cuts.first[j - j0 + 1]; k += 2)
      {
        PpSpan span = { j, first_cell (cuts.x[k]), first_cell (cuts.x[k + 1]) };

        if (span.i0 < span.i1)
          g_array_append_val (spans, span);
      }
  cuts_clear (&cuts);
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

PpCells *
pp_cells_new (const PpOutline *outline)
{
  PpBox box = pp_outline_get_box (outline);
  int j0 = first_cell (box.y0), j1 = first_cell (box.y1);
  int step = 1 + MOST_CUTS / (int) count_positions (outline);
  g_autoptr (GArray) spans = g_array_sized_new (FALSE, FALSE, sizeof (PpSpan), (guint) (j1 - j0));

  for (int j = j0; j < j1; j += step)
    add_spans (spans, outline, j, MIN (j + step, j1));
  return cells_from_spans (spans);
}

PpCells *
pp_cells_new_disc (PpPoint centre,
                   double  radius)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (PpSpan));
  double reach = radius + PP_TIE;

  for (int j = first_cell (centre.y - reach); pp_cell_centre (j) <= centre.y + reach; j++)
    {
      double dy = pp_cell_centre (j) - centre.y;
      double half = sqrt (fmax (reach * reach - dy * dy, 0));
      PpSpan span = { j,
                      (int) ceil ((centre.x - half) / PP_CELL - 0.5),
                      (int) floor ((centre.x + half) / PP_CELL - 0.5) + 1 };

      if (span.i0 < span.i1)
        g_array_append_val (spans, span);
    }
  return cells_from_spans (spans);
}

PpCells *
pp_cells_ref (PpCells *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
pp_cells_unref (PpCells *self)
{
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

/* The first span of row `j` or a later one. */
static guint
find_row (const PpCells *self,
          int            j)
{
  guint low = 0, high = self->n_spans;

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
  guint k = find_row (a, b->box.j0), m = find_row (b, a->box.j0);

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
