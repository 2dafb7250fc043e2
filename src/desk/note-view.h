/* note-view.h: a field for a note of several lines, committed as a text entry is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Leaving the field commits what was typed; Escape puts the old text back. Tab goes on.
 * Signal: committed (const char *text), another than before.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_NOTE_VIEW (pp_note_view_get_type ())
G_DECLARE_FINAL_TYPE (PpNoteView, pp_note_view, PP, NOTE_VIEW, GtkTextView)

/* Commits nothing. What the maker is typing stays if the text is the one the field has. */
void     pp_note_view_set_words (PpNoteView *self,
                                 const char *words);
/* Takes what is typed now, as when the field is left. */
void     pp_note_view_commit    (PpNoteView *self);
/* Shows the text it had; TRUE if another one stood there. */
gboolean pp_note_view_put_back  (PpNoteView *self);

G_END_DECLS
