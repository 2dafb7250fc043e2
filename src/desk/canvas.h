/* canvas.h: the bench with the glass and all that lies on it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws the document's panel to scale and turns pointer and keys into edits of it. Pieces that do
 * not move are drawn once, on two kept layers; a piece in hand is drawn alone between them. Each
 * placement has a child widget that draws nothing and carries its name, its place and the focus;
 * all of them are one tab stop.
 * Signals: zoomed, another place or scale; pin (guint index), a finding's pin was pressed.
 */
#pragma once

#include "desk/document.h"
#include "desk/zoom.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_CANVAS (pp_canvas_get_type ())
G_DECLARE_FINAL_TYPE (PpCanvas, pp_canvas, PP, CANVAS, GtkWidget)

/* How the panel is looked at. */
typedef struct
{
  double   sideways;    /* degrees, viewer to the right positive */
  gboolean from_behind;
  gboolean heights;     /* each piece's height beside it */
  gboolean glue;        /* dabs and props */
  gboolean groups;      /* a line about each group */
} PpLook;

/* `document` is nullable. Fits the glass. */
void          pp_canvas_set_document   (PpCanvas     *self,
                                        PpDocument   *document);
const PpZoom *pp_canvas_get_zoom       (PpCanvas     *self);
void          pp_canvas_zoom_fit       (PpCanvas     *self);
/* `factor` times as large about the middle; pp_canvas_zoom_to() sets px a mm. */
void          pp_canvas_zoom_by        (PpCanvas     *self,
                                        double        factor);
void          pp_canvas_zoom_to        (PpCanvas     *self,
                                        double        scale);
PpLook        pp_canvas_get_look       (PpCanvas     *self);
void          pp_canvas_set_look       (PpCanvas     *self,
                                        PpLook        look);
/* While measuring, a drag lays a ruler instead of moving. */
void          pp_canvas_set_measuring  (PpCanvas     *self,
                                        gboolean      measuring);
/* Brings a finding's pin into view and lights it up. */
void          pp_canvas_show_finding   (PpCanvas     *self,
                                        guint         index);
/* Lights a finding's pin up where it stands, until another; -1: none. */
void          pp_canvas_light_finding  (PpCanvas     *self,
                                        int           index);
/* The chosen things' box in widget px; FALSE if nothing is chosen or the box is out of sight. */
gboolean      pp_canvas_get_chosen_box (PpCanvas     *self,
                                        GdkRectangle *box);
/* The glass in widget px, which may be larger than the widget. Needs a document. */
void          pp_canvas_get_glass_rectangle (PpCanvas *self,
                                        GdkRectangle *rectangle);
/* A piece of the tray in the middle of what is seen of the glass, chosen and with the focus. */
void          pp_canvas_place          (PpCanvas     *self,
                                        const char   *piece);
/* Where the pointer last was over the glass, mm; the middle of the glass if it never was. */
PpPoint       pp_canvas_get_pointer    (PpCanvas     *self);

G_END_DECLS
