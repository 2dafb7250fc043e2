/* typing.h: what is typed in a field and not taken yet.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* As if the field with the focus was left: before the panel is saved, say. What cannot be taken
 * stays there. */
void        pp_typing_finish (GtkRoot *root);

/* The first field under `widget` that shows what is wrong with it; NULL: none. (transfer none) */
GtkWidget  *pp_typing_find_fault (GtkWidget *widget);

/* Has `key_cb` called for each key before the text of `field` sees it, which takes undo for its own
 * even where it keeps no history. The handler is that of GtkEventControllerKey::key-pressed. */
void        pp_typing_ask_first (GtkEditable *field,
                                 GCallback    key_cb,
                                 gpointer     data);

/* The action that these keys mean, undo or redo of the panel, or NULL. Fields keep no history of
 * their own: half typed, they put the old text back; else the step is the panel's. */
const char *pp_typing_get_step (guint           key,
                                GdkModifierType state);

G_END_DECLS
