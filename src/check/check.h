/* check.h: everything that is asked of a panel, and the answers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value: immutable, counted atomically, holding its panel. `order` and `mix-small` are the
 * glue plan's (glue/plan.h), `art-left-out` the sheets' (sheet/left-out.h).
 */
#pragma once

#include "check/composition.h"
#include "check/conceal.h"
#include "check/finding.h"
#include "check/piece-name.h"

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct
{
  const PpPanel *panel;
  PpScene       *scene;
  guint          n;           /* placements */
  PpRest       **rests;
  PpJoint      **joints;
  double         bare_depth;  /* mm, greatest height of glass, fused parts and knots alone */
  double         depth;       /* mm, and with the placements */
  PpMass         mass;
  PpExtent       extent;
  PpHang        *hang;        /* NULL without a wire */
  PpConceal     *conceal;     /* NULL without wire and holes */
  PpComposition *composition;
  PpPieceNames  *names;       /* as the findings say them */
  GPtrArray     *findings;    /* PpFinding, worst first */
  PpSaid        *said;        /* those of them that are of one placement each */
} PpCheck;

/* Called with the share done, 0 to 1, now and then, in the thread of the check; what is taken over
 * from a check before is done at once and told of together. */
typedef void (*PpProgressFunc) (double   done,
                                gpointer data);

/* Checks `panel`. `previous` (nullable): the check of an earlier panel, whose unchanged parts are
 * used again; the answer is the same with and without it. `progress` is nullable.
 * Returns (transfer full), or NULL.
 * Errors: G_IO_ERROR_CANCELLED and no other. */
PpCheck *pp_check_new   (const PpPanel  *panel,
                         const PpCheck  *previous,
                         GCancellable   *cancellable,
                         PpProgressFunc  progress,
                         gpointer        data,
                         GError        **error);
PpCheck *pp_check_ref   (const PpCheck  *self);
void     pp_check_unref (const PpCheck  *self);

/* Findings of one level that are not quiet. */
guint    pp_check_count (const PpCheck  *self,
                         PpLevel         level);

/* The id of an owner as in the JSON: "background", a fused part's, "knot:left", a placement's.
 * (transfer full) */
char    *pp_owner_dup_id (const PpPanel *panel,
                          PpOwner        owner);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpCheck, pp_check_unref)

G_END_DECLS
