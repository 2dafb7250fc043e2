/* pages.h: the pages of the work, and the switcher between them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page is a widget type with a writable property "document" (PpDocument, nullable), made without
 * further arguments; its grab_focus() goes to where the work begins. It may have class actions
 * "page.zoom-in", "page.zoom-out", "page.zoom-fit" and "page.zoom-true", which the keys of the same
 * names act on while it is shown. To add one: a row in the table of pages.c.
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* Names of pages, for pp_window_get_page_name() and "win.page". */
#define PP_PAGE_DRY_RUN "dry-run"
#define PP_PAGE_HANGING "hanging"
#define PP_PAGE_GLUE_UP "glue-up"
#define PP_PAGE_SHEETS "sheets"

/* Makes the pages in `stack`, in `switcher` a button for each or, where there is no room for them,
 * a menu, and the action "win.page" (name), whose state is the page shown. */
void pp_pages_add          (PpWindow       *window,
                            GtkStack       *stack,
                            GtkBox         *switcher);
/* Hands `document` (nullable) to all of them. */
void pp_pages_set_document (GtkStack       *stack,
                            PpDocument     *document);
/* Alt+1, Alt+2, ... */
void pp_pages_set_keys     (GtkApplication *application);

G_END_DECLS
