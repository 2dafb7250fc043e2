/* document-private.h: the fields of a document, for the files that make it up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/checker.h"
#include "desk/document.h"
#include "panel/history.h"

G_BEGIN_DECLS

struct _PpDocument
{
  GObject        parent_instance;
  PpHistory     *history;
  PpScene       *scene;    /* of the present panel or of one before, to share with */
  PpGallery     *gallery;
  PpChecker     *checker;
  const PpCheck *check;
  const PpPlan  *plan;
  GPtrArray     *findings; /* PpFinding, borrowed from check, plan and left_out */
  GPtrArray     *known;
  GPtrArray     *left_out;
  GHashTable    *rests;    /* id of a placement, borrowed from the check: its PpRest */
  GFile         *file;
  const PpPanel *saved;    /* the panel that stands in the file, or the one begun with */
  PpChosen       chosen;
  char         **chosen_ids;
};

/* document-answers.c */
void     pp_document_answers_init  (PpDocument *self);
void     pp_document_answers_stop  (PpDocument *self);
void     pp_document_answers_clear (PpDocument *self);
/* Judging a drawing takes as long as drawing it, and so goes on in a thread: pieces are drawn plain
 * until it is done. */
void     pp_document_judge_art     (PpDocument *self);

/* document-chosen.c */
/* Drops what is gone from what is chosen, and says nothing yet; TRUE if something was. */
gboolean pp_document_prune_chosen (PpDocument *self);

enum
{
  PP_DOCUMENT_CHANGED,
  PP_DOCUMENT_CHOSEN,
  PP_DOCUMENT_CHECKED,
  PP_DOCUMENT_DRAWN,
  PP_DOCUMENT_REFUSED,
  PP_DOCUMENT_N_SIGNALS,
};

extern guint pp_document_signals[PP_DOCUMENT_N_SIGNALS];

G_END_DECLS
