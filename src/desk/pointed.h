/* pointed.h: a press with the pointer after which the keys go on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Adds the signal "pointed" to a class, without arguments. */
void pp_pointed_add_signal (GObjectClass *klass);
/* From now on `self` (which outlives it, or is it) emits it after each press that ends on
 * `pressed`, once what follows from the press is shown. */
void pp_pointed_watch      (GtkWidget    *pressed,
                            GtkWidget    *self);

G_END_DECLS
