/* goal.h: when one panel is better than another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Put all right: fewer faults, then less wire in view, then a better worst view, then fewer
 * cautions, then the lesser change. Put one right: the finding gone, then nothing of its level or
 * worse that was not there, then the lesser change. What is kept quiet does not count.
 */
#pragma once

#include "glue/order.h"

G_BEGIN_DECLS

/* The figures of a panel, in the order in which they matter. */
typedef struct
{
  guint  faults;   /* the glue-up's included */
  double exposed;  /* mm of the hung path, not beyond; compared to 0.1 mm */
  double worst;    /* 1 - share of the worst view; compared to 0.01 */
  guint  cautions;
} PpFigures;

typedef struct
{
  const PpPanel *given;
  const PpFinding *one; /* NULL: all; borrowed */
  GHashTable    *known; /* of one: findings of its level or worse that were there, by name, with
                         * their level + 1 */
  gboolean       was_mix_small;
} PpGoal;

#define PP_N_KEYS 5

typedef struct
{
  PpFigures figures;
  double    cost;
  double    keys[PP_N_KEYS]; /* less is better, the first that differs decides */
  double    energy;          /* what a search goes by (weight.h) */
} PpRating;

/* `given` and `one` (nullable, of the check's findings) must outlive it. */
void      pp_goal_init       (PpGoal          *self,
                              const PpCheck   *given,
                              const PpFinding *one);
void      pp_goal_clear      (PpGoal          *self);

PpFigures pp_figures_of      (const PpCheck   *check);
/* Of a panel that was checked. */
PpRating  pp_goal_rate       (const PpGoal    *self,
                              const PpCheck   *check);
gboolean  pp_rating_is_less  (const PpRating  *a,
                              const PpRating  *b);
/* Nothing is left to be done but to lessen the change. */
gboolean  pp_rating_is_cured (const PpRating  *self);
/* Whether a search is to do something about a finding. */
gboolean  pp_goal_minds      (const PpGoal    *self,
                              const PpFinding *finding);

G_END_DECLS
