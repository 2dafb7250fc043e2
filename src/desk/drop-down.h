/* drop-down.h: what a list that drops down tells those who do not see it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Names the button in it, which has the focus and to which GTK 4.8 gives no name, and has it say
 * what is chosen. `title`: the label that is its name, or itself where its name is a property.
 * What is listed are strings. */
void pp_drop_down_tell (GtkDropDown *self,
                        GtkWidget   *title);

G_END_DECLS
