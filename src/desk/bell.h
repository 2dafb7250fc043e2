/* bell.h: the bell at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Never the only sign: whoever rings it also shows something.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

gboolean pp_bell_is_on (void);
/* Kept for the next time. */
void     pp_bell_set_on (gboolean   is_on);
/* If it is on: a sound of our own where the system can play one, else the beep of the widget's
 * display. */
void     pp_bell_ring  (GtkWidget *widget);

G_END_DECLS
