/* tray-gauge.h: sizes that all compartments of a tray share, in the font of the window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measured once, not once a compartment: a tray may have thousands. All in px.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct _PpTrayGauge PpTrayGauge;

/* `widget` outlives it, and has the font. */
PpTrayGauge *pp_tray_gauge_new         (GtkWidget   *widget);
void         pp_tray_gauge_free        (PpTrayGauge *self);
/* The font is another one. */
void         pp_tray_gauge_reset       (PpTrayGauge *self);

/* How words stand in a compartment: with tabular figures. (transfer full) */
PangoAttrList *pp_tray_gauge_make_face (PangoWeight weight);
/* Height of a line of text. */
int          pp_tray_gauge_get_line    (PpTrayGauge *self);
/* Height of the room for a picture. */
int          pp_tray_gauge_get_picture (PpTrayGauge *self);
/* Width for the name, as long as that is not unseemly, and for all that may be said of how many
 * are left of `count` as pieces come and go. */
int          pp_tray_gauge_get_width   (PpTrayGauge *self,
                                        const char  *name,
                                        guint        count);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpTrayGauge, pp_tray_gauge_free)

G_END_DECLS
