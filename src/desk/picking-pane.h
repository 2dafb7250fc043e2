/* picking-pane.h: the picture large, over it what a press does there and how far the search is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/picking-view.h"
#include "desk/picking-work.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_PICKING_PANE (pp_picking_pane_get_type ())
G_DECLARE_FINAL_TYPE (PpPickingPane, pp_picking_pane, PP, PICKING_PANE, GtkBox)

PpPickingPane *pp_picking_pane_new      (PpPickingWork   *work,
                                         PpUnits          units);
/* (transfer none) */
PpPickingView *pp_picking_pane_get_view (PpPickingPane   *self);
void           pp_picking_pane_show     (PpPickingPane   *self,
                                         const PpPicking *picking);
void           pp_picking_pane_set_tool (PpPickingPane   *self,
                                         PpPickingTool    tool);
/* The work is busy: how far it is comes up after a moment, with Stop. */
void           pp_picking_pane_follow   (PpPickingPane   *self);

G_END_DECLS
