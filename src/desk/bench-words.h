/* bench-words.h: what stands on the screen at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain values without a widget; asks no clock.
 */
#pragma once

#include "glue/bench.h"

G_BEGIN_DECLS

#define PP_BENCH_BELL 1.0 /* min before a mix is past */

/* All strings are translated; an empty one means there is nothing to say. */
typedef struct
{
  PpNext   next;
  char    *count;     /* "Step 7 of 21" */
  char    *title;     /* what is done: "Oxeye", "Mix part A 1 ml with part B 1 ml" */
  char    *lines;     /* more of it, one paragraph a line */
  char    *needs;     /* PLACE: "3 dabs, prop 4.5 mm" */
  char    *action;    /* on the big control, if there is nothing to wait for */
  char    *wait;      /* on it while there is: "Wait 2:10" */
  gboolean waits;     /* not yet */
  char    *age;       /* of the mix: "3:20", or "" */
  char    *life;      /* "of 5:00", "under a minute left", "no glue is mixed" */
  double   share;     /* of its life, 0 to 1 */
  gboolean is_late;   /* the last minute */
  char    *meanwhile; /* what is held, and what can be trimmed */
} PpBenchWords;

/* What is said before the first mix, on lines: glass, gloves, and what to have ready. */
char         *pp_bench_words_before (const PpPlan   *plan,
                                     const PpPanel  *panel);
/* `panel` has the placements of the plan's. (transfer full) */
PpBenchWords *pp_bench_words_new    (const PpBench  *bench,
                                     const PpPlan   *plan,
                                     const PpPanel  *panel,
                                     GDateTime      *now);
void          pp_bench_words_free   (PpBenchWords   *self);
/* "Oxeye", "Left knot"; by the id of a job, which is given back for one that is not there. */
char         *pp_bench_words_name   (const PpPlan   *plan,
                                     const char     *job);

/* Adds one more to what is listed: "Oxeye, Fern". */
void          pp_bench_words_append (GString        *list,
                                     const char     *part);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpBenchWords, pp_bench_words_free)

G_END_DECLS
