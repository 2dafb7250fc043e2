/* panel-figures.h: how the panel stands, in figures: what is hidden and covered, how heavy it is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A table at the foot of the margin; a figure that the panel does not have has no row.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_PANEL_FIGURES (pp_panel_figures_get_type ())
G_DECLARE_FINAL_TYPE (PpPanelFigures, pp_panel_figures, PP, PANEL_FIGURES, GtkWidget)

/* Shows the figures of a check; nothing for NULL. */
void pp_panel_figures_show (PpPanelFigures *self,
                            const PpCheck  *check);

G_END_DECLS
