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

#include <stdlib.h>
#include <string.h>

/* mm: there are no cells beyond, so that columns and rows are whole numbers of an int's size. */
#define CELLS_END 1e8

/* Of a coordinate that is not beyond. */
static inline int
first_cell_within (double coordinate)
{
  double place = (coordinate - PP_TIE) / PP_CELL - 0.5;
  int whole = (int) place; /* toward 0 */

  return whole + (whole < place);
}

/* The first column or row whose centre is not before `coordinate`. */
static inline int
first_cell (double coordinate)
{
  return first_cell_within (CLAMP (coordinate, -CELLS_END, CELLS_END));
}

/* A side that cuts the rows `from` to `to` - 1. */
typedef struct
{
  int     from;
  int     to;
  PpPoint upper;
  double  slope; /* mm in x a mm in y */
  double  left;  /* no cut is farther left, nor right, whatever rounding does to a level one */
  double  right;
} Side;

/* Where the sides cut the rows j0 to j1 - 1: those of row j are from first[j - j0] on, up to the
 * next row's. */
typedef struct
{
  int    j0;
  int    j1;
  guint  n_sides;
  Side  *sides;
  guint *first;
  guint *next;   /* of each row, where its next cut goes */
  int   *column;
} Cuts;

static void
add_side (Cuts   *self,
          PpPoint a,
          PpPoint b)
{
  PpPoint upper = a.y < b.y ? a : b, lower = a.y < b.y ? b : a;
  Side *side = &self->sides[self->n_sides];

  side->from = MAX (first_cell (upper.y), self->j0);
  side->to = MIN (first_cell (lower.y), self->j1);
  if (side->from >= side->to)
    return;
  self->n_sides++;
  side->upper = upper;
  side->slope = (lower.x - upper.x) / (lower.y - upper.y);
  side->left = CLAMP (MIN (a.x, b.x), -CELLS_END, CELLS_END);
  side->right = CLAMP (MAX (a.x, b.x), -CELLS_END, CELLS_END);
  self->first[side->from - self->j0]++; /* here they begin and end, until they are counted */
  self->first[side->to - self->j0]--;
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
      sum += cut;
    }
  self->next = g_memdup2 (self->first, (rows + 1) * sizeof *self->next);
  self->column = g_new (int, self->first[rows] + 1);
}

static void
put_cuts (Cuts       *self,
          const Side *side)
{
  for (int j = side->from; j < side->to; j++)
    {
      double x = side->upper.x + (pp_cell_centre (j) - side->upper.y) * side->slope;

      x = MAX (MIN (x, side->right), side->left);
      self->column[self->next[j - self->j0]++] = first_cell_within (x);
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

/* A row has two cuts, or a few. */
static void
sort_cuts (int  *column,
           guint n)
{
  if (n == 2)
    {
      int a = column[0], b = column[1];

      column[0] = MIN (a, b);
      column[1] = MAX (a, b);
      return;
    }
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
cuts_init (Cuts            *self,
           const PpOutline *outline,
           guint            n_positions,
           int              j0,
           int              j1)
{
  *self = (Cuts) { .j0 = j0, .j1 = j1 };
  self->sides = g_new (Side, n_positions);
  self->first = g_new0 (guint, (guint) (j1 - j0) + 1);
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        add_side (self, p[i], p[i + 1]);
    }
  count_cuts (self);
  for (guint i = 0; i < self->n_sides; i++)
    put_cuts (self, &self->sides[i]);
}

static void
cuts_clear (Cuts *self)
{
  g_free (self->sides);
  g_free (self->first);
  g_free (self->next);
  g_free (self->column);
}

static PpCells *
cells_from_spans (GArray *spans)
{
  PpCells *self = g_atomic_rc_box_alloc (sizeof *self + spans->len * sizeof (PpSpan));
  PpCellBox box = { 0, 0, 0, 0 };
  guint n = spans->len, n_cells = 0;

  if (n > 0)
    {
      memcpy (self->spans, spans->data, n * sizeof (PpSpan));
      box = (PpCellBox) { G_MAXINT, self->spans[0].j, G_MININT, self->spans[n - 1].j + 1 };
    }
  for (guint k = 0; k < n; k++)
    {
      PpSpan span = self->spans[k];

      n_cells += (guint) (span.i1 - span.i0);
      box.i0 = MIN (box.i0, span.i0);
      box.i1 = MAX (box.i1, span.i1);
    }
  self->n_spans = n;
  self->n_cells = n_cells;
  self->box = box;
  return self;
}

/* `room` has room for them; gives how many there are. */
static guint
pair_cuts (int    j,
           int   *column,
           guint  n,
           PpSpan *room)
{
  guint n_spans = 0;

  sort_cuts (column, n);
  for (guint k = 0; k + 1 < n; k += 2)
    if (column[k] < column[k + 1])
      room[n_spans++] = (PpSpan) { j, column[k], column[k + 1] };
  return n_spans;
}

static void
add_spans (GArray          *spans,
           const PpOutline *outline,
           guint            n_positions,
           int              j0,
           int              j1)
{
  guint n = spans->len;
  Cuts cuts;

  cuts_init (&cuts, outline, n_positions, j0, j1);
  g_array_set_size (spans, n + cuts.first[j1 - j0] / 2);
  for (int j = j0; j < j1; j++)
    {
      guint first = cuts.first[j - j0];

      n += pair_cuts (j, cuts.column + first, cuts.first[j - j0 + 1] - first,
                      &g_array_index (spans, PpSpan, n));
    }
  g_array_set_size (spans, n);
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
  guint n_positions = count_positions (outline);
  int step = 1 + MOST_CUTS / (int) n_positions;
  g_autoptr (GArray) spans = g_array_sized_new (FALSE, FALSE, sizeof (PpSpan), (guint) (j1 - j0));

  for (int j = j0; j < j1; j += step)
    add_spans (spans, outline, n_positions, j, MIN (j + step, j1));
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
