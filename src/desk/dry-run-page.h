/* dry-run-page.h: the first page of the work: glass, rulers, findings, card and tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page as pages.h has them.
 */
#pragma once

#include "desk/canvas.h"

G_BEGIN_DECLS

#define PP_TYPE_DRY_RUN_PAGE (pp_dry_run_page_get_type ())
G_DECLARE_FINAL_TYPE (PpDryRunPage, pp_dry_run_page, PP, DRY_RUN_PAGE, GtkWidget)

PpCanvas *pp_dry_run_page_get_canvas (PpDryRunPage *self);

G_END_DECLS
