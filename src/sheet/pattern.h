/* pattern.h: the panel full size, as the tiles of the pattern show it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Seen from the side the job asks for. mm; boxes in the frame of the panel, from behind in its
 * mirror image, which covers the same box.
 */
#pragma once

#include "sheet/map.h"
#include "sheet/numbers.h"
#include "sheet/tiles.h"

G_BEGIN_DECLS

typedef struct
{
  PpBook    *book;
  PpNumbers *numbers;
  PpFullSize what;    /* its data is the pattern itself */
} PpPattern;

/* Both are borrowed and outlive `self`, which must stay where it is while `what` is used. */
void  pp_pattern_init    (PpPattern       *self,
                          PpBook          *book,
                          PpNumbers       *numbers);
/* From the outermost line to the outermost line. */
PpBox pp_pattern_get_box (const PpPattern *self);
/* At scale 1, moved by `shift` on the page. */
PpMap pp_pattern_get_map (const PpPattern *self,
                          PpPoint          shift);

G_END_DECLS
