/* cells.h: outlines on the anchored grid.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cells are squares of PP_CELL mm; cell (i, j), column i and row j, has its centre at
 * ((i + ½)·PP_CELL, (j + ½)·PP_CELL) in the panel frame, i and j of either sign. It belongs to
 * an outline if its centre is inside by the even-odd rule; a centre on the border (within PP_TIE)
 * counts on left and upper sides only.
 */
#pragma once

#include "panel/outline.h"
#include "panel/tolerance.h"

G_BEGIN_DECLS

/* Cells i0 to i1 - 1 of row j. */
typedef struct
{
  int j;
  int i0;
  int i1;
} PpSpan;

/* A range of cells: columns i0 to i1 - 1, rows j0 to j1 - 1. */
typedef struct
{
  int i0;
  int j0;
  int i1;
  int j1;
} PpCellBox;

/* An outline's cells, row by row from the top, in each row from the left. Immutable, counted. */
typedef struct
{
  guint     n_spans;
  guint     n_cells;
  PpCellBox box; /* all 0 without cells */
  PpSpan    spans[];
} PpCells;

static inline gboolean
pp_cell_boxes_meet (PpCellBox a,
                    PpCellBox b)
{
  return a.i0 < b.i1 && b.i0 < a.i1 && a.j0 < b.j1 && b.j0 < a.j1;
}

static inline double
pp_cell_centre (int index)
{
  return (index + 0.5) * PP_CELL;
}

/* The cell in whose square the coordinate lies; a border, within PP_TIE, belongs to the cell beyond
 * it. */
static inline int
pp_cell_at (double coordinate)
{
  return (int) floor ((coordinate + PP_TIE) / PP_CELL);
}

/* Without cells where the outline reaches farther than 1e8 mm from the origin. (transfer full) */
PpCells  *pp_cells_new      (const PpOutline *outline);
/* Cells whose centre lies within `radius` of `centre`, those on the rim (PP_TIE) included. */
PpCells  *pp_cells_new_disc (PpPoint          centre,
                             double           radius);
PpCells  *pp_cells_ref      (PpCells         *self);
void      pp_cells_unref    (PpCells         *self);
gboolean  pp_cells_contain  (const PpCells   *self,
                             int              i,
                             int              j);

/* The first span of row `j` or a later one; n_spans without any. */
guint     pp_cells_find_row (const PpCells   *self,
                             int              j);

/* Whether they have a cell in common. */
gboolean  pp_cells_meet     (const PpCells   *a,
                             const PpCells   *b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpCells, pp_cells_unref)

G_END_DECLS
