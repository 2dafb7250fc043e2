/* swap-chooser.h: the pieces of the tray, to choose what the chosen ones are swapped for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A popover with a picture, name and number left of each piece; what is typed narrows them down,
 * Return takes the first or the one with the focus.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Placements are chosen in `document`, at least one. (transfer floating) */
GtkWidget *pp_swap_chooser_new (PpDocument *document);

G_END_DECLS
