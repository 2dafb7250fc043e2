/* tiles.h: a drawing true to scale on one page, or on tiles that overlap.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edges that belong together carry the same letter and the same petals, half on each tile. A tile
 * is cut along its thin line at left and top and laid on the broken line of the tile before it.
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

#define PP_TILE_OVERLAP 10.0 /* mm */

/* A part of the drawing on a page. */
typedef struct
{
  PpBox   window;  /* own frame: what the page shows */
  PpBox   clear;   /* own frame: what of it no other tile covers */
  PpPoint shift;   /* from the own frame to the page */
  guint   n_marks;
  PpBox   marks[4]; /* page: letters of the edges, that nothing should cover */
} PpTile;

/* What is drawn: `box` mm in a frame of its own. The functions are asked in that frame. */
typedef struct
{
  PpBox    box;
  /* Whether nothing is to be seen in `window`. Nullable: there always is. */
  gboolean (*is_blank) (PpBox         window,
                        gpointer      data);
  /* Whether no line crosses `box`, so that a letter can stand there. Nullable: none ever does. */
  gboolean (*is_clear) (PpBox         box,
                        gpointer      data);
  /* Draws what is in the tile; the page is clipped to it. */
  void     (*draw)     (PpBook       *book,
                        const PpTile *tile,
                        gpointer      data);
  gpointer data;
} PpFullSize;

typedef struct
{
  const PpFullSize *what;
  guint             n_across;
  guint             n_down;
  double            width;   /* mm, of a tile */
  double            height;
  PpPoint           origin;  /* own frame: of the first tile */
  guint             n_tiles; /* that are not blank */
  guint            *numbers; /* of each place, from 1; 0: blank */
} PpTiles;

/* Tiles of at most `width` by `height` mm, as few as will do, the drawing in their middle. */
PpTiles *pp_tiles_new        (const PpFullSize *what,
                              double            width,
                              double            height);
void     pp_tiles_free       (PpTiles          *self);
PpBox    pp_tiles_get_window (const PpTiles    *self,
                              guint             column,
                              guint             row);
/* What a page leaves for a tile: book->area less the bars. */
PpBox    pp_tiles_get_place  (const PpBook     *book);
/* A page for each tile. `name` (nullable) says of what, with many drawings. Goes on on the page in
 * hand if `is_begun`. */
void     pp_tiles_draw       (const PpTiles    *self,
                              PpBook           *book,
                              const char       *name,
                              gboolean          is_begun);
/* The plan of the tiles, numbers and letters, over the drawing as it stands in `place`. */
void     pp_tiles_draw_plan  (const PpTiles    *self,
                              PpBook           *book,
                              PpBox             place);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpTiles, pp_tiles_free)

G_END_DECLS
