/* window.h: the window: the start page, then the pages of the work.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Holds one document (property "document", notified), or the start page. With a document it shows
 * one of the pages of pages.c (property "page-name", notified). Its actions ("win.undo", ...) are
 * added by the files named for them: edit-actions.c, view-actions.c, file-actions.c.
 */
#pragma once

#include "desk/canvas.h"
#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_WINDOW (pp_window_get_type ())
G_DECLARE_FINAL_TYPE (PpWindow, pp_window, PP, WINDOW, GtkApplicationWindow)

PpWindow   *pp_window_new          (GtkApplication *application);
/* NULL while the start page is shown. (transfer none) */
PpDocument *pp_window_get_document (PpWindow       *self);
/* Shows the document's pages, or the start page for NULL. */
void        pp_window_set_document (PpWindow       *self,
                                    PpDocument     *document);
PpCanvas   *pp_window_get_canvas   (PpWindow       *self);
/* NULL while the start page is shown. (transfer none) */
const char *pp_window_get_page_name (PpWindow      *self);
/* The page shown, with its class actions; NULL while the start page is. (transfer none) */
GtkWidget  *pp_window_get_page     (PpWindow       *self);
/* Needs a document. */
void        pp_window_show_page    (PpWindow       *self,
                                    const char     *name);
/* The window's action of that name is to be had while there is a document. */
void        pp_window_tie_to_document (PpWindow    *self,
                                       const char  *action);
/* One calm sentence at the foot of the window, until the next one or until it is put away. */
void        pp_window_tell         (PpWindow       *self,
                                    const char     *sentence);

G_END_DECLS
