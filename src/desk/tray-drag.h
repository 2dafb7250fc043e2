/* tray-drag.h: a piece taken out of its compartment by the pointer.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/tray-compartment.h"

G_BEGIN_DECLS

/* What is dragged from (x, y) px of the compartment, and its picture as large as it will lie on the
 * canvas, `scale` px a mm, hanging from where it was taken hold of. (transfer full) */
GdkContentProvider *pp_tray_drag_prepare (GtkDragSource     *source,
                                          PpTrayCompartment *compartment,
                                          double             x,
                                          double             y,
                                          double             scale);

G_END_DECLS
