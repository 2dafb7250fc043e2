/* true-scale.h: how large a millimetre is on the screen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Logical px a mm of the screen that the realized widget is on; by 96 dots an inch where that is
 * not known. */
double pp_true_scale_of (GtkWidget *widget);
/* How large a picture with `scale` px a mm is, "100 %" as large as it is in truth. By 96 dots an
 * inch while the widget is not realized. (transfer full) */
char  *pp_true_scale_format (GtkWidget *widget,
                             double     scale);

G_END_DECLS
