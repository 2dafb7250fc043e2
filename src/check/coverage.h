/* coverage.h: how much of the glass the pieces cover.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

/* The share of the background's cells that lie under a piece, 0 to 1, whatever the number of pieces
 * over one another; what hangs over the edge covers nothing. */
double pp_coverage_of_glass (const PpScene *scene);

G_END_DECLS
