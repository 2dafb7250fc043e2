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

/* One for each job of `order`, by its index. Free with g_free(). (transfer full) */
PpJob *pp_jobs_new (const PpCheck *check,
                    const PpOrder *order);

G_END_DECLS
