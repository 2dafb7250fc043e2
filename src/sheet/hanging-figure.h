/* hanging-figure.h: the panel as it hangs, from the front with its measures and from the side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

/* "A", "B", ... for the holes in their order from the left, ended by NULL as in the table of holes:
 * indices into panel->holes; g_free(). */
guint *pp_holes_from_left    (const PpPanel *panel);
char  *pp_hole_letter_format (guint          place);
/* Returns the y below. */
double pp_hanging_figure_draw (PpBook       *book,
                               PpBox         area);

G_END_DECLS
