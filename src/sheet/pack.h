/* pack.h: outlines laid side by side on as few pages as will do, in their order.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Full size, turned by right angles where that saves room, by others only where a piece fits no
 * page else. Each page takes up where the one before stopped, so that the order of the pages is
 * the order of the pieces. The same outlines give the same pages.
 */
#pragma once

#include "panel/outline.h"

G_BEGIN_DECLS

#define PP_PACK_GAP 3.0 /* mm, between two outlines and their labels */

typedef struct
{
  const PpOutline *outline;     /* in: mm, a frame of its own */
  PpPoint          label;       /* in: mm, width and height of the words that go with it */
  PpOutline       *laid;        /* out: page frame; (transfer full); NULL where no page takes it */
  PpPoint          label_at;    /* out: their middle, in the outline where they fit, else over it */
  double           turn;        /* out: degrees clockwise */
  guint            page;        /* out: from 0 */
} PpPacked;

/* Lays `items` on pages of `width` by `height` mm. Returns the number of pages. */
guint pp_pack           (PpPacked        *items,
                         guint            n_items,
                         double           width,
                         double           height);
/* Releases what pp_pack() has laid. */
void  pp_packed_clear   (PpPacked        *items,
                         guint            n_items);
/* Where a label of that size lies wholly within the outline and `window`, as far from the outline's
 * border as can be; FALSE if nowhere. */
gboolean pp_pack_find_inside (const PpOutline *outline,
                              PpBox            window,
                              PpPoint          size,
                              PpPoint         *at);

G_END_DECLS
