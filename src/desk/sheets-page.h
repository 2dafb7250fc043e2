/* sheets-page.h: the last page of the work: the sheets as they will print.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page as pages.h has them.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_SHEETS_PAGE (pp_sheets_page_get_type ())
G_DECLARE_FINAL_TYPE (PpSheetsPage, pp_sheets_page, PP, SHEETS_PAGE, GtkWidget)

G_END_DECLS
