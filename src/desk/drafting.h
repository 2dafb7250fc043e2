/* drafting.h: the journal of a window, and panels opened from drafts.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"
#include "file/draft.h"

G_BEGIN_DECLS

/* From now on keeps aside what the window's document has and its file has not. */
void pp_drafting_add  (PpWindow            *window);
/* Shows what a draft holds, not saved, in the window. draft: (transfer full); the window goes on
 * with it. */
void pp_drafting_open (PpWindow            *window,
                       PpDocument          *document,
                       PpDraft             *draft,
                       const PpDraftOrigin *origin);

G_END_DECLS
