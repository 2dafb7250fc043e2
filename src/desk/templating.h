/* templating.h: what is done with the maker's own templates.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "win.keep-template" asks for a name and keeps the panel shown under it.
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

void pp_templating_add      (PpWindow *window);
/* Asks for another name of a template. */
void pp_templating_rename   (PpWindow *window,
                             GFile    *file);
/* Asks, and puts it away. */
void pp_templating_put_away (PpWindow *window,
                             GFile    *file);

G_END_DECLS
