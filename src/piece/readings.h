/* readings.h: a piece from what was read on a ring sheet or a ladder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The piece lies on the printed sheet, front up, and is looked at straight from above.
 */
#pragma once

#include "panel/record.h"

G_BEGIN_DECLS

#define PP_LEAST_SPOKES 6
#define PP_LEAST_RUNGS 3
#define PP_MOST_READINGS 720
#define PP_SHEET_SPOKES 24 /* of the ring sheet we print: one each half hour of a clock */
#define PP_SHEET_RUNG 10.0 /* mm, of the ladder we print */

/* Where the border crosses a spoke. */
typedef struct
{
  double turn;  /* degrees clockwise from 12, 0 to under 360 */
  double reach; /* mm from the middle of the rings */
} PpSpoke;

/* Where the borders lie at a rung; a side less than 0 lies across the middle line. */
typedef struct
{
  double up;    /* mm from the foot of the ladder */
  double left;  /* mm from the middle line */
  double right;
} PpRung;

/* A smooth closed outline through the crossings; its origin is the middle of the rings. The
 * spokes may come in any order. Returns (transfer full).
 * Errors: PP_PANEL_ERROR_VALUE for too few or too many, two on one spoke, two more than 120
 * degrees apart, or a reach that no piece has. */
PpOutline *pp_readings_ring   (const PpSpoke  *spokes,
                               guint           n_spokes,
                               GError        **error);
/* A smooth outline up one side and down the other. An end of no width is a tip: pointed or round
 * as the widths before it narrow; one with a width is cut straight. Its origin is half-way
 * between its ends on the middle line, its base has the greater y. Returns (transfer full).
 * Errors: PP_PANEL_ERROR_VALUE for too few or too many, two at one height, borders that cross, or
 * figures that no piece has. */
PpOutline *pp_readings_ladder (const PpRung   *rungs,
                               guint           n_rungs,
                               GError        **error);
/* A piece like `draft` of this outline, with art: glass of its colour, plain, as nothing more is
 * known of it. Returns (transfer full). Errors: as pp_piece_new(). */
PpPiece   *pp_readings_make   (const PpOutline *outline,
                               const PpPiece   *draft,
                               GError         **error);

G_END_DECLS
