/* panel-read.h: a panel from its file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing is half loaded: a file that is not JSON, not a panel, of a later version, over a limit
 * or with an impossible value is refused with one sentence that names the place and the reason.
 */
#pragma once

#include "file/file-error.h"
#include "panel/panel.h"

G_BEGIN_DECLS

/* Returns (transfer full). Errors: PP_FILE_ERROR. */
PpPanel *pp_panel_read (GBytes     *bytes,
                        GError    **error);
/* The same from a path. */
PpPanel *pp_panel_load (const char *path,
                        GError    **error);

G_END_DECLS
