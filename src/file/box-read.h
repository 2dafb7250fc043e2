/* box-read.h: the pieces of a box file, which the maker keeps from panel to panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "file/file-error.h"
#include "panel/record.h"

G_BEGIN_DECLS

/* The pieces (PpPiece) of a petalpane-box file, in its order; (transfer full). Refused as a whole
 * like a panel. Ids stand once, and there are at most PP_PANEL_MAX_TRAY.
 * Errors: PP_FILE_ERROR. */
GPtrArray *pp_box_read (GBytes  *bytes,
                        GError **error);

G_END_DECLS
