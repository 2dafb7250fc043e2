/* tiles-plan.c: the plan of the tiles: how they lie when they are put together.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/tiles-private.h"

#include "sheet/text.h"

#define PLAN_LETTER_SIZE 9.0
#define LEAST_PLAN_TILE 9.0 /* mm on paper that hold a number */

static void
draw_plan_letter (PpBook     *book,
                  const char *letter,
                  PpPoint     at)
{
  const PpTextStyle style = { .size = PLAN_LETTER_SIZE, .bold = TRUE, .ink = PP_INK_ACCENT };
  double width;

  if (*letter == '\0')
    return;
  pp_text_measure (book, &style, letter, PP_NO_WIDTH, &width, NULL);
  cairo_arc (book->cr, at.x, at.y, fmax (2.1, width / 2 + 0.8), 0, 2 * G_PI);
  pp_book_set_ink (book, PP_INK_PAPER);
  cairo_fill (book->cr);
  pp_text_draw_centred (book, &style, letter, at);
}

static void
draw_plan_tile (PpBook *book,
                PpBox   tile,
                guint   number)
{
  const PpTextStyle style = { .size = 12, .bold = TRUE, .ink = PP_INK_ACCENT };
  g_autofree char *text = g_strdup_printf ("%u", number);

  pp_book_set_ink (book, PP_INK_ACCENT);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  cairo_rectangle (book->cr, tile.x0, tile.y0, pp_box_width (tile), pp_box_height (tile));
  cairo_stroke (book->cr);
  if (fmin (pp_box_width (tile), pp_box_height (tile)) >= LEAST_PLAN_TILE)
    pp_text_draw_centred (book, &style, text, (PpPoint) { tile.x0 + 4.2, tile.y0 + 3.6 });
}

static void
draw_plan_letters (const PpTiles *self,
                   PpBook        *book,
                   PpBox          tile,
                   guint          column,
                   guint          row)
{
  g_autofree char *right = pp_tiles_letter_new (self, (int) column, (int) row, TRUE);
  g_autofree char *foot = pp_tiles_letter_new (self, (int) column, (int) row, FALSE);

  if (fmin (pp_box_width (tile), pp_box_height (tile)) < 2 * LEAST_PLAN_TILE)
    return;
  draw_plan_letter (book, right, (PpPoint) { tile.x1, pp_box_middle (tile).y });
  draw_plan_letter (book, foot, (PpPoint) { pp_box_middle (tile).x, tile.y1 });
}

/* As they lie when they are put together: each cut at left and top. */
static PpBox
get_plan_tile (const PpTiles *self,
               PpBox          place,
               guint          column,
               guint          row)
{
  double scale = pp_box_width (place) / pp_tiles_get_span (self->n_across, self->width);
  double across = (self->width - PP_TILE_OVERLAP) * scale;
  double down = (self->height - PP_TILE_OVERLAP) * scale;
  double x = place.x0 + column * across;
  double y = place.y0 + row * down;

  return (PpBox) { x, y, x + (column + 1 < self->n_across ? across : self->width * scale),
                   y + (row + 1 < self->n_down ? down : self->height * scale) };
}

void
pp_tiles_draw_plan (const PpTiles *self,
                    PpBook        *book,
                    PpBox          place)
{
  guint n = self->n_across * self->n_down;

  for (guint i = 0; i < n; i++)
    if (self->numbers[i] != 0)
      draw_plan_tile (book, get_plan_tile (self, place, i % self->n_across, i / self->n_across),
                      self->numbers[i]);
  for (guint i = 0; i < n; i++)
    if (self->numbers[i] != 0)
      draw_plan_letters (self, book,
                         get_plan_tile (self, place, i % self->n_across, i / self->n_across),
                         i % self->n_across, i / self->n_across);
}
