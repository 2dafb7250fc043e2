/* edit-keys.h: the keys of the actions on the chosen pieces.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* Gives them to the application, so that menus and tooltips can name them. */
void pp_edit_keys_set (GtkApplication *application);
/* Leaves them to a field of text while one has the window's focus. */
void pp_edit_keys_add (PpWindow       *window);

G_END_DECLS
