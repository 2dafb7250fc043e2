/* glue-page.h: the third page of the work: the order of gluing, and the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page as pages.h has them.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_GLUE_PAGE (pp_glue_page_get_type ())
G_DECLARE_FINAL_TYPE (PpGluePage, pp_glue_page, PP, GLUE_PAGE, GtkWidget)

G_END_DECLS
