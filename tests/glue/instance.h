/* instance.h: small random problems, the same for the same seed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/schedule.h"

G_BEGIN_DECLS

#define INSTANCE_MAX_TASKS 10

typedef struct
{
  PpProblem problem; /* of the arrays below */
  PpTask    tasks[INSTANCE_MAX_TASKS];
  PpLink    links[INSTANCE_MAX_TASKS * INSTANCE_MAX_TASKS];
  PpTuck    tucks[INSTANCE_MAX_TASKS * INSTANCE_MAX_TASKS];
} Instance;

/* Whole minutes; depths all different; every task fits a mix. `self` must not be moved. */
void instance_init     (Instance       *self,
                        guint32         seed,
                        guint           n_tasks);
/* The same problem with its tasks numbered in another way that links allow: task i of `from` is
 * number renumbered[i] of `self`. */
void instance_renumber (Instance       *self,
                        const Instance *from,
                        guint32         seed,
                        guint          *renumbered);

G_END_DECLS
