/* picking-view.h: a picture with the pieces that were found in it, large, with rulers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Squared it shows the sheet in mm; while marks are set, or where it is not squared yet, the photo
 * as it is. It takes focus: what its tool does by the pointer, arrow keys and Return do too.
 * Signals: chosen (guint), left-out (guint), by number; stroke (gpointer PpStroke, borrowed), mm;
 * marked (gboolean stepped), pp_picking_view_get_marks() has them; tool, it is another now;
 * pressed, the chosen one, with the pointer.
 */
#pragma once

#include "desk/picking-work.h"
#include "piece/stroke.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum
{
  PP_TOOL_CHOOSE,
  PP_TOOL_PART,
  PP_TOOL_JOIN,
  PP_TOOL_MARK,
} PpPickingTool;

#define PP_N_TOOLS 4
#define PP_MOST_MARKS 4

#define PP_TYPE_PICKING_VIEW (pp_picking_view_get_type ())
G_DECLARE_FINAL_TYPE (PpPickingView, pp_picking_view, PP, PICKING_VIEW, GtkWidget)

PpPickingView *pp_picking_view_new         (PpUnits               units);
void           pp_picking_view_set_sight   (PpPickingView        *self,
                                            const PpPickingSight *sight);
void           pp_picking_view_set_picking (PpPickingView        *self,
                                            const PpPicking      *picking);
void           pp_picking_view_set_tool    (PpPickingView        *self,
                                            PpPickingTool         tool);
PpPickingTool  pp_picking_view_get_tool    (PpPickingView        *self);
void           pp_picking_view_zoom_by     (PpPickingView        *self,
                                            double                factor);
/* All of the picture in view, as at first. */
void           pp_picking_view_zoom_fit    (PpPickingView        *self);
/* Pixels of the photo: four of a frame, the two ends of a length. */
const PpPoint *pp_picking_view_get_marks   (PpPickingView        *self);

G_END_DECLS
