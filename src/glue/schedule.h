/* schedule.h: one pair of hands, one mix at a time: when each job is done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pure: numbers in, numbers out; knows no panel. Mixing and jobs never overlap. A mix takes its
 * mixing, then jobs one after the other for as long as its life lasts and no more glue than the
 * largest mix; a sitting begins with a mix where one ends too late. Of all lines that keep stages,
 * links and ranks the best ends soonest, then takes fewest mixes, then does fewest pairs against
 * the wish (the far edge first, the lower of a tuck first). plan.h makes the problem from a check.
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct
{
  double minutes;
  double volume; /* ml */
  guint  stage;  /* every job of a lower stage goes before every job of a higher one */
  double depth;  /* mm from the far edge */
  guint  rank;   /* place in the order the maker has accepted; PP_NO_RANK: not in it */
} PpTask;

#define PP_NO_RANK G_MAXUINT

typedef struct
{
  guint  first;  /* < second */
  guint  second; /* of no lower stage than first */
  double lag;    /* min between the end of the first and the start of the second */
} PpLink;

typedef struct
{
  guint lower; /* better done first, but need not be */
  guint upper;
} PpTuck;

typedef struct
{
  guint         n_tasks;
  const PpTask *tasks;
  guint         n_links;
  const PpLink *links;   /* each pair once */
  guint         n_tucks;
  const PpTuck *tucks;
  double        mixing;  /* min */
  double        life;    /* min after mixing began, more than mixing */
  double        largest; /* ml */
  double        sitting; /* min; NAN: no end */
} PpProblem;

typedef struct
{
  guint  task;
  guint  mix;   /* from 0 */
  double start; /* min */
} PpSlot;

typedef struct
{
  double start;   /* min, when mixing begins */
  guint  sitting; /* from 0 */
} PpBatch;

typedef struct
{
  gboolean exists;      /* FALSE: one job fits no mix; nothing else is set */
  guint    n_slots;     /* as many as tasks */
  PpSlot  *slots;       /* in the order of their start */
  guint    n_batches;
  PpBatch *batches;
  double   end;         /* min, of the last job; 0 without jobs */
  double   lower_bound; /* min, no schedule ends sooner */
  gboolean optimal;     /* proved: end, then number of mixes, then pairs done against the wish */
} PpSchedule;

/* Called with the share done, 0 to 1. */
typedef void (*PpScheduleFunc) (double   done,
                                gpointer data);

/* Whether a job can be done with one mix of its own. */
gboolean    pp_task_fits      (const PpTask    *task,
                               const PpProblem *problem);

/* At most `max_steps` ways of doing one more job are tried (0: the built-in number, with which the
 * best is proved up to 16 jobs but in rare cases). Cancelling `enough` stops the search sooner: the
 * best so far is returned. Cancelling `cancellable` gives it up. Both and `progress` are nullable.
 * Returns (transfer full) or NULL. Errors: G_IO_ERROR_CANCELLED. */
PpSchedule *pp_schedule_new   (const PpProblem *problem,
                               guint64          max_steps,
                               GCancellable    *enough,
                               GCancellable    *cancellable,
                               PpScheduleFunc   progress,
                               gpointer         data,
                               GError         **error);
void        pp_schedule_free  (PpSchedule      *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSchedule, pp_schedule_free)

G_END_DECLS
