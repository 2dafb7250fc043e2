/* labels.h: places for numbers on a plan, so that none covers another or leaves the page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/point.h"

G_BEGIN_DECLS

typedef struct
{
  PpPoint  anchor; /* what is numbered; mm on paper, as all here */
  double   width;
  double   height;
  PpPoint  at;     /* out: its middle */
  gboolean placed; /* out: FALSE where no room is left near */
} PpSheetLabel;

/* Those that can stand on their anchor do, the others take the nearest free place around it.
 * Labels keep `gap` from one another and from `obstacles`, and stay within `bounds`. The same
 * labels give the same places. */
void    pp_labels_place (PpSheetLabel *labels,
                         guint         n_labels,
                         PpBox         bounds,
                         const PpBox  *obstacles,
                         guint         n_obstacles,
                         double        gap);
static inline PpBox
pp_label_box (const PpSheetLabel *self)
{
  return (PpBox) { self->at.x - self->width / 2, self->at.y - self->height / 2,
                   self->at.x + self->width / 2, self->at.y + self->height / 2 };
}

G_END_DECLS
