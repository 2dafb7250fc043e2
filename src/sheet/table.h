/* table.h: tables with aligned columns, wrapped cells and rows that share a baseline.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/text.h"

G_BEGIN_DECLS

typedef enum
{
  PP_CELL_TEXT,
  PP_CELL_NUMBER, /* large and bold: the number of a step */
  PP_CELL_TICK,   /* an empty box to tick */
  PP_CELL_MARK,   /* mark of a finding: "fault", "caution" or "note" */
} PpCellKind;

typedef struct
{
  const char *heading; /* translated; "" for none */
  PpCellKind  kind;
  PpAlign     align;
  gboolean    wraps;   /* shares the width that the others leave; else as wide as its content */
} PpColumn;

typedef struct _PpTable PpTable;

#define PP_TABLE_MAX_COLUMNS 12

/* `columns` are copied, their headings too. `size` of the cells and of the numbers, pt. */
PpTable *pp_table_new        (PpBook         *book,
                              const PpColumn *columns,
                              guint           n_columns);
void     pp_table_free       (PpTable        *self);
/* One text for each column; several lines are parted by "\n". `words` (nullable) is what the row
 * says to those who cannot see it, on the page on which it is drawn; else its cells in a row. */
void     pp_table_add        (PpTable        *self,
                              const char    **cells,
                              const char     *words);
/* Leaves out each column that no row has anything in, then finds widths and heights for cells of
 * `size` pt. FALSE if some word or figure is wider than its column; it is then broken. */
gboolean pp_table_fit        (PpTable        *self,
                              double          width,
                              double          size,
                              double          number_size);
guint    pp_table_get_n_rows (const PpTable  *self);
/* mm, heading and rows from `first` to before `end`. After pp_table_fit(). */
double   pp_table_get_height (const PpTable  *self,
                              guint           first,
                              guint           end);
/* How many lines the row with the most has, about. */
guint    pp_table_get_most_lines (const PpTable *self);
/* How many rows from `first` on fit in `height` together with the heading. */
guint    pp_table_count_fit  (const PpTable  *self,
                              guint           first,
                              double          height);
/* Returns the y under the last row. */
double   pp_table_draw       (PpTable        *self,
                              PpPoint         at,
                              guint           first,
                              guint           end);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpTable, pp_table_free)

G_END_DECLS
