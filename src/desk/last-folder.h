/* last-folder.h: a dialog for a file begins where the last one ended.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * `key` is one of the settings of that kind, as PP_SETTINGS_PANEL_FOLDER.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Opens the dialog in the folder kept, if that is still there, else in `otherwise` (nullable), else
 * in the user's own for pictures or documents: left alone, GTK lists recent files, of which a new
 * user has none. */
void pp_last_folder_offer (GtkFileChooser *chooser,
                           const char     *key,
                           GFile          *otherwise);
/* Keeps the folder that `file` lies in, or is. */
void pp_last_folder_keep  (const char     *key,
                           GFile          *file);

G_END_DECLS
