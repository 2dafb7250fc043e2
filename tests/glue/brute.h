/* brute.h: the best schedule of a small problem, by trying everything.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/schedule.h"

G_BEGIN_DECLS

typedef struct
{
  double end;
  guint  n_batches;
  guint  n_against; /* pairs against far-to-near or a tuck */
} BruteScore;

/* Minutes must be whole numbers. `order` (nullable): of all tasks, the only one tried; NULL: all
 * orders. Tries every job next, in the mix at hand or a new one, begun at every whole minute. */
BruteScore brute_solve         (const PpProblem *problem,
                                const guint     *order);
guint      brute_count_against (const PpProblem *problem,
                                const guint     *order);

G_END_DECLS
