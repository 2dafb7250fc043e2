/* colour-button.h: what a button that asks for a colour tells those who do not see it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Names it, the button in it, which has the focus, and the patch of colour in that: to the last two
 * GTK 4.8 gives no name. `title`: the label that is the name. */
void pp_colour_button_tell (GtkColorButton *self,
                            GtkWidget      *title);

G_END_DECLS
