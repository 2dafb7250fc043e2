/* sheet-leaf.h: one page of paper as it will print.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_SHEET_LEAF (pp_sheet_leaf_get_type ())
G_DECLARE_FINAL_TYPE (PpSheetLeaf, pp_sheet_leaf, PP, SHEET_LEAF, GtkWidget)

/* `name`: for those who do not see it, "Record, page 1 of 9". (transfer floating) */
GtkWidget *pp_sheet_leaf_new       (const char      *name);
/* Filled with `image` (nullable), whatever its size: bare paper without one. */
void       pp_sheet_leaf_set_image (PpSheetLeaf     *self,
                                    cairo_surface_t *image);
/* Pixels across of its image, 0 for none. */
int        pp_sheet_leaf_get_pixels (PpSheetLeaf    *self);

G_END_DECLS
