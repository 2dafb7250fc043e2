/* picking-view-private.h: what the files of the picture with its pieces share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/picking-view.h"

#include "desk/ruler.h"

G_BEGIN_DECLS

struct _PpPickingView
{
  GtkWidget        parent_instance;
  PpUnits          units;
  PpPickingTool    tool;

  /* what is looked at */
  PpPhoto         *photo;
  cairo_surface_t *shown;
  double           share;
  PpSquared       *squared;
  cairo_surface_t *sheet;

  /* what is found */
  PpFound         *found;
  PpPoint         *places;  /* mm, on each piece */
  gboolean        *is_left_out;
  guint            chosen;

  gboolean         has_corners; /* of the frame, as found */
  PpPoint          corners[4];
  guint            n_marks;
  PpPoint          marks[PP_MOST_MARKS]; /* pixels of the photo */
  guint            mark;     /* that the keys move */
  gboolean         is_dragging; /* a mark, or a line */
  PpPoint          grip;     /* px from the mark in hand to the pointer */

  PpPoint          cross;    /* mm; moved by the keys */
  gboolean         has_cross;
  gboolean         has_stroke; /* that a click would draw */
  PpStroke         stroke;

  PpZoom           zoom;     /* of the sheet, mm, or of the photo, pixels */
  gboolean         is_whole; /* the picture is, and stays so in another size of the view */
  gboolean         was_photo; /* when it was placed */
  PpZoom           held;     /* as a pinch or drag began */
  gboolean         is_panning;
  PpPoint          pointer;  /* px */
  GtkWidget       *grid;
  PpRuler         *across;
  PpRuler         *down;
  GtkDrawingArea  *area;
};

enum
{
  PP_PICKING_CHOSEN,
  PP_PICKING_PRESSED,
  PP_PICKING_LEFT_OUT,
  PP_PICKING_STROKE,
  PP_PICKING_MARKED,
  PP_PICKING_TOOL,
  PP_PICKING_N_SIGNALS,
};

extern guint pp_picking_view_signals[PP_PICKING_N_SIGNALS];

void     pp_picking_view_add_input (PpPickingView       *self);
void     pp_picking_view_add_zoom  (PpPickingView       *self);
/* Sets the zoom for the view as large as it is now; there is a photo. */
void     pp_picking_view_place     (PpPickingView       *self);
/* From where a drag began, px. */
void     pp_picking_view_pan       (PpPickingView       *self,
                                    const PpZoom        *from,
                                    double               dx,
                                    double               dy);
/* So that a place, in the frame that is shown, is in view. */
void     pp_picking_view_bring_in  (PpPickingView       *self,
                                    PpPoint              at);
gboolean pp_picking_view_key_to_zoom (PpPickingView     *self,
                                      guint              key);
void     pp_picking_view_redraw    (PpPickingView       *self);
/* Whether the photo is shown as it is. */
gboolean pp_picking_view_is_photo  (const PpPickingView *self);
void     pp_picking_view_draw      (GtkDrawingArea      *area,
                                    cairo_t             *cr,
                                    int                  width,
                                    int                  height,
                                    gpointer             view);

G_END_DECLS
