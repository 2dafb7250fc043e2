/* order.h: what must be glued before what.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Jobs are the wire's knots and the placements. A job's index: 0 and 1 are the knots (from, to)
 * where there is a wire, then the placements, bottom first.
 */
#pragma once

#include "check/check.h"

G_BEGIN_DECLS

/* Stages, flat pieces first: common practice in the trade, no source. */
typedef enum
{
  PP_STAGE_KNOTS,
  PP_STAGE_STEMS,
  PP_STAGE_FLAT,
  PP_STAGE_SHAPED,
} PpStage;

typedef struct
{
  guint first;  /* job, or the lower placement's job */
  guint second; /* job, or the upper placement's job */
} PpEdge;

typedef struct
{
  guint    n_jobs;
  guint    n_knots;   /* 0 or 2: jobs before the first placement's */
  PpStage *stages;    /* of each job */
  double  *depth;     /* of each job: y of the hole or of the body's centroid, mm */
  guint    n_hard;
  PpEdge  *hard;      /* all of them, each once, by rising second */
  guint    n_drawn;
  PpEdge  *drawn;     /* transitive reduction of hard */
  guint    n_tucks;
  PpEdge  *tucks;     /* lower, upper */
  guint   *n_below;   /* of each placement */
  guint  **below;     /* placements below that overlap it, rising */
} PpOrder;

/* (transfer full) */
PpOrder *pp_order_new       (const PpCheck *check);
/* The same answer, sooner: `known` (nullable) is the order of the check `before`, and which pieces
 * overlap is asked again only where one of the two is another than it was. */
PpOrder *pp_order_new_after (const PpCheck *check,
                             const PpCheck *before,
                             const PpOrder *known);
PpOrder *pp_order_ref       (PpOrder       *self);
void     pp_order_unref     (PpOrder       *self);

/* Of each job, whether a way of hard edges leads to it from `job`; not `job` itself. Every edge
 * leads to a higher job. Free with g_free(). (transfer full) */
gboolean *pp_order_find_followers (const PpOrder *self,
                                   guint          job);

/* "knot:left" or the placement's id. (transfer full) */
char    *pp_job_dup_id  (const PpPanel *panel,
                         guint          n_knots,
                         guint          job);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpOrder, pp_order_unref)

G_END_DECLS
