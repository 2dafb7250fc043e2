/* sheet-answers.h: what sheets and pictures of a panel are drawn from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Made anew from the panel and not taken from the document: a scene and the art belong to one
 * thread at a time, and the document's are those of its checker and of the canvas.
 */
#pragma once

#include "desk/work.h"
#include "sheet/sheet.h"

G_BEGIN_DECLS

typedef struct
{
  const PpCheck *check;
  const PpPlan  *plan;    /* NULL if not asked for */
  PpGallery     *gallery;
} PpSheetAnswers;

/* Blocks: for a thread, reporting to `work`, of which it is all but the drawing. (transfer full),
 * or NULL.
 * Errors: G_IO_ERROR_CANCELLED. */
PpSheetAnswers *pp_sheet_answers_new  (const PpPanel *panel,
                            gboolean       with_plan,
                            PpWork        *work,
                            GError       **error);
void       pp_sheet_answers_free (PpSheetAnswers     *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSheetAnswers, pp_sheet_answers_free)

G_END_DECLS
