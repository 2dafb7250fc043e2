/* panel-tile.h: a panel on the shelf: its picture, title and size, to press.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads its file in the background. One that is gone from the disk hides itself; a damaged one
 * shows its name alone, and opening it says what is wrong. GtkButton's signal clicked.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_PANEL_TILE (pp_panel_tile_get_type ())
G_DECLARE_FINAL_TYPE (PpPanelTile, pp_panel_tile, PP, PANEL_TILE, GtkButton)

/* is_sample: opened as a copy, so its folder does not matter to the maker. */
GtkWidget *pp_panel_tile_new       (GFile       *file,
                                    gboolean     is_sample);
/* Says `name` in place of the panel's title, and nothing of the folder. */
GtkWidget *pp_panel_tile_new_named (GFile       *file,
                                    const char  *name);
GFile     *pp_panel_tile_get_file  (PpPanelTile *self);
gboolean   pp_panel_tile_is_sample (PpPanelTile *self);

G_END_DECLS
