/* opening.h: panels opened from their files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* Asks for files and opens them. */
void pp_opening_choose (PpWindow *window);
/* Of a file on this computer; of another NULL, and the maker is told. (transfer full) */
char *pp_opening_find_path (PpWindow *window,
                            GFile    *file);
/* As pp_file_actions_open(). */
void pp_opening_open   (PpWindow *window,
                        GFile    *file,
                        gboolean  as_copy);
/* Shows a panel that stands in no file and is to be asked about before it is given up, in the
 * window if that shows nothing that matters, else in a new one: the window that shows it. */
PpWindow *pp_opening_show_unsaved (PpWindow      *window,
                                   const PpPanel *panel);
/* Adds the file to the ones opened of late. */
void pp_opening_note   (GFile    *file);
/* Panels, and all files. */
void pp_opening_add_filters (GtkFileChooser *chooser);

G_END_DECLS
