/* job.h: what each job of a glue-up takes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/order.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean done;    /* at the bench: glued or knotted already */
  gboolean hold;    /* until the glue grabs */
  double   minutes;
  double   volume;  /* ml */
} PpJob;

/* One for each knot and placement, by the index that a job has in the check's order (order.h).
 * Free with g_free(). (transfer full) */
PpJob   *pp_jobs_new      (const PpCheck *check);
/* Glued or knotted. Of one knot alone the panel does not know: it is tied too if the last that the
 * log says of it is that it was placed. */
gboolean pp_job_is_done   (const PpPanel *panel,
                           guint          n_knots,
                           guint          job);
/* Whether the second job of a hard edge rests on the piece of the first, and that one is held. */
gboolean pp_job_must_grab (const PpCheck *check,
                           const PpOrder *order,
                           const PpJob   *jobs,
                           const PpEdge  *edge);

G_END_DECLS
