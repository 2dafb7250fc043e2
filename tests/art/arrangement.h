/* arrangement.h: a small arrangement on the glass, for the tests of the picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "art/draw.h"

/* Glass of 100 x 80 mm with holes at (20, 10), drilled, and (80, 10), a wire between them, a fused
 * part from (10, 55) to (40, 75), and one piece, a leaf: its outline 20 wide and 10 high with the
 * origin at its upper left corner; its art blue there but for its right half, which is red. It is
 * placed by `placement`, or not at all for NULL. Everything is freed with it. */
typedef struct
{
  PpBackground  background;
  PpFused       fused;
  PpHole        holes[2];
  PpWire        wire;
  PpPiece       piece;
  PpPlacement   placement;
  PpPanel       panel;
  PpBody        body;
  PpBody       *bodies[1];
  int           pockets[1];
  PpScene       scene;
  PpGallery    *gallery;
} Arrangement;

void arrangement_init  (Arrangement       *self,
                        const PpPlacement *placement,
                        gboolean           with_art);
void arrangement_clear (Arrangement       *self);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Arrangement, arrangement_clear)
