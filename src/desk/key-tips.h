/* key-tips.h: what a control does, with the key that does it too.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* For every control now in `widget` that stands for an action. */
void pp_key_tips_add (GtkWidget *widget);

G_END_DECLS
