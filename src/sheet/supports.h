/* supports.h: the list of props and weights that steps of the plan need.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

/* Under `heading`, from `y` down, to be ticked off; nothing at all where no step needs any. Returns
 * the y below. */
double pp_supports_draw (PpBook     *book,
                         const char *heading,
                         double      y);

G_END_DECLS
