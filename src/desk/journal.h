/* journal.h: keeps aside what a document has that its file has not.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A moment after an edit the present panel is written as a draft (file/draft.h), in a thread; once
 * the file has it, the draft goes. For the main thread; knows no widget.
 */
#pragma once

#include "desk/document.h"
#include "file/draft.h"

G_BEGIN_DECLS

#define PP_TYPE_JOURNAL (pp_journal_get_type ())
G_DECLARE_FINAL_TYPE (PpJournal, pp_journal, PP, JOURNAL, GObject)

/* Signal: failed (char *sentence), the first time that something could not be kept aside.
 *
 * Follows `document` until it is ended. draft (transfer full) (nullable): that of which the
 * document was made; else one is begun in `folder` with the first edit. */
PpJournal *pp_journal_new         (PpDocument *document,
                                   const char *folder,
                                   PpDraft    *draft);
/* What tells apart what stands in the document's file; nullable. */
void       pp_journal_set_content (PpJournal  *self,
                                   const char *content);
/* ms from an edit to its writing. */
void       pp_journal_set_pace    (PpJournal  *self,
                                   guint       pace);
/* Whether all there was to write is written. */
gboolean   pp_journal_is_settled  (PpJournal  *self);
/* The document is closed, and what was not saved was given up. */
void       pp_journal_end         (PpJournal  *self);

G_END_DECLS
