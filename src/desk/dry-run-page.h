/* dry-run-page.h: the first page of the work: glass, rulers, findings, card and tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/canvas.h"

G_BEGIN_DECLS

#define PP_TYPE_DRY_RUN_PAGE (pp_dry_run_page_get_type ())
G_DECLARE_FINAL_TYPE (PpDryRunPage, pp_dry_run_page, PP, DRY_RUN_PAGE, GtkWidget)

/* `document` is nullable. */
void      pp_dry_run_page_set_document (PpDryRunPage *self,
                                        PpDocument   *document);
PpCanvas *pp_dry_run_page_get_canvas   (PpDryRunPage *self);
/* As pp_window_tell(). */
void      pp_dry_run_page_tell         (PpDryRunPage *self,
                                        const char   *sentence);

G_END_DECLS
