/* bench-view-private.h: the fields of the bench, for the files that make it up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/back-view.h"
#include "desk/bench-keep.h"
#include "desk/bench-view.h"
#include "desk/bench-words.h"
#include "desk/glue-map.h"

G_BEGIN_DECLS

struct _PpBenchView
{
  GtkWidget      parent_instance;
  PpClock        clock;
  PpWindow      *window;
  PpDocument    *document;   /* NULL: not begun */
  const PpPlan  *plan;       /* that is worked off */
  PpBench        bench;
  PpBenchKeep   *keep;
  gboolean       is_ready;   /* the glass is clean, gloves are on */
  gboolean       is_hurried; /* the maker does not want to wait for this step */
  gboolean       is_choosing;
  gboolean       is_held;    /* Space has not been let go yet */
  const PpStep  *step;       /* that was shown last */
  PpNext         next;
  gint64         acted_at;   /* monotonic */
  guint          rung;       /* length of the log up to the mixing whose bell has rung */
  guint          cookie;     /* that keeps the screen awake */
  guint          timer;
  guint          flash;
  GPtrArray     *chosen;     /* char *: jobs that an answer is about */

  GtkWidget     *body;
  GtkLabel      *count;
  GtkLabel      *fault;
  GtkWidget     *save;
  GtkWidget     *bell;
  GtkWidget     *leave;
  GtkStack      *screen;
  GtkLabel      *title;
  GtkLabel      *lines;
  PpGlueMap     *map;
  GtkLabel      *name;
  GtkLabel      *where;
  GtkLabel      *needs;
  GtkWidget     *back_box;
  PpBackView    *back;
  GtkLabel      *question;
  GtkBox        *answers;
  GtkLabel      *meanwhile;
  GtkWidget     *bar;
  GtkWidget     *clock_box;
  GtkLabel      *age;
  GtkProgressBar *life;
  GtkLabel      *life_words;
  GtkWidget     *act;
  GtkLabel      *act_words;
  GtkWidget     *hurry;
  GtkWidget     *take_back;
  GtkLabel      *take_back_words;
  GtkWidget     *happened;
  GtkPopover    *happenings;
  GtkWidget     *remixed;
};

/* bench-show.c */
/* Where the maker stands: with a wait passed over, what waited is in hand if the open mix does. */
void       pp_bench_view_read        (PpBenchView *self,
                                      GDateTime   *now);
/* Shows what is now. */
void       pp_bench_view_refresh     (PpBenchView *self);

/* bench-view.c */
void       pp_bench_view_leave       (PpBenchView *self);

/* bench-acts.c */
/* The big control. */
void       pp_bench_acts_go_on       (PpBenchView *self);
void       pp_bench_acts_take_back   (PpBenchView *self);
void       pp_bench_acts_remix       (PpBenchView *self);
void       pp_bench_acts_pause       (PpBenchView *self);
/* Jobs by their ids came off, or broke. */
void       pp_bench_acts_come_off    (PpBenchView *self,
                                      const char * const *jobs,
                                      gboolean     broke);
/* A glued piece has its middle at `middle` (mm, panel frame), turned by `rotation` degrees. */
void       pp_bench_acts_move        (PpBenchView *self,
                                      const char  *placement,
                                      PpPoint      middle,
                                      double       rotation);

/* bench-choice.c */
void       pp_bench_choice_ask       (PpBenchView *self,
                                      gboolean     broke);
void       pp_bench_choice_ask_where (PpBenchView *self);
void       pp_bench_choice_end       (PpBenchView *self);

G_END_DECLS
