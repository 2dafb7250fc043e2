/* label.h: one way of having done some of the jobs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is still to come sees of the past: which jobs are done, when the last ended, how much life
 * and glue the open mix has left, how many mixes there were, and the ends of jobs that something
 * still to come must wait for.
 */
#pragma once

#include "glue/model.h"

G_BEGIN_DECLS

#define PP_LONG_AGO G_MININT64
#define PP_NOT_INSIDE (-1)

/* An end that something waits for. */
typedef struct
{
  gint64 end;    /* PP_LONG_AGO: nothing waits for it any more, or it is not done */
  gint64 inside; /* from the start of the open mix's first job at least, or PP_NOT_INSIDE */
} PpAwaited;

/* Followed by the set of jobs done and a PpAwaited for each source: pp_label_get_size() bytes. */
typedef struct
{
  guint64      stamp;       /* rising as labels are made: ties are broken by it */
  guint32      hash;        /* of the set */
  guint        parent;      /* where the search keeps what went before */
  guint        job;         /* the last */
  gboolean     is_new;      /* the last began a mix */
  gboolean     waited;      /* for something other than hands, or made the open mix begin later */
  guint        n_mixes;
  guint        against;     /* pairs done against the wish, those with jobs to come too */
  gint64       end;         /* of the last job */
  gint64       length;      /* of the open mix, at least, from the start of its first job */
  gint64       volume;      /* of the open mix */
  gint64       bound_end;   /* nothing that begins so ends sooner */
  guint        bound_mixes;
  gint64       estimate;    /* of the end, if each mix to come could be used up */
  gint64       rest;        /* minutes of the jobs to come, ticks */
  PpMixWeights weights;     /* of the jobs to come */
  guint64      done[];
} PpLabel;

gsize    pp_label_get_size   (const PpModel *model);
/* Nothing done yet. */
void     pp_label_init       (PpLabel       *self,
                              const PpModel *model);
/* Whether all that goes before `job` is done and it is not. */
gboolean pp_label_may_follow (const PpLabel *self,
                              const PpModel *model,
                              guint          job);
/* Does `job` next, from the open mix or a new one, as soon as can be; `child` is set whole but for
 * stamp and parent. FALSE if the open mix does not reach. */
gboolean pp_label_follow     (const PpLabel *self,
                              const PpModel *model,
                              guint          job,
                              gboolean       is_new,
                              PpLabel       *child);
/* Whether whatever may follow `other` may follow `self` with an end, mixes and (if `pairs`) pairs
 * no worse. Both have the same jobs done. */
gboolean pp_label_is_no_worse (const PpLabel *self,
                               const PpModel *model,
                               const PpLabel *other,
                               gboolean       pairs);

G_END_DECLS
