/* model.h: a line of jobs in whole numbers and rows of bits, as the search wants it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Times are ticks and volumes likewise: sums are then the same in whatever order jobs are done. A
 * set of jobs (set.h) is one of positions of the line.
 */
#pragma once

#include "glue/bound.h"
#include "glue/set.h"

G_BEGIN_DECLS

#define PP_TICKS 1e9 /* a minute, a ml */

/* Something a job waits for after another. */
typedef struct
{
  guint  source; /* number of what is waited for */
  gint64 lag;
} PpWait;

/* A job that others wait for. */
typedef struct
{
  guint    job;
  gint64   longest;   /* lag */
  guint64 *followers; /* set */
} PpSource;

typedef struct
{
  const PpLine  *line;
  const PpBound *bound;
  guint          n;
  guint          n_words;    /* of a set */
  gint64         mixing;
  gint64         window;     /* for the jobs of a mix, from the first one's start */
  gint64         tie;        /* that much more is still met */
  gint64         largest;    /* mix */
  gint64        *minutes;    /* of each job */
  gint64        *volumes;    /* all 0 where no mix that lasts can be too large */
  gint64        *tails;      /* of bound */
  guint64       *before;     /* a set a job: those that go before it */
  guint64       *against;    /* a set a job: those better done before it, which they can */
  guint         *offsets;    /* n + 1: waits of job k stand from offsets[k] to offsets[k + 1] */
  PpWait        *waits;
  guint          n_sources;
  PpSource      *sources;
  guint         *source_of;  /* of each job; G_MAXUINT: none */
  guint          n_critical;
  guint         *critical;   /* jobs whose tail is long for waits */
  guint32       *keys;       /* of each job, for hashing sets */
} PpModel;

/* Borrows both. NULL if there are times or volumes beyond what ticks can sum. (transfer full) */
PpModel *pp_model_new           (const PpLine  *line,
                                 const PpBound *bound);
void     pp_model_free          (PpModel       *self);
/* Pairs done against the wish that could be done with it, in this order of all positions. */
guint    pp_model_count_against (const PpModel *self,
                                 const guint   *sequence);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpModel, pp_model_free)

G_END_DECLS
