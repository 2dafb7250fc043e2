/* file-state.h: what a window knows of its panel's file beside the document.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lives as long as the window.
 */
#pragma once

#include "desk/watch.h"
#include "desk/window.h"

G_BEGIN_DECLS

typedef struct
{
  PpWatch   *watch;
  gboolean   is_saving;  /* from the choice of a file to the end of writing */
  gboolean   is_asking;  /* whether unsaved changes are to be kept */
  GPtrArray *waiting;    /* GTask that go on when saving has ended */
} PpFileState;

/* (transfer none) */
PpFileState *pp_file_state_of       (PpWindow    *window);
/* `content` now stands in the document's file. */
void         pp_file_state_set      (PpWindow    *window,
                                     const char  *content);
/* FALSE once the window is closed, though somebody still holds it. */
gboolean     pp_file_state_is_alive (PpWindow    *window);
/* The window that has this file open, or NULL. (transfer none) */
PpWindow    *pp_file_state_find     (GtkApplication *application,
                                     GFile       *file);

G_END_DECLS
