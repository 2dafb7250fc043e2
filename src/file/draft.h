/* draft.h: what is not saved yet, kept aside: one draft a panel in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A draft is a file of a folder of the user's, so that no crash loses what was done; the maker's
 * own file is not touched. Beside it lies a lock, held as long as its owner runs, however that
 * ends: a draft whose lock is free was left behind. Any thread may write, clear or discard.
 * Paths are in the file name encoding. Errors: PP_FILE_ERROR.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

typedef struct _PpDraft PpDraft;

/* Where a panel came from. */
typedef struct
{
  char *path;    /* of its file; NULL: never saved */
  char *content; /* what tells apart what stood in it; NULL if not known. Without a line end. */
} PpDraftOrigin;

/* $XDG_STATE_HOME/petalpane/drafts. (transfer full) */
char      *pp_draft_folder     (void);
/* A draft of one's own, with its lock and nothing in it yet. (transfer full), counted, or NULL. */
PpDraft   *pp_draft_new        (const char           *folder,
                                GError              **error);
/* Takes over those left behind: PpDraft with their locks, oldest first. What still belongs to
 * somebody is left alone; locks without a draft and torn temporary files are cleared away.
 * (transfer full), never NULL; a folder that is not there has none. */
GPtrArray *pp_draft_find       (const char           *folder);
PpDraft   *pp_draft_ref        (PpDraft              *self);
/* The last one lets go of the lock. What was written stays, and is left behind. */
void       pp_draft_unref      (PpDraft              *self);
/* Writes the panel, whole or not at all, and waits for the disk. After it was discarded nothing is
 * written, and that is no error. */
gboolean   pp_draft_write      (PpDraft              *self,
                                const PpPanel        *panel,
                                const PpDraftOrigin  *origin,
                                GError              **error);
/* origin: (out), to be cleared. (transfer full), or NULL. */
PpPanel   *pp_draft_read       (PpDraft              *self,
                                PpDraftOrigin        *origin,
                                GError              **error);
/* Drops what was written: it is saved. */
void       pp_draft_clear      (PpDraft              *self);
/* The same for good, with the lock. */
void       pp_draft_discard    (PpDraft              *self);

void       pp_draft_origin_clear (PpDraftOrigin      *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpDraft, pp_draft_unref)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PpDraftOrigin, pp_draft_origin_clear)

G_END_DECLS
