/* ticks.h: where a ruler's lines stand and what is written at them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Millimetre rulers go by 1, 2, 5, 10, ... mm; inch rulers halve down to 1/16 and double up by
 * 1, 2, 6, 12, so that the lines are those of a maker's own rule.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

typedef struct
{
  double small; /* mm between the finest lines */
  guint  medium; /* every so many small ones a longer line */
  guint  large; /* every so many small ones a figure */
} PpTicks;

/* The finest that leave at least `least` px between lines and `figure` px between figures at
 * `scale` px a mm. */
PpTicks pp_ticks_choose (double  scale,
                         PpUnits units,
                         double  least,
                         double  figure);

G_END_DECLS
