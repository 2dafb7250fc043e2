/* tiles.c: how many tiles a drawing true to scale takes, where they lie, their numbers and letters.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/tiles-private.h"

#include "panel/tolerance.h"
#include "sheet/bars.h"
#include "sheet/letters.h"

static guint
count_tiles (double length,
             double tile)
{
  double beyond = length - tile;

  return beyond <= PP_TIE ? 1 : 1 + (guint) ceil (beyond / (tile - PP_TILE_OVERLAP) - PP_TIE);
}

double
pp_tiles_get_span (guint  n,
                   double tile)
{
  return n * tile - (n - 1) * PP_TILE_OVERLAP;
}

PpTiles *
pp_tiles_new (const PpFullSize *what,
              double            width,
              double            height)
{
  PpTiles *self = g_new0 (PpTiles, 1);
  PpPoint middle = pp_box_middle (what->box);

  self->what = what;
  self->width = fmax (width, 3 * PP_TILE_OVERLAP);
  self->height = fmax (height, 3 * PP_TILE_OVERLAP);
  self->n_across = count_tiles (pp_box_width (what->box), self->width);
  self->n_down = count_tiles (pp_box_height (what->box), self->height);
  self->origin = (PpPoint) {
    middle.x - pp_tiles_get_span (self->n_across, self->width) / 2,
    middle.y - pp_tiles_get_span (self->n_down, self->height) / 2,
  };
  self->numbers = g_new0 (guint, self->n_across * self->n_down);
  for (guint i = 0; i < self->n_across * self->n_down; i++)
    {
      PpBox window = pp_tiles_get_window (self, i % self->n_across, i / self->n_across);

      if (what->is_blank == NULL || !what->is_blank (window, what->data))
        self->numbers[i] = ++self->n_tiles;
    }
  return self;
}

void
pp_tiles_free (PpTiles *self)
{
  if (self == NULL)
    return;
  g_free (self->numbers);
  g_free (self);
}

PpBox
pp_tiles_get_window (const PpTiles *self,
                     guint          column,
                     guint          row)
{
  double x = self->origin.x + column * (self->width - PP_TILE_OVERLAP);
  double y = self->origin.y + row * (self->height - PP_TILE_OVERLAP);

  return (PpBox) { x, y, x + self->width, y + self->height };
}

PpBox
pp_tiles_get_place (const PpBook *book)
{
  return pp_bars_inner (book->area);
}

/* The tile there, 0 beyond the border too. */
static guint
get_number (const PpTiles *self,
            int            column,
            int            row)
{
  if (column < 0 || row < 0 || column >= (int) self->n_across || row >= (int) self->n_down)
    return 0;
  return self->numbers[row * (int) self->n_across + column];
}

char *
pp_tiles_letter_new (const PpTiles *self,
                     int            column,
                     int            row,
                     gboolean       is_right)
{
  guint index = 0;

  if (get_number (self, column, row) == 0
      || get_number (self, is_right ? column + 1 : column, is_right ? row : row + 1) == 0)
    return g_strdup ("");
  for (int i = 0; i < row * (int) self->n_across + column; i++)
    {
      int c = i % (int) self->n_across;
      int r = i / (int) self->n_across;

      if (self->numbers[i] == 0)
        continue;
      index += get_number (self, c + 1, r) != 0 ? 1 : 0;
      index += get_number (self, c, r + 1) != 0 ? 1 : 0;
    }
  index += !is_right && get_number (self, column + 1, row) != 0 ? 1 : 0;
  return pp_letters_format (index);
}
