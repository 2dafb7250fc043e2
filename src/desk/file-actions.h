/* file-actions.h: open, save, export and print, and what is asked before something could be lost.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Actions of the window: win.open, save, save-as, earlier-saves, export-sheets, export-picture,
 * print, close. A file that cannot be read or written is told in one sentence, and nothing is lost
 * by it.
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

void pp_file_actions_add      (PpWindow       *window);
void pp_file_actions_set_keys (GtkApplication *application);
/* Opens `file` in the window if it shows the start page, else in a window of its own. As a copy:
 * a panel without a file, as from a sample. */
void pp_file_actions_open     (PpWindow       *window,
                               GFile          *file,
                               gboolean        as_copy);
/* Closes all windows, after asking each about unsaved changes; a Cancel leaves all of them. */
void pp_file_actions_quit     (GtkApplication *application);

G_END_DECLS
