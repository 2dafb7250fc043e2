/* bench-stock.h: what is glued or broken at the bench leaves the maker's box.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* Counts the pieces of the box down by what is glued in `after` and not in `before`, up by what
 * came off, and down by each of the `broke` jobs, NULL at the end, or NULL for none. */
void pp_bench_stock_follow (const PpPanel      *before,
                            const PpPanel      *after,
                            const char * const *broke);

G_END_DECLS
