/* frame-sheet.h: how far apart the discs are that pieces are photographed between.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/point.h"
#include "sheet/paper.h"

G_BEGIN_DECLS

/* mm from the middle of one disc to that of the next, across and down, where the photo frame is
 * printed on this paper. */
PpPoint pp_frame_sheet_measure (const PpPaper *paper);

G_END_DECLS
