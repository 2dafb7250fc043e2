/* typing.h: what is typed in a field and not taken yet.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* As if the field with the focus was left: before the panel is saved, say. What cannot be taken
 * stays there. */
void pp_typing_finish (GtkRoot *root);

G_END_DECLS
