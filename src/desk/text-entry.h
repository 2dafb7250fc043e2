/* text-entry.h: a field for a few words, committed as a figure entry is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Return or leaving the field commits what was typed; Escape puts the old text back.
 * Signal: committed (const char *text), without white space at its ends, another than before.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_TEXT_ENTRY (pp_text_entry_get_type ())
G_DECLARE_FINAL_TYPE (PpTextEntry, pp_text_entry, PP, TEXT_ENTRY, GtkEntry)

/* Commits nothing. What the maker is typing stays if the text is the one the field has. */
void pp_text_entry_set_words (PpTextEntry *self,
                              const char  *words);
/* Takes what is typed now, as when the field is left. */
void pp_text_entry_commit    (PpTextEntry *self);
/* Shows the text it had; TRUE if another one stood there. */
gboolean pp_text_entry_put_back (PpTextEntry *self);

G_END_DECLS
