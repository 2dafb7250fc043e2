/* said.h: what was said of each placement, to be said again where nothing has changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Most words of a check are about single placements, and while one is dragged most of these stay as
 * they were: then the findings of the check before are taken, not made anew.
 */
#pragma once

#include "check/finding.h"

G_BEGIN_DECLS

/* Questions that are asked of one placement after another. */
typedef enum
{
  PP_SAID_OF_REST,
  PP_SAID_OF_JOINT,
  PP_SAID_OF_OVERHANG,
  PP_SAID_OF_GROUP, /* of its first member */
  PP_SAID_OF_STOCK, /* of a piece of the tray */
  PP_N_SAID,
} PpSaidKind;

/* Of so many placements and pieces. (transfer full) */
PpSaid   *pp_said_new           (guint       n_placements,
                                 guint       n_pieces);
void      pp_said_free          (PpSaid     *self);
/* Begins with what a kind of question says of a placement or piece. */
void      pp_findings_say_anew  (PpFindings *findings,
                                 PpSaidKind  kind,
                                 guint       index);
/* Likewise of a placement that may be unchanged; TRUE: it was said, as before. */
gboolean  pp_findings_say_again (PpFindings *findings,
                                 PpSaidKind  kind,
                                 guint       index);
/* Begins with it, and says all of it as before. */
void      pp_findings_repeat    (PpFindings *findings,
                                 PpSaidKind  kind,
                                 guint       index);
/* Ends the kind of question, after the last. */
void      pp_findings_end_kind  (PpFindings *findings,
                                 PpSaidKind  kind);
/* Sorts what was said by pp_finding_compare (), equals in the order in which they were said. From
 * then on what was said borrows the findings of the list. */
void      pp_findings_sort      (PpFindings *findings);

G_END_DECLS
