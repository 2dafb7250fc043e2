/* export-wish.h: where the files of an export are to go.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Both ask for a place, with `title` over the question, and then run the export; its data is taken
 * over in any case.
 */
#pragma once

#include "desk/export-job.h"

G_BEGIN_DECLS

/* Suggested is the panel's title with `suffix` and `ending` (".pdf", which stays) behind it. */
void pp_export_wish_file   (PpWindow       *window,
                            const PpExport *export,
                            const char     *title,
                            const char     *suffix,
                            const char     *ending);
void pp_export_wish_folder (PpWindow       *window,
                            const PpExport *export,
                            const char     *title);

G_END_DECLS
