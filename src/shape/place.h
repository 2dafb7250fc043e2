/* place.h: where a placement puts its piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * X = x + m·u·cos r - v·sin r, Y = y + m·u·sin r + v·cos r, with m = -1 if mirrored, else 1:
 * (u, v) in the piece's own frame, (X, Y) in the panel frame.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

typedef struct
{
  double x;      /* mm */
  double y;
  double cosine; /* exact at right angles */
  double sine;
  double mirror; /* -1 or 1 */
} PpFrame;

PpFrame    pp_frame_of        (const PpPlacement *placement);
PpPoint    pp_frame_to_panel  (const PpFrame     *frame,
                               PpPoint            own);
PpPoint    pp_frame_to_piece  (const PpFrame     *frame,
                               PpPoint            in_panel);
/* The piece's outline in the panel frame. (transfer full) */
PpOutline *pp_place_outline   (const PpPiece     *piece,
                               const PpPlacement *placement);
/* The box of those of `placements` (ids, ended by NULL) that the panel has; empty without one.
 * From the outlines: in a drag a scene would be made anew for every move. */
PpBox      pp_place_box       (const PpPanel     *panel,
                               const char * const *placements);

G_END_DECLS
