/* key.h: how the picture of a mix is read.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

/* Each mark with its word, one under another, as far as there is room in `box`. Returns the y
 * below. */
double pp_key_draw (PpBook *book,
                    PpBox   box);

G_END_DECLS
