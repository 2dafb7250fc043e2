/* table.c: the cells of a table and the widths and heights they need.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/table-private.h"

#define HEADING_SIZE 9.5
#define SPACE 3.5      /* mm, least between columns */
#define MOST_SPACE 12.0
#define SPREAD 4           /* fewer columns stay together at the left */
#define HEADING_LINES 2 /* a heading may break into */
#define HEADING_STEP 0.5 /* mm */
#define SHORT 24.0       /* mm; a text no longer is not broken, also where others are */
#define LEAST_COLUMN 10.0 /* mm */

PpTable *
pp_table_new (PpBook         *book,
              const PpColumn *columns,
              guint           n_columns)
{
  PpTable *self = g_new0 (PpTable, 1);

  g_assert (n_columns <= PP_TABLE_MAX_COLUMNS);
  self->book = book;
  self->n_columns = n_columns;
  for (guint i = 0; i < n_columns; i++)
    self->columns[i] = (PpTableColumn) { .heading = g_strdup (columns[i].heading),
                                         .kind = columns[i].kind,
                                         .align = columns[i].align,
                                         .wraps = columns[i].wraps };
  self->cells = g_ptr_array_new_with_free_func (g_free);
  self->words = g_ptr_array_new_with_free_func (g_free);
  self->heights = g_array_new (FALSE, FALSE, sizeof (double));
  return self;
}

void
pp_table_free (PpTable *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->n_columns; i++)
    g_free (self->columns[i].heading);
  g_ptr_array_unref (self->cells);
  g_ptr_array_unref (self->words);
  g_array_unref (self->heights);
  g_free (self);
}

void
pp_table_add (PpTable     *self,
              const char **cells,
              const char  *words)
{
  for (guint i = 0; i < self->n_columns; i++)
    g_ptr_array_add (self->cells, g_strdup (cells[i]));
  g_ptr_array_add (self->words, g_strdup (words));
}

guint
pp_table_get_n_rows (const PpTable *self)
{
  return self->cells->len / self->n_columns;
}

const char *
pp_table_get_cell (const PpTable *self,
                   guint          row,
                   guint          column)
{
  return g_ptr_array_index (self->cells, row * self->n_columns + column);
}

PpTextStyle
pp_table_get_style (const PpTable       *self,
                    const PpTableColumn *column)
{
  if (column->kind == PP_CELL_NUMBER)
    return (PpTextStyle) { .size = self->number_size, .bold = TRUE, .align = column->align };
  return (PpTextStyle) { .size = self->size, .align = column->align };
}

PpTextStyle
pp_table_get_heading_style (const PpTableColumn *column)
{
  return (PpTextStyle) { .size = HEADING_SIZE, .ink = PP_INK_SOFT, .align = column->align };
}

/* The widest word of a text, mm. */
static double
measure_word (PpBook            *book,
              const PpTextStyle *style,
              const char        *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n", -1);
  double widest = 0;

  for (char **word = words; *word != NULL; word++)
    {
      double width;

      pp_text_measure (book, style, *word, PP_NO_WIDTH, &width, NULL);
      widest = fmax (widest, width);
    }
  return widest;
}

static void
measure_cell (PpTable       *self,
              PpTableColumn *column,
              const char    *text)
{
  PpTextStyle style = pp_table_get_style (self, column);
  double width = PP_TABLE_TICK;

  if (column->kind == PP_CELL_TEXT || column->kind == PP_CELL_NUMBER)
    pp_text_measure (self->book, &style, text, PP_NO_WIDTH, &width, NULL);
  column->is_used = column->is_used || *text != '\0';
  column->natural = fmax (column->natural, width);
  column->least = fmax (column->least, column->wraps && width > SHORT
                                       ? measure_word (self->book, &style, text) : width);
}

/* The least width at which a heading takes no more lines than it may. */
static double
measure_heading (PpBook              *book,
                 const PpTableColumn *column)
{
  PpTextStyle style = pp_table_get_heading_style (column);
  double width = measure_word (book, &style, column->heading);

  for (;;)
    {
      g_autoptr (PangoLayout) layout = pp_text_layout (book, &style, column->heading,
                                                       width + PP_TABLE_SLACK);

      if (pango_layout_get_line_count (layout) <= HEADING_LINES)
        return width;
      width += HEADING_STEP;
    }
}

static void
measure_column (PpTable *self,
                guint    index)
{
  PpTableColumn *column = &self->columns[index];
  guint n_rows = pp_table_get_n_rows (self);

  column->is_used = column->kind == PP_CELL_TICK;
  column->least = column->natural = measure_heading (self->book, column);
  for (guint row = 0; row < n_rows; row++)
    measure_cell (self, column, pp_table_get_cell (self, row, index));
}

static guint
count_used (const PpTable *self)
{
  guint n_used = 0;

  for (guint i = 0; i < self->n_columns; i++)
    n_used += self->columns[i].is_used ? 1 : 0;
  return n_used;
}

/* Gives the wrapping columns more or less than their least width; returns what is left. */
static double
stretch (PpTable *self,
         double   spare,
         double   lack)
{
  double share = spare < 0 || lack <= 0 ? 0 : fmin (1, spare / lack);

  for (guint i = 0; i < self->n_columns; i++)
    {
      PpTableColumn *column = &self->columns[i];

      if (!column->is_used || !column->wraps)
        continue;
      if (spare < 0)
        column->width = fmax (LEAST_COLUMN, column->width + spare);
      else
        column->width += share * (column->natural - column->least);
    }
  return fmax (0, spare - share * lack);
}

/* Each takes what it must; what is left goes to the wrapping ones, then between all. */
static gboolean
share_width (PpTable *self,
             double   width)
{
  guint n_used = count_used (self);
  double spare = width - (n_used - 1) * SPACE;
  double lack = 0;
  double left;

  for (guint i = 0; i < self->n_columns; i++)
    if (self->columns[i].is_used)
      {
        self->columns[i].width = self->columns[i].least;
        spare -= self->columns[i].least;
        lack += self->columns[i].wraps ? self->columns[i].natural - self->columns[i].least : 0;
      }
  left = stretch (self, spare, lack);
  self->space = n_used < SPREAD ? SPACE : fmin (MOST_SPACE, SPACE + left / (n_used - 1));
  return spare >= 0;
}

/* A column that has its natural width may still be a hair too narrow for its own text. */
double
pp_column_get_wrap_width (const PpTableColumn *column)
{
  return column->width + PP_TABLE_SLACK;
}

void
pp_table_measure_row (PpTable *self,
                      guint    row,
                      double  *above,
                      double  *below)
{
  *above = *below = 0;
  for (guint i = 0; i < self->n_columns; i++)
    {
      const PpTableColumn *column = &self->columns[i];
      PpTextStyle style = pp_table_get_style (self, column);
      g_autoptr (PangoLayout) layout = NULL;
      double baseline;
      int height;

      if (!column->is_used || column->kind == PP_CELL_TICK || column->kind == PP_CELL_MARK)
        continue;
      layout = pp_text_layout (self->book, &style, pp_table_get_cell (self, row, i),
                               pp_column_get_wrap_width (column));
      baseline = pango_layout_get_baseline (layout) / (double) PANGO_SCALE;
      pango_layout_get_size (layout, NULL, &height);
      *above = fmax (*above, baseline);
      *below = fmax (*below, height / (double) PANGO_SCALE - baseline);
    }
}

static void
measure_heights (PpTable *self)
{
  self->heading_height = 0;
  for (guint i = 0; i < self->n_columns; i++)
    {
      PpTextStyle style = pp_table_get_heading_style (&self->columns[i]);
      double height;

      if (!self->columns[i].is_used || *self->columns[i].heading == '\0')
        continue;
      pp_text_measure (self->book, &style, self->columns[i].heading,
                       pp_column_get_wrap_width (&self->columns[i]), NULL, &height);
      self->heading_height = fmax (self->heading_height, height + PP_TABLE_PADDING);
    }
  g_array_set_size (self->heights, 0);
  for (guint row = 0; row < pp_table_get_n_rows (self); row++)
    {
      double above, below, height;

      pp_table_measure_row (self, row, &above, &below);
      height = fmax (above + below, PP_TABLE_TICK) + 2 * PP_TABLE_PADDING;
      g_array_append_val (self->heights, height);
    }
}

gboolean
pp_table_fit (PpTable *self,
              double   width,
              double   size,
              double   number_size)
{
  gboolean fits;

  self->width = width;
  self->size = size;
  self->number_size = number_size;
  for (guint i = 0; i < self->n_columns; i++)
    measure_column (self, i);
  fits = share_width (self, width);
  measure_heights (self);
  return fits;
}

double
pp_table_get_height (const PpTable *self,
                     guint          first,
                     guint          end)
{
  double height = self->heading_height;

  for (guint row = first; row < end; row++)
    height += g_array_index (self->heights, double, row);
  return height;
}

guint
pp_table_get_most_lines (const PpTable *self)
{
  double tallest = 0;

  for (guint row = 0; row < self->heights->len; row++)
    tallest = fmax (tallest, g_array_index (self->heights, double, row));
  return (guint) ((tallest - 2 * PP_TABLE_PADDING) / pp_text_line_height (self->size) + 0.2);
}

guint
pp_table_count_fit (const PpTable *self,
                    guint          first,
                    double         height)
{
  guint end = first;

  while (end < self->heights->len && pp_table_get_height (self, first, end + 1) <= height)
    end++;
  return end - first;
}
