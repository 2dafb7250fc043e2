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
static int
first_cell (double coordinate)
{
  return (int) ceil ((CLAMP (coordinate, -CELLS_END, CELLS_END) - PP_TIE) / PP_CELL - 0.5);
}

typedef struct
{
  int    j;
  double x;
} Cut;

static int
compare_cuts (gconstpointer a,
              gconstpointer b)
{
  const Cut *p = a, *q = b;

  if (p->j != q->j)
    return p->j < q->j ? -1 : 1;
  return p->x < q->x ? -1 : p->x > q->x;
}

static void
cut_edge (GArray *cuts,
          PpPoint a,
          PpPoint b)
{
  PpPoint upper = a.y < b.y ? a : b;
  PpPoint lower = a.y < b.y ? b : a;
  int end = first_cell (lower.y);

  for (int j = first_cell (upper.y); j < end; j++)
    {
      double t = (pp_cell_centre (j) - upper.y) / (lower.y - upper.y);
      Cut cut = { j, upper.x + CLAMP (t, 0, 1) * (lower.x - upper.x) };

      g_array_append_val (cuts, cut);
    }
}

static void
cut_outline (GArray          *cuts,
             const PpOutline *outline)
{
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        cut_edge (cuts, p[i], p[i + 1]);
    }
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

PpCells *
pp_cells_new (const PpOutline *outline)
{
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (Cut));
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (PpSpan));

  cut_outline (cuts, outline);
  if (cuts->len > 0)
    qsort (cuts->data, cuts->len, sizeof (Cut), compare_cuts);
  for (guint k = 0; k + 1 < cuts->len; k += 2)
    {
      const Cut *left = &g_array_index (cuts, Cut, k);
      const Cut *right = &g_array_index (cuts, Cut, k + 1);
      PpSpan span = { left->j, first_cell (left->x), first_cell (right->x) };

      if (span.i0 < span.i1)
        g_array_append_val (spans, span);
    }
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
