/* variants.h: the actions that make another panel from one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "win.again" and "win.fit", of the panel that the window shows; what comes of them is shown in a
 * window of its own and is not saved yet.
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

void pp_variants_add      (PpWindow       *window);
void pp_variants_set_keys (GtkApplication *application);
/* The same of a panel in a file, which is read first. */
void pp_variants_offer    (PpWindow       *window,
                           GFile          *file,
                           gboolean        is_size);

G_END_DECLS
