/* over.h: what lies over and under a piece in the stack.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Of the whole stack only those count whose outlines overlap: two pieces apart lie neither over nor
 * under one another, whatever their places in the stack.
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

/* The stack place of the next body over (or under) body `index` that overlaps it by more than the
 * panel's limit, or PP_NO_INDEX. */
int pp_over_next (const PpScene *scene,
                  guint          index,
                  gboolean       over);

G_END_DECLS
