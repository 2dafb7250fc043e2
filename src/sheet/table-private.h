/* table-private.h: a table as its two halves, fitting and drawing, see it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/table.h"

G_BEGIN_DECLS

#define PP_TABLE_PADDING 1.5 /* mm, above and below a row */
#define PP_TABLE_SLACK 0.05  /* mm; a text as wide as its column must not wrap by rounding */
#define PP_TABLE_TICK 4.6    /* mm, side of a box to tick */

typedef struct
{
  char       *heading;
  PpCellKind  kind;
  PpAlign     align;
  gboolean    wraps;
  gboolean    is_used;
  double      width;   /* mm, without the space to the next */
  double      natural; /* as wide as it would like to be */
  double      least;   /* as its longest word */
} PpTableColumn;

struct _PpTable
{
  PpBook        *book;
  guint          n_columns;
  PpTableColumn  columns[PP_TABLE_MAX_COLUMNS];
  GPtrArray     *cells;       /* row after row */
  GPtrArray     *words;       /* of each row; NULL: its cells */
  double         width;
  double         space;       /* mm, between columns */
  double         size;
  double         number_size;
  double         heading_height;
  GArray        *heights;     /* double, of each row */
};

/* (transfer none) */
const char *pp_table_get_cell          (const PpTable       *self,
                                        guint                row,
                                        guint                column);
PpTextStyle pp_table_get_style         (const PpTable       *self,
                                        const PpTableColumn *column);
PpTextStyle pp_table_get_heading_style (const PpTableColumn *column);
double      pp_column_get_wrap_width   (const PpTableColumn *column);
/* How far the row's text reaches above and below its first baseline, mm. */
void        pp_table_measure_row       (PpTable             *self,
                                        guint                row,
                                        double              *above,
                                        double              *below);

G_END_DECLS
