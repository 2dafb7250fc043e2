/* under.c: what lies under some cells at the moment a placement is laid.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A piece lies over all that was there when it was laid, for no cell of it is lower than that. So
 * a cell's top is that of the last placement that has it: from the last one down each takes its
 * cells out of those that are open still, and the ground has the rest.
 */
#include "check/under.h"

/* Cells beside each other that are open still. */
typedef struct
{
  PpSpan span;
  guint  cell; /* number of the first among those asked for */
} Open;

typedef struct
{
  const PpScene *scene;
  PpRest       **rests;
  PpCellBox      box;    /* of the cells asked for */
  double        *height;
  PpOwner       *owner;
  GArray        *open;   /* Open, row by row, in each from the left */
  Open          *left;   /* those that the placement in hand leaves */
  guint          n_left;
  guint          room;   /* there is for so many */
} Under;

/* A placement, and its span in hand. */
typedef struct
{
  guint          index;
  const PpBody  *body;
  const PpCells *pocket; /* of the fused part in which it stands; nullable */
  guint          k;
  guint          cell;   /* the body's own number of the span's first */
} Top;

static void
leave (Under      *self,
       const Open *open,
       int         i0,
       int         i1)
{
  Open left = { { open->span.j, i0, i1 }, open->cell + (guint) (i0 - open->span.i0) };

  self->left[self->n_left] = left;
  self->n_left += i0 < i1;
}

/* The top of the placement on cells i0 to i1 - 1 of what is open, `cell` being its own number of
 * the first. */
static void
cover (Under      *self,
       const Open *open,
       const Top  *top,
       int         i0,
       int         i1,
       guint       cell)
{
  guint at = open->cell + (guint) (i0 - open->span.i0);

  pp_rest_lay_top (self->rests[top->index], top->body, (PpSpan) { open->span.j, i0, i1 }, cell,
                   self->height + at);
  for (int i = 0; i < i1 - i0; i++)
    self->owner[at + (guint) i] = PP_OWNER (PP_OWNER_PLACEMENT, top->index);
}

/* Likewise, but for what is in its pocket: there it stands lower, and nothing lies on it. */
static void
cover_beside_pocket (Under      *self,
                     const Open *open,
                     const Top  *top,
                     int         i0,
                     int         i1,
                     guint       cell)
{
  for (int i = i0; i < i1; i++, cell++)
    if (pp_cells_contain (top->pocket, i, open->span.j))
      leave (self, open, i, i + 1);
    else
      cover (self, open, top, i, i + 1, cell);
}

static guint
count_cells (const PpSpan *span)
{
  return (guint) (span->i1 - span->i0);
}

/* Covers what the placement has of it. */
static void
cut_open (Under      *self,
          const Open *open,
          Top        *top)
{
  const PpCells *cells = top->body->cells;
  const PpSpan *span = &open->span;
  int at = span->i0;
  guint cell;

  while (top->k < cells->n_spans
         && (cells->spans[top->k].j < span->j
             || (cells->spans[top->k].j == span->j && cells->spans[top->k].i1 <= span->i0)))
    top->cell += count_cells (&cells->spans[top->k++]);
  cell = top->cell;
  for (guint k = top->k; k < cells->n_spans && cells->spans[k].j == span->j
                         && cells->spans[k].i0 < span->i1; k++)
    {
      const PpSpan *own = &cells->spans[k];
      int i0 = MAX (own->i0, span->i0), i1 = MIN (own->i1, span->i1);

      leave (self, open, at, i0);
      (top->pocket == NULL ? cover : cover_beside_pocket) (self, open, top, i0, i1,
                                                           cell + (guint) (i0 - own->i0));
      at = i1;
      cell += count_cells (own);
    }
  leave (self, open, at, span->i1);
}

/* The first that is open in row `j` or a later one. */
static guint
find_row (const Under *self,
          int          j)
{
  guint low = 0, high = self->open->len;

  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (g_array_index (self->open, Open, middle).span.j < j)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* For what a placement leaves of `n` that are open: what lies before each of its spans in each of
 * them, what lies behind, and each cell in its pocket. One that is empty may stand behind the
 * last. */
static void
make_room (Under        *self,
           guint         n,
           const PpBody *body,
           gboolean      has_pocket)
{
  guint room = 2 * n + body->cells->n_spans + (has_pocket ? body->cells->n_cells : 0) + 1;

  if (self->room >= room)
    return;
  self->room = room;
  self->left = g_renew (Open, self->left, room);
}

/* Only the rows that the placement has are gone through. */
static void
take_cells (Under *self,
            guint  index)
{
  const PpBody *body = self->scene->bodies[index];
  int pocket = self->scene->pockets[index];
  guint first = find_row (self, body->cells->box.j0), end = find_row (self, body->cells->box.j1);
  Top top = { index, body, pocket == PP_NO_INDEX ? NULL : self->scene->parts[pocket].cells, 0, 0 };

  if (first == end)
    return;
  self->n_left = 0;
  make_room (self, end - first, body, top.pocket != NULL);
  for (guint i = first; i < end; i++)
    cut_open (self, &g_array_index (self->open, Open, i), &top);
  g_array_remove_range (self->open, first, end - first);
  g_array_insert_vals (self->open, first, self->left, self->n_left);
}

static void
under_init (Under   *self,
            PpStrips cells)
{
  guint cell = 0;

  self->box = (PpCellBox) { G_MAXINT, cells.spans[0].j, G_MININT,
                            cells.spans[cells.n_spans - 1].j + 1 };
  self->open = g_array_sized_new (FALSE, FALSE, sizeof (Open), 2 * cells.n_spans);
  g_array_set_size (self->open, cells.n_spans);
  for (guint k = 0; k < cells.n_spans; k++)
    {
      PpSpan span = cells.spans[k];

      g_array_index (self->open, Open, k) = (Open) { span, cell };
      self->box.i0 = MIN (self->box.i0, span.i0);
      self->box.i1 = MAX (self->box.i1, span.i1);
      cell += count_cells (&span);
    }
}

void
pp_under_find (const PpScene *scene,
               PpRest       **rests,
               guint          index,
               PpStrips       cells,
               double        *height,
               PpOwner       *owner)
{
  Under self = { .scene = scene, .rests = rests, .height = height, .owner = owner };

  if (cells.n_spans == 0)
    return;
  under_init (&self, cells);
  for (guint i = index; i-- > 0 && self.open->len > 0;)
    if (pp_cell_boxes_meet (scene->reaches[i], self.box) && rests[i]->state != PP_STATE_FLOATS)
      take_cells (&self, i);
  for (guint i = 0; i < self.open->len; i++)
    {
      const Open *open = &g_array_index (self.open, Open, i);

      pp_ground_lay (scene, open->span, height + open->cell, owner + open->cell);
    }
  g_array_unref (self.open);
  g_free (self.left);
}

PpBed *
pp_under_make_bed (const PpScene *scene,
                   PpRest       **rests,
                   guint          index,
                   PpRoom        *room)
{
  const PpCells *cells = scene->bodies[index]->cells;
  double *below = pp_room_take (room, cells->n_cells * sizeof *below);
  PpOwner *owner = pp_room_take (room, cells->n_cells * sizeof *owner);

  pp_under_find (scene, rests, index, (PpStrips) { cells->spans, cells->n_spans }, below, owner);
  return pp_bed_new (scene, index, below, owner, room);
}
