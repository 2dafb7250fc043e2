/* tray-row.h: the compartments of the tray side by side, in wood.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kinds stand together, each with its heading on the wood above it. One tab stop: arrow keys, Home,
 * End and typing the beginning of a name go from compartment to compartment.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_TRAY_ROW (pp_tray_row_get_type ())
G_DECLARE_FINAL_TYPE (PpTrayRow, pp_tray_row, PP, TRAY_ROW, GtkWidget)

/* What part of the row is seen; only that is drawn. */
void pp_tray_row_set_adjustment (PpTrayRow     *self,
                                 GtkAdjustment *adjustment);
/* px a mm of the canvas, for what is dragged. */
void pp_tray_row_set_scale      (PpTrayRow     *self,
                                 double         scale);
/* Shows the panel's tray, drawn with `gallery` (nullable: plain), and how many of each piece lie on
 * its glass; cheap where neither is another than before. */
void pp_tray_row_show           (PpTrayRow     *self,
                                 const PpPanel *panel,
                                 PpGallery     *gallery);
void pp_tray_row_clear          (PpTrayRow     *self);

G_END_DECLS
