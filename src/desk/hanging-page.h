/* hanging-page.h: the page that shows how the panel will hang.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The view with what can be dragged, and beside it the figures, what is said about them, and what
 * to mind. Property: "document" (write only), as pp_hanging_page_set_document().
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_HANGING_PAGE (pp_hanging_page_get_type ())
G_DECLARE_FINAL_TYPE (PpHangingPage, pp_hanging_page, PP, HANGING_PAGE, GtkWidget)

/* `document` is nullable. */
void pp_hanging_page_set_document (PpHangingPage *self,
                                   PpDocument    *document);

G_END_DECLS
