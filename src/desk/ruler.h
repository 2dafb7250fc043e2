/* ruler.h: a rule along the glass, in the maker's unit, with zero at the glass's own edge.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/zoom.h"
#include "panel/panel.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_RULER (pp_ruler_get_type ())
G_DECLARE_FINAL_TYPE (PpRuler, pp_ruler, PP, RULER, GtkWidget)

/* "orientation" is a property (GtkOrientable). From behind a rule across counts from the right
 * edge as seen from there, which is the glass's left. */
void pp_ruler_set (PpRuler      *self,
                   const PpZoom *zoom,
                   PpUnits       units);

G_END_DECLS
