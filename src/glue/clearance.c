/* clearance.c: the room between one settled piece and another above it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of both pieces' cells are merged span by span; the heights are asked only where they meet.
 */
#include "glue/clearance.h"

typedef struct
{
  const PpCheck *check;
  guint          lower;
  guint          upper;
  double         enough;
  double         least;
} Clearance;

static gboolean
is_in_own_pocket (const PpScene *scene,
                  guint          placement,
                  int            i,
                  int            j)
{
  const int part = scene->pockets[placement];

  return part != PP_NO_INDEX && pp_cells_contain (scene->parts[part].cells, i, j);
}

static void
look_at_cell (Clearance *self,
              int        i,
              int        j)
{
  const PpScene *scene = self->check->scene;
  const PpPoint p = { pp_cell_centre (i), pp_cell_centre (j) };

  if (is_in_own_pocket (scene, self->lower, i, j) || is_in_own_pocket (scene, self->upper, i, j))
    return;

  const double underside = pp_rest_underside_at (self->check->rests[self->upper],
                                                 scene->bodies[self->upper], p);
  const double top = pp_rest_top_at (self->check->rests[self->lower],
                                     scene->bodies[self->lower], p);

  self->least = fmin (self->least, underside - top);
}

static void
look_at_common (Clearance    *self,
                const PpSpan *a,
                const PpSpan *b)
{
  const int end = MIN (a->i1, b->i1);

  for (int i = MAX (a->i0, b->i0); i < end && self->least >= self->enough; i++)
    look_at_cell (self, i, a->j);
}

/* Whether span `a` ends before span `b` does, in the order of a page. */
static gboolean
ends_first (const PpSpan *a,
            const PpSpan *b)
{
  return a->j != b->j ? a->j < b->j : a->i1 < b->i1;
}

double
pp_clearance_between (const PpCheck *check,
                      guint          lower,
                      guint          upper,
                      double         enough)
{
  Clearance self = { check, lower, upper, enough, INFINITY };
  const PpCells *a = check->scene->bodies[lower]->cells;
  const PpCells *b = check->scene->bodies[upper]->cells;
  guint at_a = 0;
  guint at_b = 0;

  g_return_val_if_fail (check->rests[lower]->state != PP_STATE_FLOATS, (double) INFINITY);
  g_return_val_if_fail (check->rests[upper]->state != PP_STATE_FLOATS, (double) INFINITY);

  while (at_a < a->n_spans && at_b < b->n_spans && self.least >= enough)
    {
      if (a->spans[at_a].j == b->spans[at_b].j)
        look_at_common (&self, &a->spans[at_a], &b->spans[at_b]);
      if (ends_first (&a->spans[at_a], &b->spans[at_b]))
        at_a++;
      else
        at_b++;
    }

  return self.least;
}
