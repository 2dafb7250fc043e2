/* layer.h: labels with equally many jobs done, none of which another makes needless.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/label.h"

G_BEGIN_DECLS

typedef struct _PpLayer PpLayer;

/* Which labels are kept first where not all can be. */
typedef enum
{
  PP_RANK_ENDS,  /* those that seem to end soonest; pairs do not count at all */
  PP_RANK_PAIRS, /* among those whose bounds are equal those with the fewest pairs */
} PpRank;

/* (transfer full) */
PpLayer *pp_layer_new    (const PpModel *model);
void     pp_layer_free   (PpLayer       *self);
void     pp_layer_clear  (PpLayer       *self,
                          PpRank         rank);
/* Copies `label` unless one that is there is no worse; those that are no better go. */
void     pp_layer_add    (PpLayer       *self,
                          const PpLabel *label);
guint    pp_layer_count  (const PpLayer *self);
/* Keeps the `most` that rank first; FALSE if there were no more. */
gboolean pp_layer_narrow (PpLayer       *self,
                          guint          most);
/* The next label at `slot` or after it, in `slot` where it stands; NULL after the last. (transfer
 * none), until the layer changes. */
PpLabel *pp_layer_next   (const PpLayer *self,
                          guint         *slot);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpLayer, pp_layer_free)

G_END_DECLS
