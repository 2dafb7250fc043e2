/* reorder.h: another order of the steps of a plan, where what lies on what allows it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/plan.h"

G_BEGIN_DECLS

typedef enum
{
  PP_BAR_NONE,
  PP_BAR_RESTS,  /* one of the two lies on the other */
  PP_BAR_STAGES, /* knots, then stems, then flat pieces, then shaped ones */
} PpBar;

typedef struct
{
  PpBar bar;
  guint job; /* that the step may not pass; unless NONE */
} PpReorder;

/* Whether step `from` may become step `to`, both from 0; if not, the first job on its way there
 * that it may not pass. */
PpReorder pp_reorder_ask  (const PpPlan  *plan,
                           guint          from,
                           guint          to);
/* The order then, for pp_edit_set_order(): ids ended by NULL. What of `panel`'s accepted order is
 * done already keeps its place before it. (transfer full), free with g_strfreev(). */
char    **pp_reorder_jobs (const PpPlan  *plan,
                           const PpPanel *panel,
                           guint          from,
                           guint          to);

G_END_DECLS
