/* marks.h: the small marks of a plan: glue, props, knots.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places and radii are mm on paper; each mark keeps a size that can be seen.
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

/* A ring with a dot: a dab of glue under the piece. */
void pp_dab_draw  (PpBook   *book,
                   PpPoint   at,
                   double    radius);
/* The same, broken: a piece that comes later in the mix lies over it. */
void pp_dab_draw_covered (PpBook *book,
                          PpPoint at,
                          double  radius);
/* A triangle: a prop stands here. */
void pp_prop_draw (PpBook   *book,
                   PpPoint   at);
/* A ring with a cross: a knot of the wire. */
void pp_knot_draw (PpBook   *book,
                   PpPoint   at,
                   double    radius,
                   gboolean  is_heavy,
                   PpInk     ink);

G_END_DECLS
