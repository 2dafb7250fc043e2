/* path-kept.h: what is known of the screens along a path of the wire while it hardly moves.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/conceal-private.h"
#include "check/cover.h"

G_BEGIN_DECLS

/* Of one screen along one leg. Counted by whoever keeps it. */
typedef struct
{
  const PpOutline *outline; /* borrowed, as a name */
  GArray          *sides;   /* PpCoverSide, those that may cut the leg */
  GArray          *answers; /* whether it covers a place, and how far about that the same holds */
  gboolean         shared;  /* they are those of the path before, no more */
  guint            n_before; /* of them from the path before */
  guint            n_asked;  /* along this one */
  guint            next;     /* the one that comes next if all is asked as before */
} PpKnown;

PpPathKept *pp_path_kept_new  (void);
/* Takes up a leg; of `previous` (nullable), of the same path before, holds what still does. */
void        pp_path_kept_begin (PpPathKept       *self,
                                const PpPathKept *previous,
                                guint             leg,
                                const PpLeg      *at);
/* The next screen of that leg, whose lines run beside it by `asides`. (transfer none) */
PpKnown    *pp_path_kept_take (PpPathKept        *self,
                               const PpPathKept  *previous,
                               guint              leg,
                               const PpCover     *cover,
                               const double      *asides,
                               guint              n_lines);
/* As pp_cover_contains (). */
gboolean    pp_known_contains (PpKnown           *self,
                               const PpCover     *cover,
                               PpPoint            p);

G_END_DECLS
