/* box-write.h: pieces as a box file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "file/file-error.h"
#include "panel/record.h"

G_BEGIN_DECLS

/* The text of a petalpane-box file with these pieces (PpPiece), in their order. (transfer full) */
GString  *pp_box_write (GPtrArray   *pieces);
/* Replaces the file whole or not at all. Errors: PP_FILE_ERROR; LIMIT for more than could be read
 * again. */
gboolean  pp_box_save  (GPtrArray   *pieces,
                        const char  *path,
                        GError     **error);

G_END_DECLS
