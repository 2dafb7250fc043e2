/* lines.h: sentences one under the other in a box.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* At the end of the box, wrapped. */
void pp_lines_add   (GtkBox     *box,
                     const char *words);
/* Takes out whatever is in the box. */
void pp_lines_clear (GtkBox     *box);

G_END_DECLS
