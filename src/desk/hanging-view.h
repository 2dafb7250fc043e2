/* hanging-view.h: the panel as it hangs, from the front and from the side, to take hold of.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Follows the document. Hook (and with it the wire's length) and holes that are not drilled are
 * dragged, or moved by the arrows once they have the focus: 1 mm or 1/16 in, with Shift 10 mm or
 * 1/2 in. What is drawn follows at once, with the mass of the last check.
 */
#pragma once

#include "desk/document.h"
#include "desk/hanging-map.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_HANGING_VIEW (pp_hanging_view_get_type ())
G_DECLARE_FINAL_TYPE (PpHangingView, pp_hanging_view, PP, HANGING_VIEW, GtkWidget)

/* `document` is nullable. */
void      pp_hanging_view_set_document (PpHangingView *self,
                                        PpDocument    *document);
/* Where that is not possible, it hangs level, or from the middle of its wire. */
void      pp_hanging_view_set_how      (PpHangingView *self,
                                        PpHungHow      how);
/* Whether it can hang so, and then how far it tilts. */
gboolean  pp_hanging_view_get_tilt     (PpHangingView *self,
                                        PpHungHow      how,
                                        double        *tilt);
/* Rings the place (mm) for a moment. */
void      pp_hanging_view_light        (PpHangingView *self,
                                        PpPoint        mm);

G_END_DECLS
