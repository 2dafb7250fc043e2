/* cover.h: outlines as things that hide what lies behind them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/outline.h"

G_BEGIN_DECLS

/* Panel frame, mm. The outline is borrowed. */
typedef struct
{
  const PpOutline *outline;
  PpBox            box;
  double           transmittance; /* 0 opaque to 1 clear */
} PpCover;

PpCover  pp_cover_make     (const PpOutline *outline,
                            double           transmittance);
/* Inside by the even-odd rule, or within PP_TIE of the outline: what lies flush with a border is
 * covered. */
gboolean pp_cover_contains (const PpCover   *self,
                            PpPoint          p);
/* Adds to `cuts` (of double) where the line from `start` along the unit vector `direction` meets
 * the outline, as mm from `start` within 0 to `length`; of a side along the line, both ends. Some
 * are there twice, none is missing. */
void     pp_cover_cut      (const PpCover   *self,
                            PpPoint          start,
                            PpPoint          direction,
                            double           length,
                            GArray          *cuts);

G_END_DECLS
