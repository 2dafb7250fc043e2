/* bounds.h: how much may lie on one panel, so that it can be checked anywhere.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a check asks of time and memory goes by these sums. They are far beyond what anyone makes:
 * 400 pieces of 120 mm with 1000 positions each cover 6 m², on 2 m of glass.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

#define PP_BOUNDS_MAX_PIECE 1.5e6      /* mm², the box of a placed piece in its own frame */
#define PP_BOUNDS_MAX_COVERED 12e6    /* mm², those of all placements together */
#define PP_BOUNDS_MAX_ROOM 25e6       /* mm², the box of all that lies on or beside the glass */
#define PP_BOUNDS_MAX_LENGTH 1e7      /* mm, of all outlines that lie there */
#define PP_BOUNDS_MAX_POSITIONS 2e6   /* of all outlines that lie there */
/* Sides of pieces about one hole and its knot, for which each may cross each; about several the
 * root of the sum of squares. */
#define PP_BOUNDS_MAX_ABOUT 6000

/* Errors: PP_PANEL_ERROR_LIMIT, with the JSON path of the list. */
gboolean pp_bounds_check (const PpPanel *panel,
                          GError       **error);

G_END_DECLS
