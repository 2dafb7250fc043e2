/* meadow.h: invented panels of any number of pieces, and what measuring needs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/edit.h"

G_BEGIN_DECLS

/* mm² of glass a piece: as on the estuary sample, the closest of the samples, and in a heap. */
#define MEADOW_ROOM 3350.0
#define HEAP_ROOM 1500.0

/* `n` pieces of the estuary sample strewn by dice of a fixed seed over as much glass as gives each
 * `room` mm², on a wire; each time the same. (transfer full) */
PpPanel *meadow_new         (guint          n,
                             double         room);
/* `next`, which must be there, in place of `panel`. Takes both. */
PpPanel *meadow_step        (PpPanel       *panel,
                             PpPanel       *next);
/* The next piece to be dragged. */
guint    meadow_choose      (const PpPanel *panel,
                             GRand         *dice);
/* That piece somewhere within 9 mm either way of where it lay. (transfer full) */
PpPanel *meadow_drag        (const PpPanel *panel,
                             guint          which,
                             GRand         *dice);

/* ms of processor time that this process has taken. */
double   bench_now          (void);
/* Sorts `values`. */
double   bench_median       (double        *values,
                             guint          n);
/* A line of the table: what, figure, aim. */
void     bench_say          (const char    *what,
                             double         figure,
                             const char    *unit,
                             const char    *aim);

G_END_DECLS
