/* sight-seen.h: which parts of a leg of the wire a view shows, wherever that lies within a slack.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/sight-row.h"

G_BEGIN_DECLS

/* Counted, never changed. */
typedef struct _PpSeen PpSeen;

/* What `row`, dimmed by all screens, tells of the parts of a leg from `first` on; the others of its
 * `n` parts are as `before` (nullable where there are none) has them. (transfer full) */
PpSeen *pp_seen_new          (const PpSightRow *row,
                              guint             first,
                              guint             n,
                              const PpSeen     *before);
PpSeen *pp_seen_ref          (PpSeen           *self);
void    pp_seen_unref        (PpSeen           *self);
/* Widens the parts from `first` up to before `end`, none where that is no greater, by all for which
 * it depends on one of the screens whether they are hidden. What is told of other parts asks none
 * of these screens any more, so that they, and what they borrow, may go. Doubts reach farther than
 * a screen's shadow (a loose rim, a fold): that alone does not tell. */
void    pp_seen_widen        (const PpSeen     *self,
                              GPtrArray        *screens,
                              guint            *first,
                              guint            *end);
/* Of the parts of `row`, which lies within the slack: those that are hidden on all lines by
 * `screens` (PpScreen), in the order in which they dim. */
guint   pp_seen_count_hidden (const PpSeen     *self,
                              const PpSightRow *row,
                              GPtrArray        *screens);

G_END_DECLS
