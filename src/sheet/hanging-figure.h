/* hanging-figure.h: the panel as it hangs, from the front with its measures and from the side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

/* The figure at the top of `area`, each hole with its letter; returns the y below. */
double pp_hanging_figure_draw (PpBook *book,
                               PpBox   area);

G_END_DECLS
