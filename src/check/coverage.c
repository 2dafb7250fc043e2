/* coverage.c: how much of the glass the pieces cover.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row of cells after another: the spans of all pieces in it, sorted, are run together and cut
 * with those of the background.
 */
#include "check/coverage.h"

static int
compare_spans (gconstpointer a,
               gconstpointer b)
{
  const PpSpan *p = a, *q = b;

  if (p->j != q->j)
    return p->j < q->j ? -1 : 1;
  return p->i0 < q->i0 ? -1 : p->i0 > q->i0;
}

/* The spans of all bodies, row by row, those that meet or overlap as one. (transfer full) */
static GArray *
join_spans (const PpScene *scene)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (PpSpan));
  GArray *joined = g_array_new (FALSE, FALSE, sizeof (PpSpan));

  for (guint i = 0; i < scene->n_bodies; i++)
    g_array_append_vals (all, scene->bodies[i]->cells->spans, scene->bodies[i]->cells->n_spans);
  g_array_sort (all, compare_spans);
  for (guint i = 0; i < all->len; i++)
    {
      const PpSpan *span = &g_array_index (all, PpSpan, i);
      PpSpan *last = joined->len > 0 ? &g_array_index (joined, PpSpan, joined->len - 1) : NULL;

      if (last != NULL && last->j == span->j && span->i0 <= last->i1)
        last->i1 = MAX (last->i1, span->i1);
      else
        g_array_append_val (joined, *span);
    }
  return joined;
}

double
pp_coverage_of_glass (const PpScene *scene)
{
  g_autoptr (GArray) covered = NULL;
  const PpCells *glass;
  guint64 n = 0;
  guint k = 0;

  g_return_val_if_fail (scene != NULL, 0);

  glass = scene->background_cells;
  covered = join_spans (scene);
  for (guint i = 0; i < covered->len; i++)
    {
      const PpSpan *span = &g_array_index (covered, PpSpan, i);

      while (k < glass->n_spans
             && (glass->spans[k].j < span->j
                 || (glass->spans[k].j == span->j && glass->spans[k].i1 <= span->i0)))
        k++;
      for (guint m = k; m < glass->n_spans && glass->spans[m].j == span->j
                        && glass->spans[m].i0 < span->i1; m++)
        n += (guint64) (MIN (span->i1, glass->spans[m].i1) - MAX (span->i0, glass->spans[m].i0));
    }
  return glass->n_cells > 0 ? (double) n / glass->n_cells : 0;
}
