/* model.h: a line of jobs in whole numbers and rows of bits, as the search wants it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Times are ticks and volumes likewise: sums are then the same in whatever order jobs are done. A
 * set of jobs is a row of words, a bit a position of the line.
 */
#pragma once

#include "glue/bound.h"

G_BEGIN_DECLS

#define PP_TICKS 1e9 /* a minute, a ml */
#define PP_WORD_BITS 64

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
  guint         *source_of;  /* of each job; n_sources: none */
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

static inline gboolean
pp_set_has (const guint64 *set,
            guint          job)
{
  return (set[job / PP_WORD_BITS] >> (job % PP_WORD_BITS) & 1) != 0;
}

static inline void
pp_set_add (guint64 *set,
            guint    job)
{
  set[job / PP_WORD_BITS] |= G_GUINT64_CONSTANT (1) << (job % PP_WORD_BITS);
}

/* Whether all of `a` are in `b`. */
static inline gboolean
pp_set_within (const guint64 *a,
               const guint64 *b,
               guint          n_words)
{
  for (guint i = 0; i < n_words; i++)
    if ((a[i] & ~b[i]) != 0)
      return FALSE;

  return TRUE;
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpModel, pp_model_free)

G_END_DECLS
