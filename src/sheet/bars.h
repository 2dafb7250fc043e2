/* bars.h: bars of a known length, across and down, to hold a ruler against.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A printer can shrink a page, or stretch it one way alone; a file cannot forbid it. So each page
 * that is true to scale carries both bars, 100 mm and 4 in long (half of that on small paper).
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

#define PP_BARS_ROOM 9.5 /* mm, that each takes of the page */

/* What the bars leave of `area`. */
PpBox pp_bars_inner (PpBox   area);
/* One along the left, one along the foot of `area`, with a reminder beside it; `keep` mm at the
 * right of the foot stay free. Says the reminder too. */
void  pp_bars_draw  (PpBook *book,
                     PpBox   area,
                     double  keep);

G_END_DECLS
