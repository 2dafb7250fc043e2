/* flow.c: things one under another, on as many pages as they need.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/flow.h"

#define FACT_WIDTH 46.0 /* mm, about */
#define TICK 4.6
#define TWO_COLUMNS 150.0 /* mm of width that hold two lists side by side */
#define COLUMN_SPACE 14.0

/* Rows for one column: as many as fit, or an even share of those left if all go on this page. */
static guint
count_rows (const PpTable *table,
            guint          first,
            double         height,
            guint          columns_left)
{
  guint left = pp_table_get_n_rows (table) - first;
  guint fit = pp_table_count_fit (table, first, height);
  guint share = (left + columns_left - 1) / columns_left;

  return share <= fit ? share : fit;
}

static gboolean
is_top (PpBook *book,
        double  y)
{
  return y <= book->area.y0 + PP_TIE;
}

double
pp_flow_table (PpBook  *book,
               PpTable *table,
               double   y,
               guint    n_columns,
               double   space)
{
  double step = (pp_box_width (book->area) + space) / n_columns;
  guint n_rows = pp_table_get_n_rows (table);
  guint first = 0;
  double below = y;

  while (first < n_rows)
    {
      for (guint c = 0; c < n_columns && first < n_rows; c++)
        {
          guint count = count_rows (table, first, book->area.y1 - y, n_columns - c);

          /* A row taller than a page is drawn all the same: better cut than left out. */
          if (count == 0 && c == 0 && is_top (book, y))
            count = 1;
          if (count == 0)
            break;
          below = fmax (below, pp_table_draw (table, (PpPoint) { book->area.x0 + c * step, y },
                                              first, first + count));
          first += count;
        }
      if (first < n_rows)
        {
          pp_book_begin_page (book, NULL);
          below = y = book->area.y0;
        }
    }
  return below;
}

double
pp_flow_two_columns (PpBook  *book,
                     PpTable *table,
                     double   size,
                     double   y)
{
  double width = pp_box_width (book->area);
  guint n = width >= TWO_COLUMNS ? 2 : 1;

  pp_table_fit (table, (width - (n - 1) * COLUMN_SPACE) / n, size, size);
  return pp_flow_table (book, table, y, n, COLUMN_SPACE);
}

double
pp_flow_heading (PpBook     *book,
                 const char *text,
                 double      y,
                 double      keep)
{
  const PpTextStyle style = { .size = 13, .bold = TRUE };

  if (!is_top (book, y) && y + keep > book->area.y1)
    {
      pp_book_begin_page (book, NULL);
      y = book->area.y0;
    }
  return y + pp_text_tell (book, &style, text, (PpPoint) { book->area.x0, y },
                           pp_box_width (book->area)) + 1;
}

double
pp_flow_ticks (PpBook             *book,
               const char * const *lines,
               double              size,
               double              y)
{
  const PpTextStyle style = { .size = size };

  for (guint i = 0; lines[i] != NULL; i++)
    {
      double height;
      double width = pp_box_width (book->area) - TICK - 4;

      pp_text_measure (book, &style, lines[i], width, NULL, &height);
      if (!is_top (book, y) && y + height > book->area.y1)
        {
          pp_book_begin_page (book, NULL);
          y = book->area.y0;
        }
      pp_book_set_ink (book, PP_INK_TEXT);
      cairo_set_line_width (book->cr, PP_LINE_MIDDLE);
      cairo_rectangle (book->cr, book->area.x0 + 0.2, y + 0.4, TICK, TICK);
      cairo_stroke (book->cr);
      pp_text_tell (book, &style, lines[i], (PpPoint) { book->area.x0 + TICK + 4, y }, width);
      y += fmax (height, TICK) + 2;
    }
  return y;
}

double
pp_flow_notice (PpBook         *book,
                const PpNotice *notice,
                double          y)
{
  double width = pp_box_width (book->area);

  if (!is_top (book, y) && y + pp_notice_height (book, notice, width) > book->area.y1)
    {
      pp_book_begin_page (book, NULL);
      y = book->area.y0;
    }
  return y + pp_notice_draw (book, notice, (PpPoint) { book->area.x0, y }, width);
}

double
pp_flow_facts (PpBook       *book,
               const PpFact *facts,
               guint         n_facts,
               PpPoint       at,
               double        width,
               gboolean      draw)
{
  const PpTextStyle label = { .size = 9.5, .ink = PP_INK_SOFT };
  const PpTextStyle value = { .size = 11, .bold = TRUE, .max_lines = 3 };
  guint n_columns = CLAMP ((guint) (width / FACT_WIDTH), 1, MAX (n_facts, 1));
  double step = width / n_columns;
  double y = at.y;
  double row = 0;

  for (guint i = 0; i < n_facts; i++)
    {
      double x = at.x + i % n_columns * step;
      double label_height, value_height;

      if (i > 0 && i % n_columns == 0)
        {
          y += row + PP_GAP;
          row = 0;
        }
      pp_text_measure (book, &label, facts[i].label, step - 3, NULL, &label_height);
      pp_text_measure (book, &value, facts[i].value, step - 3, NULL, &value_height);
      row = fmax (row, label_height + value_height);
      if (!draw)
        continue;
      pp_text_draw (book, &label, facts[i].label, (PpPoint) { x, y }, step - 3);
      pp_text_draw (book, &value, facts[i].value, (PpPoint) { x, y + label_height }, step - 3);
    }
  return y + row - at.y;
}
