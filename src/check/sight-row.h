/* sight-row.h: how much light comes through along one line of the wire, seen aslant.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/midsurface.h"

G_BEGIN_DECLS

/* All that may hide the wire, and the view that it is seen from. */
typedef struct
{
  const PpPanel *panel;
  PpCover        background;
  GArray        *parts;   /* PpCover */
  GArray        *pieces;  /* PpMidsurface, the flattest first: they are soonest judged */
  double         opaque;
  PpPoint        slant;   /* mm in plan a mm of height, toward the viewer */
  PpPoint        shift;   /* mm, from the wire to where its sight leaves the front face */
  GArray        *shadows; /* PpShadow: those that may fall on the wire in this view */
  guint16       *shadow_of; /* by place in the stack: which of the shadows, or PP_SIGHT_NONE */
  guint          n_bodies;
} PpAslant;

typedef struct
{
  const PpMidsurface *piece;
  PpBox               box; /* where sights that may meet it leave the front face */
} PpShadow;

/* One of the three lines of a leg, as where the sights from the middles of its parts leave the
 * front face. */
typedef struct
{
  PpPoint from;    /* of the first part's middle */
  PpPoint step;    /* to the next */
  double  spacing; /* mm, its length */
  guint   n;
} PpSightRow;

/* mm: rooms are told up to here. */
#define PP_SIGHT_FAR 2.0

/* Which placement is before a part, counting from the bottom. */
#define PP_SIGHT_NONE 0xffff
#define PP_SIGHT_SEVERAL 0xfffe

/* What is known of each part of a row. As long as a sight of this view leaves the front face nearer
 * than its room, in mm, to where this one does, and nothing else moves, it is hidden likewise. `by`:
 * the placements that dim it, of a hidden one those that hide it. */
typedef struct
{
  guint8  *hidden;
  float   *room;
  guint16 *by;
} PpSeen;

/* Whether a part is hidden by the one placement that `seen` says hid it before; if so all is known
 * of it. */
gboolean pp_sight_row_is_still_hidden (const PpAslant   *aslant,
                                       const PpSightRow *row,
                                       guint             i,
                                       const PpSeen     *seen);
/* Looks at the parts from the `first` on up to the `last`, not included. */
void pp_sight_row_look  (const PpAslant   *aslant,
                         const PpSightRow *row,
                         guint             first,
                         guint             last,
                         const PpSeen     *seen);
/* One more piece has come: those parts that it dims are `stale`, the others have less room. */
void pp_sight_row_add   (const PpAslant   *aslant,
                         const PpSightRow *row,
                         const PpShadow   *shadow,
                         const PpSeen     *seen,
                         guint8           *stale);
/* Narrows it to the parts that may lie in a box. */
void pp_sight_row_range (const PpSightRow *row,
                         PpBox             box,
                         guint            *first,
                         guint            *last);

G_END_DECLS
