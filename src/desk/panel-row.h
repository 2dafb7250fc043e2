/* panel-row.h: a panel on the shelf, and what can be done with it besides opening it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A tile with a menu beside it, which the secondary button and the menu key open too.
 */
#pragma once

#include "desk/panel-tile.h"

G_BEGIN_DECLS

/* One entry of the menu. */
typedef struct
{
  const char *words;  /* translated */
  const char *action; /* has the URI of the file as its target */
} PpRowAct;

/* `acts` (nullable) ends with an entry of NULL. The tile is the first child. */
GtkWidget   *pp_panel_row_new      (GFile          *file,
                                    gboolean        is_sample,
                                    const PpRowAct *acts);
/* (transfer none) */
PpPanelTile *pp_panel_row_get_tile (GtkWidget      *row);

G_END_DECLS
