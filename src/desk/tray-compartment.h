/* tray-compartment.h: one compartment of the tray: a piece, its name, how many are left.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws its picture when it is first seen and keeps it. Enter or Space activates "tray.place"
 * with the piece's id.
 */
#pragma once

#include "art/gallery.h"
#include "desk/piece-picture.h"
#include "desk/tray-gauge.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_TRAY_COMPARTMENT (pp_tray_compartment_get_type ())
G_DECLARE_FINAL_TYPE (PpTrayCompartment, pp_tray_compartment, PP, TRAY_COMPARTMENT, GtkWidget)

/* `gauge` outlives it. Set its piece before it is shown. */
GtkWidget     *pp_tray_compartment_new        (PpTrayGauge       *gauge);
/* `art` is nullable. `tray`: by what the common scale is chosen. */
void           pp_tray_compartment_set_piece  (PpTrayCompartment *self,
                                               const PpPiece     *piece,
                                               PpArt             *art,
                                               PpPieceSpan        tray);
/* How many lie on the glass, and the unit to speak of the piece in. */
void           pp_tray_compartment_set_placed (PpTrayCompartment *self,
                                               guint              placed,
                                               PpUnits            units);
/* Both (transfer none), never NULL and nullable. */
const PpPiece *pp_tray_compartment_get_piece  (PpTrayCompartment *self);
PpArt         *pp_tray_compartment_get_art    (PpTrayCompartment *self);
/* Where (x, y) px of the compartment is on the piece, mm in its own frame. */
PpPoint        pp_tray_compartment_get_grip   (PpTrayCompartment *self,
                                               double             x,
                                               double             y);

G_END_DECLS
