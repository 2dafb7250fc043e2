/* words.h: where a piece goes and what is done with it, in the maker's words and unit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The same words stand in tables, in the description of a drawing and wherever a step is read
 * out. Strings are translated; an empty one means there is nothing to say.
 */
#pragma once

#include "sheet/sheet.h"

G_BEGIN_DECLS

/* mm: a lower prop nobody can make; such a piece is held or weighed down. */
#define PP_LEAST_PROP 1.0

/* Long pieces have a tip and a base, the ends of their own frame's longer axis: growing from the
 * greater y to the lesser (or, lying, from the lesser x to the greater). Panel frame. */
typedef struct
{
  gboolean is_long;
  PpPoint  middle;
  PpPoint  tip;        /* if long */
  PpPoint  base;
  guint    half_hours; /* where it points: 1 for half past 12, 24 for 12; 0: round, any way */
} PpLie;

PpLie  pp_lie_of          (const PpBody *body);

/* "2", "2½" of half hours, "" for 0. (transfer full) */
char  *pp_hour_format     (guint         half_hours);
/* Minutes since the clock was started, as a timer shows them: "12:30", "1:05:00". */
char  *pp_clock_format    (double        minutes);

/* What the words are asked of, in the panel's units. All is borrowed of the plan. */
PpSheetJob pp_words_get_job    (const PpPlan *plan);

/* Of a job: 0 and 1 are the knots where there is a wire, then the placements. */
typedef struct
{
  char *name;        /* "Oxeye"; "Left knot" */
  char *act;         /* "Oxeye"; "Tie the left knot and set it in glue" */
  char *middle_left; /* bare figures: a knot's or a piece's middle */
  char *middle_top;
  char *from_left;   /* "120", or "tip 120\nbase 95" */
  char *from_top;    /* "140", or "140\n210" */
  char *turn;        /* clock hour, or "" */
  char *place;       /* a clause: "its tip 120 mm from the left and ..., its base ..." */
} PpJobWords;

PpJobWords *pp_job_words_new  (const PpSheetJob *job,
                               guint             job_index);
void        pp_job_words_free (PpJobWords       *self);

/* Headings over the figures: "from left, mm". (transfer none) */
const char *pp_from_left_heading (PpUnits           units);
const char *pp_from_top_heading  (PpUnits           units);
/* Whether some piece stands out over the glass. */
gboolean    pp_stands_over       (const PpCheck    *check);

/* Of a step of the plan. */
typedef struct
{
  guint n_dabs;
  char *dabs;     /* "3"; "" of a knot */
  char *support;  /* "prop 4.5 mm", "hold, or prop 4.5 mm", "hold or weight" */
  char *clock;    /* "12:30", "wait for 24:00", and a second line "hold to 35:00" */
  char *sentence; /* all of it: "7. Oxeye, 3 dabs: its middle ..." */
} PpStepWords;

PpStepWords *pp_step_words_new  (const PpSheetJob *job,
                                 guint             step);
void         pp_step_words_free (PpStepWords      *self);

/* "2 dabs, hold, or prop 4.5 mm"; "" for nothing. (transfer full) */
char        *pp_step_needs_format (const PpStepWords *step);
/* All that is done with the piece, on lines: "Sedge", "2 dabs", "prop 5.5 mm", "3:15". */
char        *pp_step_act_format (const PpJobWords  *words,
                                 const PpStepWords *step);

/* "21 steps, 6 mixes, about 30 min" (transfer full) */
char        *pp_words_format_plan      (const PpPlan     *plan);

/* Minutes at which the clock of a sitting is started: its first mixing. */
double       pp_sitting_start   (const PpPlan     *plan,
                                 guint             sitting);

/* Why there is no step to take: one sentence. (transfer none), until the plan goes. */
const char  *pp_no_order_words   (const PpSheetJob *job);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpJobWords, pp_job_words_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpStepWords, pp_step_words_free)

G_END_DECLS
