/* table-draw.c: a fitted table on the page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/signs.h"
#include "sheet/table-private.h"

#define TICK_DROP 0.6 /* mm, of a box below the baseline */

static void
draw_tick (PpBook *book,
           double  x,
           double  y)
{
  cairo_rectangle (book->cr, x, y, PP_TABLE_TICK, PP_TABLE_TICK);
  pp_book_set_ink (book, PP_INK_TEXT);
  cairo_set_line_width (book->cr, PP_LINE_MIDDLE);
  cairo_stroke (book->cr);
}

static void
draw_mark (PpBook     *book,
           const char *level,
           double      x,
           double      y)
{
  for (int i = PP_LEVEL_FAULT; i <= PP_LEVEL_NOTE; i++)
    if (g_str_equal (level, pp_level_get_name (i)))
      pp_signs_draw_mark (book, i, (PpPoint) { x + PP_TABLE_TICK / 2, y + PP_TABLE_TICK / 2 }, 4);
}

static void
draw_cell (PpTable      *self,
           const PpTableColumn *column,
           const char   *text,
           double        x,
           double        top,
           double        baseline)
{
  PpTextStyle style = pp_table_get_style (self, column);
  g_autoptr (PangoLayout) layout = NULL;

  switch (column->kind)
    {
    case PP_CELL_TICK:
      draw_tick (self->book, x, top);
      break;
    case PP_CELL_MARK:
      draw_mark (self->book, text, x, top);
      break;
    case PP_CELL_TEXT:
    case PP_CELL_NUMBER:
      layout = pp_text_layout (self->book, &style, text, pp_column_get_wrap_width (column));
      pp_text_draw (self->book, &style, text,
                    (PpPoint) { x, baseline - pango_layout_get_baseline (layout)
                                              / (double) PANGO_SCALE },
                    pp_column_get_wrap_width (column));
      break;
    }
}

static void
draw_line (PpTable *self,
           double   x,
           double   y,
           PpInk    ink,
           double   width)
{
  pp_book_set_ink (self->book, ink);
  cairo_set_line_width (self->book->cr, width);
  cairo_move_to (self->book->cr, x, y);
  cairo_line_to (self->book->cr, x + self->width, y);
  cairo_stroke (self->book->cr);
}

static void
draw_row (PpTable *self,
          guint    row,
          PpPoint  at)
{
  double above, below, top, baseline;

  pp_table_measure_row (self, row, &above, &below);
  baseline = at.y + PP_TABLE_PADDING + above;
  top = at.y + PP_TABLE_PADDING + fmax (0, above - PP_TABLE_TICK + TICK_DROP);
  for (guint i = 0; i < self->n_columns; i++)
    {
      if (!self->columns[i].is_used)
        continue;
      draw_cell (self, &self->columns[i], pp_table_get_cell (self, row, i), at.x, top, baseline);
      at.x += self->columns[i].width + self->space;
    }
}

static void
say_row (PpTable *self,
         guint    row)
{
  const char *words = g_ptr_array_index (self->words, row);
  g_autoptr (GString) line = g_string_new (NULL);

  for (guint i = 0; words == NULL && i < self->n_columns; i++)
    {
      const char *cell = pp_table_get_cell (self, row, i);

      if (*cell != '\0')
        g_string_append_printf (line, "%s%s", line->len > 0 ? ", " : "", cell);
    }
  pp_book_say (self->book, words != NULL ? words : g_strdelimit (line->str, "\n", ' '));
}

static void
draw_heading (PpTable *self,
              PpPoint  at)
{
  for (guint i = 0; i < self->n_columns; i++)
    {
      const PpTableColumn *column = &self->columns[i];
      PpTextStyle style = pp_table_get_heading_style (column);
      double height;

      if (!column->is_used)
        continue;
      pp_text_measure (self->book, &style, column->heading, pp_column_get_wrap_width (column), NULL,
                       &height);
      if (*column->heading != '\0')
        pp_text_draw (self->book, &style, column->heading,
                      (PpPoint) { at.x, at.y + self->heading_height - PP_TABLE_PADDING - height },
                      pp_column_get_wrap_width (column));
      at.x += column->width + self->space;
    }
}

double
pp_table_draw (PpTable *self,
               PpPoint  at,
               guint    first,
               guint    end)
{
  double x = at.x;

  draw_heading (self, at);
  at.y += self->heading_height;
  if (self->heading_height > 0)
    draw_line (self, x, at.y, PP_INK_TEXT, PP_LINE_MIDDLE);
  for (guint row = first; row < end; row++)
    {
      draw_row (self, row, at);
      say_row (self, row);
      at.y += g_array_index (self->heights, double, row);
      if (row + 1 < end)
        draw_line (self, x, at.y, PP_INK_RULE, PP_LINE_THIN);
    }
  return at.y;
}
