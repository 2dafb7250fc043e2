/* panel-answers.h: a panel file with all that is asked of it, for the commands.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "art/gallery.h"
#include "glue/plan.h"

G_BEGIN_DECLS

typedef struct
{
  PpPanel   *panel;
  PpCheck   *check;
  PpPlan    *plan;
  PpGallery *gallery;
  GPtrArray *left_out; /* PpFinding: art-left-out */
  double    *bases;    /* mm, of each placement; NAN for a floating one */
  double    *tops;
} PpPanelAnswers;

/* What may be spent on the search for the shortest glue-up. */
typedef struct
{
  guint64 steps;   /* 0: the built-in number */
  double  seconds; /* finite, at least 0 */
} PpEffort;

/* Reads the file and asks what is drawn, in `units` (nullable: the panel's own): without plan and
 * left_out. FALSE with `error` set if the file cannot be used. Clear it in any case. */
gboolean pp_panel_answers_init_shown (PpPanelAnswers *self,
                                 const char     *file,
                                 const PpUnits  *units,
                                 GError        **error);
/* Asks everything, with `effort`
 * (nullable: the built-in number of steps, however long they take). Otherwise likewise. */
gboolean pp_panel_answers_init  (PpPanelAnswers *self,
                                 const char     *file,
                                 const PpUnits  *units,
                                 const PpEffort *effort,
                                 GError        **error);
void     pp_panel_answers_clear (PpPanelAnswers *self);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PpPanelAnswers, pp_panel_answers_clear)

G_END_DECLS
