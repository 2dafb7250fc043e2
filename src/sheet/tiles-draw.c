/* tiles-draw.c: a drawing true to scale, a page for each tile.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/tiles-private.h"

#include "panel/i18n.h"
#include "sheet/bars.h"
#include "sheet/signs.h"
#include "sheet/text.h"

#define PETALS 3.2         /* mm, radius of the mark on an edge */
#define LETTER_SIZE 13.0   /* pt */
#define LETTER_AWAY 6.6    /* mm, of a letter from its edge */
#define MARK_TRIES 17
#define MARK_STEP 0.05     /* of the edge */
#define SMALL_PLAN 40.0    /* mm of width of the plan at the foot of a tile */

static void
draw_line (PpBook  *book,
           PpPoint  from,
           PpPoint  to,
           gboolean is_broken)
{
  const double dashes[] = { 3, 2 };
  cairo_t *cr = book->cr;

  cairo_save (cr);
  pp_book_set_ink (book, PP_INK_ACCENT);
  cairo_set_line_width (cr, PP_LINE_THIN);
  if (is_broken)
    cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* An edge shared by two tiles, in the own frame. */
typedef struct
{
  PpPoint  from;
  PpPoint  to;
  PpPoint  mark;    /* where the petals are */
  char    *letter;  /* "" for none */
} Edge;

static PpBox
get_mark_box (PpPoint  at,
              gboolean is_upright)
{
  double along = PETALS + 1;
  double across = LETTER_AWAY + PETALS;

  return is_upright ? (PpBox) { at.x - across, at.y - along, at.x + across, at.y + along }
                    : (PpBox) { at.x - along, at.y - across, at.x + along, at.y + across };
}

/* Where no line of the drawing goes through it, as near the middle of the edge as can be. */
static PpPoint
find_mark (const PpTiles *self,
           PpPoint        from,
           PpPoint        to,
           gboolean       is_upright)
{
  for (int i = 0; self->what->is_clear != NULL && i < MARK_TRIES; i++)
    {
      double share = 0.5 + (i % 2 == 0 ? 1 : -1) * (i + 1) / 2 * MARK_STEP;
      PpPoint at = { from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share };

      if (self->what->is_clear (get_mark_box (at, is_upright), self->what->data))
        return at;
    }
  return (PpPoint) { (from.x + to.x) / 2, (from.y + to.y) / 2 };
}

/* The right or lower edge of a tile, where the next one is cut. */
static Edge
edge_of (const PpTiles *self,
         int            column,
         int            row,
         gboolean       is_right)
{
  Edge edge = { .letter = pp_tiles_letter_new (self, column, row, is_right) };
  PpBox window;

  if (*edge.letter == '\0')
    return edge;
  window = pp_tiles_get_window (self, (guint) column, (guint) row);
  edge.from = is_right ? (PpPoint) { window.x1 - PP_TILE_OVERLAP, window.y0 }
                       : (PpPoint) { window.x0, window.y1 - PP_TILE_OVERLAP };
  edge.to = is_right ? (PpPoint) { edge.from.x, window.y1 } : (PpPoint) { window.x1, edge.from.y };
  edge.mark = find_mark (self, edge.from, edge.to, is_right);
  return edge;
}

/* The four edges of a tile: left, right, top, foot. */
static void
edges_init (Edge           edges[4],
            const PpTiles *self,
            int            column,
            int            row)
{
  edges[0] = edge_of (self, column - 1, row, TRUE);
  edges[1] = edge_of (self, column, row, TRUE);
  edges[2] = edge_of (self, column, row - 1, FALSE);
  edges[3] = edge_of (self, column, row, FALSE);
}

static void
edges_clear (Edge edges[4])
{
  for (guint i = 0; i < 4; i++)
    g_free (edges[i].letter);
}

static PpPoint
move (PpPoint p,
      PpPoint by)
{
  return (PpPoint) { p.x + by.x, p.y + by.y };
}

static void
draw_edges (PpBook       *book,
            const PpTile *tile,
            const Edge    edges[4])
{
  static const PpPoint sides[4] = { { 1, 0 }, { -1, 0 }, { 0, 1 }, { 0, -1 } };
  const PpTextStyle style = { .size = LETTER_SIZE, .bold = TRUE, .ink = PP_INK_ACCENT };

  for (guint i = 0; i < 4; i++)
    {
      PpPoint mark = move (edges[i].mark, tile->shift);

      if (*edges[i].letter == '\0')
        continue;
      draw_line (book, move (edges[i].from, tile->shift), move (edges[i].to, tile->shift),
                 i % 2 == 1);
      pp_signs_draw_petals (book, mark, PETALS);
      pp_text_draw_centred (book, &style, edges[i].letter,
                            (PpPoint) { mark.x + sides[i].x * LETTER_AWAY,
                                        mark.y + sides[i].y * LETTER_AWAY });
    }
}

static PpTile
tile_of (const PpTiles *self,
         PpBook        *book,
         guint          column,
         guint          row,
         const Edge     edges[4])
{
  PpBox inner = pp_tiles_get_place (book);
  PpTile tile = { .window = pp_tiles_get_window (self, column, row) };

  tile.shift = (PpPoint) { inner.x0 - tile.window.x0, inner.y0 - tile.window.y0 };
  tile.clear = tile.window;
  tile.clear.x1 -= *edges[1].letter != '\0' ? PP_TILE_OVERLAP : 0;
  tile.clear.y1 -= *edges[3].letter != '\0' ? PP_TILE_OVERLAP : 0;
  for (guint i = 0; i < 4; i++)
    if (*edges[i].letter != '\0')
      tile.marks[tile.n_marks++] = get_mark_box (move (edges[i].mark, tile.shift), i < 2);
  return tile;
}

static double
get_small_plan_side (const PpTiles *self)
{
  return fmin ((PP_BARS_ROOM - 1.5) / self->n_down, SMALL_PLAN / self->n_across);
}

/* Where this tile lies among the others: a small plan at the right of the page's foot. */
static void
draw_small_plan (const PpTiles *self,
                 PpBook        *book,
                 int            column,
                 int            row)
{
  double side = get_small_plan_side (self);
  PpPoint corner = { book->area.x1 - side * self->n_across, book->area.y1 - side * self->n_down };

  cairo_set_line_width (book->cr, 0.13);
  for (guint i = 0; i < self->n_across * self->n_down; i++)
    {
      int c = (int) (i % self->n_across);
      int r = (int) (i / self->n_across);

      if (self->numbers[i] == 0)
        continue;
      cairo_rectangle (book->cr, corner.x + c * side, corner.y + r * side, side, side);
      pp_book_set_ink (book, c == column && r == row ? PP_INK_ACCENT : PP_INK_PAPER);
      cairo_fill_preserve (book->cr);
      pp_book_set_ink (book, PP_INK_ACCENT);
      cairo_stroke (book->cr);
    }
}

static void
draw_tile (const PpTiles *self,
           PpBook        *book,
           guint          column,
           guint          row)
{
  double plan = self->n_tiles > 1 ? get_small_plan_side (self) * self->n_across + PP_GAP : 0;
  Edge edges[4];
  PpTile tile;
  PpBox place;

  edges_init (edges, self, (int) column, (int) row);
  tile = tile_of (self, book, column, row, edges);
  place = pp_box_move (tile.window, tile.shift);
  cairo_save (book->cr);
  cairo_rectangle (book->cr, place.x0, place.y0, pp_box_width (place), pp_box_height (place));
  cairo_clip (book->cr);
  self->what->draw (book, &tile, self->what->data);
  cairo_restore (book->cr);
  draw_edges (book, &tile, edges);
  pp_bars_draw (book, book->area, plan);
  if (plan > 0)
    draw_small_plan (self, book, (int) column, (int) row);
  edges_clear (edges);
}

static char *
heading_new (const PpTiles *self,
             const char    *name,
             guint          column,
             guint          row)
{
  guint number = self->numbers[row * self->n_across + column];

  if (name == NULL)
    return g_strdup_printf (_("Tile %u of %u: row %u, column %u"), number, self->n_tiles, row + 1,
                            column + 1);
  return g_strdup_printf (_("%s: tile %u of %u"), name, number, self->n_tiles);
}

void
pp_tiles_draw (const PpTiles *self,
               PpBook        *book,
               const char    *name,
               gboolean       is_begun)
{
  for (guint row = 0; row < self->n_down; row++)
    for (guint column = 0; column < self->n_across; column++)
      {
        g_autofree char *heading = NULL;

        if (self->numbers[row * self->n_across + column] == 0)
          continue;
        heading = heading_new (self, name, column, row);
        if (!is_begun)
          pp_book_begin_page (book, heading);
        is_begun = FALSE;
        draw_tile (self, book, column, row);
      }
}
