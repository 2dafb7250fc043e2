/* bench-keep.h: what happened at the bench, written to the panel's file at once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Asks nothing: what cannot be written stays in the document, is told in one sentence, and is tried
 * again.
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

typedef struct _PpBenchKeep PpBenchKeep;

/* fault: NULL once the panel of the document stands in its file, else why not. */
typedef void (*PpBenchKeepFunc) (const char *fault,
                                 gpointer    data);

/* For the document that `window` has now, which must have a file. */
PpBenchKeep *pp_bench_keep_new  (PpWindow        *window,
                                 PpBenchKeepFunc  done,
                                 gpointer         data);
/* `done` is told nothing after this; what is wanted is written, and if that fails, the window says
 * so. */
void         pp_bench_keep_free (PpBenchKeep     *self);
/* Writes the present panel; while one is being written, the one that is then present after it. */
void         pp_bench_keep_write (PpBenchKeep    *self);
gboolean     pp_bench_keep_is_writing (PpBenchKeep *self);

G_END_DECLS
